package geo

import (
	"errors"
	"slices"
)

// ErrBentCut says that a line has no two sides: it has no length, or, run on
// straight at both ends, crosses itself.
var ErrBentCut = errors.New("line turns back on itself and has no two sides")

// Cut divides a region by a line, run on straight at both ends: what lies to
// the left of it, and the rest. Both sides are cut by one and the same
// polygon, so that they fit without gap or overlap.
func (r Region) Cut(l Line) (left, right Region, err error) {
	side, err := leftOf(l, r.Bounds())
	if err != nil {
		return Region{}, Region{}, err
	}
	if left, err = Intersection(r, side); err != nil {
		return Region{}, Region{}, err
	}
	right, err = Difference(r, side)
	return left, right, err
}

// leftOf returns the ground to the left of a line, as far as bounds reach.
func leftOf(l Line, bounds Bounds) (Region, error) {
	l = slices.Compact(slices.Clone(l))
	if len(l) < 2 {
		return Region{}, ErrBentCut
	}
	for _, p := range l {
		bounds = bounds.With(p)
	}
	bounds = bounds.Grown(1 + max(bounds.Width(), bounds.Height()))
	n := len(l)
	entry := bounds.exit(l[0], l[0].Minus(l[1]))
	leave := bounds.exit(l[n-1], l[n-1].Minus(l[n-2]))

	ring := slices.Concat(Ring{entry.at}, Ring(l), Ring{leave.at})
	for side := leave.side; ; side = (side + 1) % 4 {
		if side == entry.side && (side != leave.side || entry.along > leave.along || len(ring) > n+4) {
			break
		}
		ring = append(ring, bounds.corner(side))
	}
	region, err := RegionOf([]Ring{ring})
	if crossing := (*CrossingError)(nil); errors.As(err, &crossing) {
		return Region{}, ErrBentCut
	}
	return region, err
}

// A gate is where a ray leaves bounds: the side, counted counter-clockwise
// from the south, and the way along it.
type gate struct {
	at    XY
	side  int
	along float64
}

// corner returns the end of a side, counter-clockwise.
func (b Bounds) corner(side int) XY {
	return [4]XY{{b.Max.X, b.Min.Y}, b.Max, {b.Min.X, b.Max.Y}, b.Min}[side]
}

// exit follows a ray from a place inside.
func (b Bounds) exit(from, direction XY) gate {
	best := gate{side: -1}
	var nearest float64
	for side := range 4 {
		end, start := b.corner(side), b.corner((side+3)%4)
		edge := end.Minus(start)
		turn := direction.Cross(edge)
		if turn <= 0 {
			continue // runs along this side or away from it
		}
		t := start.Minus(from).Cross(edge) / turn
		if best.side < 0 || t < nearest {
			at := from.Plus(direction.Times(t)).snapped()
			best, nearest = gate{at, side, at.Minus(start).Dot(edge)}, t
		}
	}
	return best
}
