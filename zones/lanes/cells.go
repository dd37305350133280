package lanes

import (
	"cmp"
	"math"
	"slices"

	"example.org/turfplat/geo"
)

// A heading is the direction of a set of straight lanes: u along them, v
// across, to the left.
type heading struct{ sin, cos float64 }

func headingOf(angle float64) heading {
	sin, cos := math.Sincos(angle)
	return heading{sin, cos}
}

func (h heading) uv(p geo.XY) (u, v float64) {
	return p.X*h.cos + p.Y*h.sin, p.Y*h.cos - p.X*h.sin
}

func (h heading) xy(u, v float64) geo.XY {
	return geo.XY{X: u*h.cos - v*h.sin, Y: u*h.sin + v*h.cos}
}

// A slab is the stretch of ground between two edges that both run from v0 to
// v1: from u = l0 to r0 at v0, from l1 to r1 at v1.
type slab struct{ v0, v1, l0, r0, l1, r1 float64 }

// at returns the ends of the slab's row at v.
func (s slab) at(v float64) (l, r float64) {
	t := (v - s.v0) / (s.v1 - s.v0)
	return s.l0 + t*(s.l1-s.l0), s.r0 + t*(s.r1-s.r0)
}

// A cell is ground that lanes of one heading can serve one after the other:
// slabs stacked across the lanes, each meeting only the next (boustrophedon
// cellular decomposition; Choset & Pignon 1998).
type cell []slab

func (c cell) width() float64 { return c[len(c)-1].v1 - c[0].v0 }

// area is the cell's area, m2.
func (c cell) area() float64 {
	var sum float64
	for _, s := range c {
		sum += (s.v1 - s.v0) * (s.r0 - s.l0 + s.r1 - s.l1) / 2
	}
	return sum
}

// row returns the ends of the cell's row at v.
func (c cell) row(v float64) (l, r float64) { return c[c.slabAt(v)].at(v) }

// slabAt returns the number of the slab at v.
func (c cell) slabAt(v float64) int {
	above, _ := slices.BinarySearchFunc(c, v, func(s slab, v float64) int { return cmp.Compare(s.v0, v) })
	return max(0, above-1)
}

// slant returns how much farther than a row at v its neighbourhood reaches,
// half a row's width to each side, to the left end and to the right: beyond
// what square corners would leave. Where an edge crosses rows at a flat angle,
// a row must run on so far to serve its own ground; it need not where the
// ground starts anew with a step.
func (c cell) slant(v, half float64) (left, right float64) {
	at := c.slabAt(v)
	l, r := c[at].at(v)
	for _, step := range []int{-1, 1} {
		w := v + float64(step)*half
		for i := at; i >= 0 && i < len(c); i += step {
			a, b := c[i].at(min(c[i].v1, max(c[i].v0, w)))
			left, right = max(left, l-a-half), max(right, b-r-half)
			if w >= c[i].v0 && w <= c[i].v1 || i+step < 0 || i+step >= len(c) || c.steps(i, i+step) {
				break
			}
		}
	}
	return left, right
}

// steps reports whether the sides of two neighbouring slabs do not meet.
func (c cell) steps(i, j int) bool {
	const step = 0.05 // m
	below, above := c[min(i, j)], c[max(i, j)]
	return math.Abs(below.l1-above.l0) > step || math.Abs(below.r1-above.r0) > step
}

// thinnest is the height, in metres, under which a slab is rounding.
const thinnest = 1e-6

// cellsOf decomposes the ground that rings enclose, holes excepted, into cells
// for a heading, from the right of it to the left.
func cellsOf(rings []geo.Ring, h heading) []cell {
	var cells []cell
	var open []int // cells that reach up to the last level, by u
	levels := levelsOf(rings, h)
	for i := 1; i < len(levels.at); i++ {
		row := levels.slabs(levels.at[i-1], levels.at[i])
		next := make([]int, len(row))
		for j, s := range row {
			below := meeting(cells, open, s)
			if len(below) == 1 && single(cells[below[0]], row) {
				cells[below[0]] = append(cells[below[0]], s)
				next[j] = below[0]
				continue
			}
			next[j] = len(cells)
			cells = append(cells, cell{s})
		}
		open = next
	}
	return cells
}

// meeting returns which of the open cells have ground in common with the foot
// of a slab.
func meeting(cells []cell, open []int, s slab) []int {
	var below []int
	for _, k := range open {
		if top := cells[k][len(cells[k])-1]; min(top.r1, s.r0)-max(top.l1, s.l0) > thinnest {
			below = append(below, k)
		}
	}
	return below
}

// single reports whether only one slab of a row stands on a cell.
func single(c cell, row []slab) bool {
	top, n := c[len(c)-1], 0
	for _, s := range row {
		if min(top.r1, s.r0)-max(top.l1, s.l0) > thinnest {
			n++
		}
	}
	return n == 1
}

// levels are the edges of rings seen along a heading, and the v at which any
// of them begins or ends.
type levels struct {
	edges [][4]float64 // u and v of the lower end, u and v of the upper; by lower end
	open  [][4]float64 // those that the last cut met, or that began below it
	next  int          // the first of those not yet met
	at    []float64
}

func levelsOf(rings []geo.Ring, h heading) *levels {
	l := new(levels)
	for _, ring := range rings {
		for i, a := range ring {
			ua, va := h.uv(a)
			ub, vb := h.uv(ring[(i+1)%len(ring)])
			l.at = append(l.at, va)
			if va > vb {
				ua, va, ub, vb = ub, vb, ua, va
			}
			l.edges = append(l.edges, [4]float64{ua, va, ub, vb})
		}
	}
	slices.Sort(l.at)
	apart := l.at[:0]
	for _, v := range l.at {
		if len(apart) == 0 || v-apart[len(apart)-1] > thinnest {
			apart = append(apart, v)
		}
	}
	l.at = apart
	slices.SortFunc(l.edges, func(a, b [4]float64) int { return cmp.Compare(a[1], b[1]) })
	return l
}

// slabs cuts the ground between two neighbouring levels into slabs, by u. It
// is called for one pair of levels after the other.
func (l *levels) slabs(v0, v1 float64) []slab {
	mid := (v0 + v1) / 2
	for ; l.next < len(l.edges) && l.edges[l.next][1] <= mid; l.next++ {
		l.open = append(l.open, l.edges[l.next])
	}
	l.open = slices.DeleteFunc(l.open, func(e [4]float64) bool { return e[3] <= mid })
	sides := make([][3]float64, len(l.open)) // u at v0, v1 and halfway
	for i, e := range l.open {
		at := func(v float64) float64 { return e[0] + (e[2]-e[0])*min(1, max(0, (v-e[1])/(e[3]-e[1]))) }
		sides[i] = [3]float64{at(v0), at(v1), at(mid)}
	}
	slices.SortFunc(sides, func(a, b [3]float64) int { return cmp.Compare(a[2], b[2]) })
	var row []slab
	for i := 1; i < len(sides); i += 2 {
		a, b := sides[i-1], sides[i]
		row = append(row, slab{v0, v1, a[0], b[0], a[1], b[1]})
	}
	return row
}
