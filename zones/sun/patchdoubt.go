package sun

import (
	"slices"

	"example.org/turfplat/geo"
)

// Doubtful returns the turf whose hours lie within half an hour of a limit: a
// tree that grew, or a height that was assumed, may change its exposure, so
// that it is to be checked on site.
func Doubtful(f *Field, turf geo.Region, l Limits) (geo.Region, error) {
	const doubtful, sure int8 = 0, 1
	c := classed(f, turf, l)
	marks := newClassing(c.Grid, l)
	for cell, k := range c.class {
		switch {
		case k == none:
		case l.doubtful(c.Values[cell]):
			marks.class[cell] = doubtful
		default:
			marks.class[cell] = sure
		}
	}
	marks.majority()
	marks.majority()
	if !slices.Contains(marks.class, doubtful) {
		return geo.Region{}, nil
	}
	marks.carryOn()
	ground, err := assembled(marks.outlines()[doubtful])
	if err != nil {
		return geo.Region{}, err
	}
	return geo.Intersection(turf, ground)
}
