package lanes

import (
	"cmp"
	"math"
	"slices"

	"example.org/turfplat/geo"
)

// alike is how near, in radians, two bearings are one (1 degree).
const alike = math.Pi / 180

// headings returns the bearings of the edges of some ground and of its convex
// hull, along one of which lies its least width (Houle & Toussaint 1988, IEEE
// PAMI 10:761, from memory). The longest come first; of the edges of the
// ground only those count that are a spacing long.
func (f filler) headings(rings []geo.Ring) []float64 {
	const most = 24
	type edge struct{ length, angle float64 }
	var edges []edge
	add := func(a, b geo.XY) {
		way := b.Minus(a)
		angle := math.Atan2(way.Y, way.X)
		if angle < 0 {
			angle += math.Pi
		}
		edges = append(edges, edge{way.Norm(), angle})
	}
	for _, ring := range rings {
		for i, a := range ring {
			if b := ring[(i+1)%len(ring)]; a.Distance(b) >= f.spacing {
				add(a, b)
			}
		}
	}
	hull := geo.Hull(slices.Concat(rings...))
	for i := range hull {
		add(hull[i], hull[(i+1)%len(hull)])
	}
	slices.SortStableFunc(edges, func(a, b edge) int {
		return cmp.Compare(math.Round(b.length*1e4), math.Round(a.length*1e4))
	})
	var kept []float64
	for _, e := range edges {
		if !slices.ContainsFunc(kept, func(k float64) bool { return apart(k, e.angle) < alike }) && len(kept) < most {
			kept = append(kept, e.angle)
		}
	}
	return kept
}

// apart is the angle between two headings, which have no sense: 0 to pi/2.
func apart(a, b float64) float64 {
	d := math.Mod(math.Abs(a-b), math.Pi)
	return min(d, math.Pi-d)
}
