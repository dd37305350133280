package geo

import (
	"cmp"
	"slices"
)

// partition returns the regions of ground of each of n classes. A face belongs
// to the class that its counts give it, to none if that is negative; the
// ground outside all rings, which has no counts, must belong to none.
func (d *subdivision) partition(n int, class func(counts []lap) int) []Region {
	b := bounding{subdivision: d, classes: make([]int32, len(d.counts))}
	for rim, counts := range d.counts {
		b.classes[rim] = int32(class(counts))
	}
	shells, holes := make([][]Polygon, n), make([][]Ring, n)
	b.followed, b.seen = make([]bool, len(d.from)), make([]int32, len(d.spots))
	for side := range d.from {
		k := b.class(int32(side))
		if b.followed[side] || !b.bounds(int32(side), k) {
			continue
		}
		for _, loop := range b.loops(b.follow(int32(side), k)) {
			switch area := loop.signedArea(); {
			case max(area, -area) < grain*loop.length(): // thinner than a grain
			case area > 0:
				shells[k] = append(shells[k], Polygon{Shell: loop})
			default:
				holes[k] = append(holes[k], loop)
			}
		}
	}
	regions := make([]Region, n)
	for k := range regions {
		regions[k] = regionOf(nested(shells[k], holes[k]))
	}
	return regions
}

// A bounding follows the edges of the ground of each class.
type bounding struct {
	*subdivision
	classes  []int32 // by rim
	followed []bool  // by side
	seen     []int32 // by spot: its place in a path plus one
}

func (b *bounding) class(side int32) int32 { return b.classes[b.rims[side]] }

// bounds reports whether ground of a class lies to the left of a side only.
func (b *bounding) bounds(side, class int32) bool {
	return class >= 0 && b.class(side) == class && b.class(side^1) != class
}

// follow follows the edge of ground of a class, which stays on the left, and
// at each spot turns as far to the left as it can. It returns the sides.
func (b *bounding) follow(side, class int32) []int32 {
	var path []int32
	for !b.followed[side] {
		b.followed[side] = true
		path = append(path, side)
		back := side ^ 1
		for places := int32(1); ; places++ {
			if side = b.clockwise(back, places); b.bounds(side, class) {
				break
			}
		}
	}
	return path
}

// loops takes a path that touches itself apart at each spot it comes back to.
func (b *bounding) loops(path []int32) []Ring {
	var loops []Ring
	var spots []int32
	for _, side := range append(path, path[0]) {
		p := b.from[side]
		if start := b.seen[p]; start > 0 {
			loops = append(loops, b.ring(spots[start-1:]))
			for _, q := range spots[start:] {
				b.seen[q] = 0
			}
			spots = spots[:start]
			continue
		}
		spots = append(spots, p)
		b.seen[p] = int32(len(spots))
	}
	for _, p := range spots {
		b.seen[p] = 0
	}
	return loops
}

func (b *bounding) ring(spots []int32) Ring {
	ring := make(Ring, len(spots))
	for i, p := range spots {
		ring[i] = b.spots[p].xy()
	}
	return ring
}

// nested puts each hole into the smallest shell round it. The middle of an
// edge of a hole never lies on a shell.
func nested(shells []Polygon, holes []Ring) []Polygon {
	slices.SortStableFunc(shells, func(a, b Polygon) int { return cmp.Compare(a.Shell.signedArea(), b.Shell.signedArea()) })
	for _, h := range holes {
		middle := h[0].Toward(h[1], 0.5)
		if i := slices.IndexFunc(shells, func(p Polygon) bool { return p.Shell.locate(middle) == inside }); i >= 0 {
			shells[i].Holes = append(shells[i].Holes, h)
		}
	}
	return shells
}

// measure sums a quantity of the counts over the ground; it must be 0 where
// there are none.
func (d *subdivision) measure(of func(counts []lap) int) float64 {
	var sum float64
	if len(d.spots) == 0 {
		return 0
	}
	origin := d.spots[0].xy()
	for side := 0; side < len(d.from); side += 2 {
		a, b := d.spots[d.from[side]].xy().Minus(origin), d.spots[d.from[side+1]].xy().Minus(origin)
		sum += float64(of(d.counts[d.rims[side]])-of(d.counts[d.rims[side+1]])) * a.Cross(b) / 2
	}
	return sum
}
