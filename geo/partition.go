package geo

import (
	"cmp"
	"slices"
	"sync"
)

// partition returns the regions of ground of each of n classes. A face belongs
// to the class that its counts give it, to none if that is negative; the
// ground outside all rings, which has no counts, must belong to none.
func (d *subdivision) partition(n int, class func(counts []lap) int) []Region {
	b := boundings.Get().(*bounding)
	b.start(d, class)
	defer b.release()
	for side := range d.from {
		k := b.class(int32(side))
		if b.followed[side] || !b.bounds(int32(side), k) {
			continue
		}
		b.follow(int32(side), k)
		b.takeLoops(k)
	}
	regions := make([]Region, n)
	for k := range regions {
		regions[k] = regionOfWound(b.polygons(int32(k)))
	}
	return regions
}

// A bounding follows the edges of the ground of each class.
type bounding struct {
	*subdivision
	classes  []int32 // by rim
	followed []bool  // by side
	seen     []int32 // by spot: its place in a path plus one
	path     []int32 // sides
	spots    []int32 // of the path, less the loops that were taken off it
	loops    []loop
}

// A loop is a ring that bounds ground of a class: a shell, or else a hole.
type loop struct {
	class int32
	shell bool
	ring  Ring
}

// boundings are those not in use.
var boundings = sync.Pool{New: func() any { return new(bounding) }}

func (b *bounding) start(d *subdivision, class func(counts []lap) int) {
	b.subdivision = d
	b.classes = b.classes[:0]
	for _, counts := range d.counts {
		b.classes = append(b.classes, int32(class(counts)))
	}
	b.loops = b.loops[:0]
	b.followed, b.seen = blank(b.followed, len(d.from)), blank(b.seen, len(d.spots))
}

func (b *bounding) release() {
	b.subdivision = nil
	clear(b.loops)
	boundings.Put(b)
}

// blank returns n zeroes, in the room of a slice if that is enough.
func blank[T any](room []T, n int) []T {
	room = sized(room, n)
	clear(room)
	return room
}

// sized returns n elements that have yet to be set, in the room of a slice if
// that is enough.
func sized[T any](room []T, n int) []T { return slices.Grow(room[:0], n)[:n] }

func (b *bounding) class(side int32) int32 { return b.classes[b.rims[side]] }

// bounds reports whether ground of a class lies to the left of a side only.
func (b *bounding) bounds(side, class int32) bool {
	return class >= 0 && b.class(side) == class && b.class(side^1) != class
}

// follow lays a path along the edge of ground of a class, which stays on the
// left, and at each spot turns as far to the left as it can.
func (b *bounding) follow(side, class int32) {
	b.path = b.path[:0]
	for !b.followed[side] {
		b.followed[side] = true
		b.path = append(b.path, side)
		back := side ^ 1
		for places := int32(1); ; places++ {
			if side = b.clockwise(back, places); b.bounds(side, class) {
				break
			}
		}
	}
}

// takeLoops takes the path, which may touch itself, apart at each spot it comes
// back to.
func (b *bounding) takeLoops(class int32) {
	b.spots = b.spots[:0]
	for _, side := range append(b.path, b.path[0]) {
		p := b.from[side]
		if start := b.seen[p]; start > 0 {
			b.take(class, b.ring(b.spots[start-1:]))
			for _, q := range b.spots[start:] {
				b.seen[q] = 0
			}
			b.spots = b.spots[:start]
			continue
		}
		b.spots = append(b.spots, p)
		b.seen[p] = int32(len(b.spots))
	}
	for _, p := range b.spots {
		b.seen[p] = 0
	}
}

// take takes a ring unless it is thinner than a grain.
func (b *bounding) take(class int32, ring Ring) {
	if area := ring.signedArea(); max(area, -area) >= grain*ring.length() {
		b.loops = append(b.loops, loop{class, area > 0, ring})
	}
}

// polygons returns those of a class.
func (b *bounding) polygons(class int32) []Polygon {
	count, holes := 0, false
	for _, l := range b.loops {
		if l.class == class && l.shell {
			count++
		} else if l.class == class {
			holes = true
		}
	}
	if count == 0 {
		return nil
	}
	shells := make([]Polygon, 0, count)
	for _, l := range b.loops {
		if l.class == class && l.shell {
			shells = append(shells, Polygon{Shell: l.ring})
		}
	}
	if holes {
		b.nest(class, shells)
	}
	return shells
}

// ring returns the ring through spots, from its least position on.
func (b *bounding) ring(spots []int32) Ring {
	least := 0
	for i, p := range spots {
		if b.subdivision.spots[p].before(b.subdivision.spots[spots[least]]) {
			least = i
		}
	}
	ring := make(Ring, 0, len(spots))
	for _, p := range spots[least:] {
		ring = append(ring, b.subdivision.spots[p].xy())
	}
	for _, p := range spots[:least] {
		ring = append(ring, b.subdivision.spots[p].xy())
	}
	return ring
}

// nest puts each hole of a class into the smallest shell round it. The middle of
// an edge of a hole never lies on a shell.
func (b *bounding) nest(class int32, shells []Polygon) {
	slices.SortStableFunc(shells, func(a, b Polygon) int { return cmp.Compare(a.Shell.signedArea(), b.Shell.signedArea()) })
	for _, l := range b.loops {
		if l.class != class || l.shell {
			continue
		}
		middle := l.ring[0].Toward(l.ring[1], 0.5)
		if i := slices.IndexFunc(shells, func(p Polygon) bool { return p.Shell.locate(middle) == inside }); i >= 0 {
			shells[i].Holes = append(shells[i].Holes, l.ring)
		}
	}
}

// areas returns the areas of the ground of each of n classes; none of what is
// thinner than a grain, which partition leaves out as well.
func (d *subdivision) areas(n int, class func(counts []lap) int) []Area {
	b := boundings.Get().(*bounding)
	b.start(d, class)
	defer b.release()
	areas, lengths := make([]Area, n), make([]float64, n)
	for side := range d.from {
		k := b.class(int32(side))
		if !b.bounds(int32(side), k) {
			continue
		}
		from, to := d.ends(int32(side))
		areas[k] += Area(from.Cross(to) / 2)
		lengths[k] += to.Minus(from).Norm()
	}
	for k := range areas {
		if float64(areas[k]) < grain*lengths[k] {
			areas[k] = 0
		}
	}
	return areas
}

// ends returns where a side starts and ends, from the first spot on.
func (d *subdivision) ends(side int32) (from, to XY) {
	origin := d.spots[0].xy()
	return d.spots[d.from[side]].xy().Minus(origin), d.spots[d.from[side^1]].xy().Minus(origin)
}

// extent is the rectangle round all edges.
func (d *subdivision) extent() Bounds {
	b := noBounds
	for _, p := range d.spots {
		b = b.With(p.xy())
	}
	return b
}

// measure sums a quantity of the counts over the ground; it must be 0 where
// there are none.
func (d *subdivision) measure(of func(counts []lap) int) float64 {
	var sum float64
	for side := 0; side < len(d.from); side += 2 {
		from, to := d.ends(int32(side))
		sum += float64(of(d.counts[d.rims[side]])-of(d.counts[d.rims[side+1]])) * from.Cross(to) / 2
	}
	return sum
}
