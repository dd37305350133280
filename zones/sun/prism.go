package sun

import "example.org/turfplat/geo"

// A Prism has upright sides over a region, courtyards and all, from a base to
// a level top: a building, a part of one, or a wood from the base of its
// crowns to their tops.
type Prism struct {
	Plan      geo.Region
	Base, Top float64
}

func (p Prism) bodies() []body {
	base, top := aboveSample(p.Base), aboveSample(p.Top)
	if top <= base {
		return nil
	}
	var bodies []body
	for _, piece := range p.Plan.Polygons() {
		if len(piece.Holes) == 0 && isConvex(piece.Shell) {
			bodies = append(bodies, block{piece.Shell, base, top})
		} else {
			bodies = append(bodies, hall{piece.Rings(), base, top})
		}
	}
	return bodies
}

// isConvex reports whether a counter-clockwise ring never turns right.
func isConvex(ring geo.Ring) bool {
	n := len(ring)
	for i := range ring {
		if cross(ring[i], ring[(i+1)%n], ring[(i+2)%n]) < 0 {
			return false
		}
	}
	return true
}
