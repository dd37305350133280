package lanes

import (
	"cmp"
	"maps"
	"math"
	"slices"

	"example.org/turfplat/zones"
)

// A shield is how far the sides of a stroke throw, m: to the nearest ground
// that must get nothing, infinite if there is none within the throw.
type shield struct{ left, right margin }

// A margin is where the throw to one side ends, and by what.
type margin struct {
	at float64 // m; infinite = by nothing
	by uint8   // the mark of the nearest ground that must get nothing
}

var boundless = margin{at: math.Inf(1)}

func (m *margin) draw(at float64, by uint8) {
	if at < m.at {
		*m = margin{at, by}
	}
}

func (m margin) hard() bool { return !math.IsInf(m.at, 1) }

// isTurf reports whether product may land on what a mark stands for.
func isTurf(mark uint8) bool { return mark == served || mark == otherTurf }

// shielded sets the shields of strokes by what lies beside them.
func shielded(lane []stroke, ground *raster[uint8], p Pattern) {
	for i := range lane {
		s := &lane[i]
		for cell, at := range ground.within(s.bounds(p)) {
			mark := ground.cells[cell]
			if isTurf(mark) || !s.reaches(at, p) {
				continue
			}
			if x := s.offset(at); x < 0 {
				s.shield.left.draw(-x, mark)
			} else {
				s.shield.right.draw(x, mark)
			}
		}
	}
}

// hardShare is the part of a lane along which a side must be hard, or lie by
// one kind of ground, to be told.
const hardShare = 0.1

// tellDeflectors says of each header lane on which sides hard edges lie within
// the throw, and what they are the edges of.
func (p *Plan) tellDeflectors(y Yard) {
	for f := range p.fields(y) {
		for _, i := range f.lanes {
			if p.Lanes[i].Pass == Header {
				p.Lanes[i].tellDeflector(f.ground, p.Work.Pattern)
			}
		}
	}
}

func (l *Lane) tellDeflector(ground *raster[uint8], p Pattern) {
	lane := strokes(*l)
	shielded(lane, ground, p)
	least := hardShare * length(l.Line)
	left := beside(lane, func(s shield) margin { return s.left })
	right := beside(lane, func(s shield) margin { return s.right })
	l.Deflector = sideOf(whole(left) > least, whole(right) > least)
	l.Beside = longest(least, left, right)
}

// beside adds up the length of lane that lies by each hard ground on one side.
func beside(lane []stroke, side func(shield) margin) map[uint8]float64 {
	by := make(map[uint8]float64)
	for _, s := range lane {
		if m := side(s.shield); m.hard() {
			by[m.by] += s.length
		}
	}
	return by
}

func whole(by map[uint8]float64) float64 {
	var sum float64
	for _, mark := range slices.Sorted(maps.Keys(by)) {
		sum += by[mark]
	}
	return sum
}

// longest returns the kinds of ground that lie beside a lane for some length,
// on either side, the longest first.
func longest(least float64, sides ...map[uint8]float64) []zones.Kind {
	by := make(map[zones.Kind]float64)
	for _, side := range sides {
		for _, mark := range slices.Sorted(maps.Keys(side)) {
			by[kindOf(mark)] += side[mark]
		}
	}
	kinds := slices.Sorted(maps.Keys(by))
	slices.SortStableFunc(kinds, func(a, b zones.Kind) int { return cmp.Compare(by[b], by[a]) })
	return slices.DeleteFunc(kinds, func(k zones.Kind) bool { return by[k] <= least })
}

func sideOf(left, right bool) Side {
	switch {
	case left && right:
		return Both
	case left:
		return Left
	case right:
		return Right
	}
	return Neither
}
