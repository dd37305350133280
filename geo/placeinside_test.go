package geo

import (
	"math"
	"slices"
)

// clearOf is how far, in metres, from any edge a place must be to lie inside
// a piece beyond doubt.
const clearOf = 64 * grain

// placeInside returns a place inside a polygon: the middle of the widest
// stretch of a west-east line through it. False if that is too near an edge.
func (p Polygon) placeInside() (XY, bool) {
	y, ok := p.Shell.middleLatitude()
	if !ok {
		return XY{}, false
	}
	var cuts []float64
	for _, ring := range p.Rings() {
		for i, a := range ring {
			if b := ring.next(i); (a.Y > y) != (b.Y > y) {
				cuts = append(cuts, a.X+(b.X-a.X)*(y-a.Y)/(b.Y-a.Y))
			}
		}
	}
	slices.Sort(cuts)
	at, widest := XY{Y: y}, 0.0
	for i := 1; i < len(cuts); i += 2 {
		if width := cuts[i] - cuts[i-1]; width > widest {
			at.X, widest = (cuts[i]+cuts[i-1])/2, width
		}
	}
	return at, widest > 0 && p.clears(at)
}

// middleLatitude returns a Y halfway between the two of a ring's positions
// that lie farthest apart around its middle, so that no vertex lies on it.
func (r Ring) middleLatitude() (float64, bool) {
	b := r.bounds()
	middle := (b.Min.Y + b.Max.Y) / 2
	below, above := math.Inf(-1), math.Inf(1)
	for _, p := range r {
		if p.Y <= middle {
			below = max(below, p.Y)
		} else {
			above = min(above, p.Y)
		}
	}
	return (below + above) / 2, above-below > 2*clearOf && !math.IsInf(above, 0)
}

// clears reports whether a place lies clear of all edges of a polygon.
func (p Polygon) clears(at XY) bool {
	for _, ring := range p.Rings() {
		for i, a := range ring {
			if (edge{a, ring.next(i)}).distance(at) < clearOf {
				return false
			}
		}
	}
	return true
}

// runsBy reports whether an edge of the region runs by a place so near that
// the place may as well lie inside.
func (r Region) runsBy(at XY) bool {
	return slices.ContainsFunc(r.polygons, func(p Polygon) bool { return !p.clears(at) })
}
