package zones

import (
	"slices"

	"example.org/turfplat/geo"
)

// A laying is all objects that cover ground, and the outlines, laid on each
// other.
type laying struct {
	overlay  *geo.Overlay
	objects  []*Object // the one that wins an overlap first, outlines last
	covering int       // how many of them cover ground
	turf     int       // the first of those that is turf
}

// layObjects lays them. The overlay should be released.
func (s *Site) layObjects() (laying, error) {
	covering, outlines := s.covering(), s.Of(Outline)
	l := laying{objects: slices.Concat(covering, outlines), covering: len(covering), turf: len(covering)}
	regions := make([]geo.Region, len(l.objects))
	for i, o := range l.objects {
		regions[i] = o.Ground
		if o.Cover == Turf {
			l.turf = min(l.turf, i)
		}
	}
	var err error
	l.overlay, err = geo.Lay(regions...)
	return l, err
}

// inside reports whether ground with these holders lies inside the outline, or
// there is none.
func (l laying) inside(holders []int) bool {
	return l.covering == len(l.objects) || l.outlined(holders)
}

// outlined reports whether an outline is among the holders.
func (l laying) outlined(holders []int) bool { return holders[len(holders)-1] >= l.covering }

// traced reports whether the turf as drawn is among the holders: turf, or the
// outline if there is none.
func (l laying) traced(holders []int) bool {
	if l.turf == l.covering && l.covering < len(l.objects) {
		return l.outlined(holders)
	}
	return slices.ContainsFunc(holders, func(i int) bool { return l.turf <= i && i < l.covering })
}

func (l laying) outline() geo.Region {
	if l.covering == len(l.objects) {
		return geo.Region{}
	}
	return l.overlay.Ground(l.outlined)
}

// tracedTurf is the turf as drawn; without any, the outline is.
func (l laying) tracedTurf() TracedTurf {
	if l.turf == l.covering {
		outline := l.outline()
		return TracedTurf{From: Outline, All: outline, Inside: outline}
	}
	if l.covering == len(l.objects) && l.turf == l.covering-1 { // one object is all of it
		all := l.objects[l.turf].Ground
		return TracedTurf{From: Turf, All: all, Inside: all}
	}
	all := l.overlay.Ground(l.traced)
	if l.covering == len(l.objects) {
		return TracedTurf{From: Turf, All: all, Inside: all}
	}
	sides := l.overlay.Partition(2, func(holders []int) int {
		switch {
		case !l.traced(holders):
			return -1
		case l.inside(holders):
			return 0
		}
		return 1
	})
	return TracedTurf{From: Turf, All: all, Inside: sides[0], Outside: sides[1]}
}

// covers returns the ground of each kind, and what is left of the outline,
// which is turf if none was traced.
func (l laying) covers(turfFrom Kind) (covers []Cover, unknown geo.Region) {
	kinds := len(CoverKinds)
	ground := l.overlay.Partition(kinds+1, func(holders []int) int {
		switch {
		case !l.inside(holders):
			return -1
		case holders[0] >= l.covering:
			return kinds
		}
		return l.objects[holders[0]].Cover.rank()
	})
	unknown = ground[kinds]
	if turfFrom == Outline {
		ground[Turf.rank()], unknown = unknown, geo.Region{}
	}
	for i, k := range CoverKinds {
		if !ground[i].Empty() || k == Turf {
			covers = append(covers, Cover{k, ground[i]})
		}
	}
	return covers, unknown
}

// parcels returns what of some ground each object but turf has to itself.
func (l laying) parcels(on func(holders []int) bool) []Parcel {
	parcels := make([]Parcel, l.turf)
	for i, own := range l.overlay.Partition(l.turf, l.owner(on)) {
		parcels[i] = Parcel{l.objects[i], own}
	}
	return parcels
}

// offTurf returns how much each object but turf takes off the traced turf.
func (l laying) offTurf(f geo.Frame) []OffTurf {
	taken := make([]OffTurf, l.turf)
	for i, area := range l.overlay.Areas(f, l.turf, l.owner(l.traced)) {
		taken[i] = OffTurf{l.objects[i], area}
	}
	return taken
}

// owner gives ground to the object but turf that has it, if it is some that is
// meant.
func (l laying) owner(meant func(holders []int) bool) func(holders []int) int {
	return func(holders []int) int {
		if holders[0] >= l.turf || !l.inside(holders) || !meant(holders) {
			return -1
		}
		return holders[0]
	}
}
