package geo

import (
	"math"
	"slices"
	"sync"
)

// A Border is the edges of a region, made ready to be searched: each has its
// box, and if they are many, the region's extent is cut into rows from south to
// north, each of which knows the edges in it. Until it is released a border never
// changes, so that several goroutines may use one. Release it, once, when all are
// done with it; one that is not released is left to the garbage collector.
type Border struct {
	region Region
	edges  []edge
	boxes  []Bounds // of the edges
	south  float64  // of the lowest row
	tall   float64  // m, a row
	pad    float64  // m, by which rows are moved outwards to tell how far edges go in them
	first  []int32  // place in list of the first edge of a row; one more than there are rows
	list   []listed // edges by row, in order
	slots  []int32  // number of an edge plus one, by the hash of its ends; a power of two of them

	counting []freedom // by edge, what of it counts; none = all of all edges does
	courses  []int32   // reused: edges by the sector of their course
}

const (
	fewEdges  = 12  // are compared faster one by one than by slots and courses
	manyEdges = 160 // are searched faster by rows than by all their boxes
)

// borders are those not in use.
var borders = sync.Pool{New: func() any { return new(Border) }}

// NewBorder makes the edges of a region ready. That takes time and memory in
// proportion to their number.
func NewBorder(r Region) *Border { return newBorder(r, grain) }

// newBorder is NewBorder; rows tell how far edges go in them and so far beyond.
func newBorder(r Region, pad float64) *Border {
	b := borders.Get().(*Border)
	b.region, b.edges = r, r.appendEdges(b.edges[:0])
	b.first, b.list, b.slots = b.first[:0], b.list[:0], b.slots[:0]
	b.counting = b.counting[:0]
	b.boxes = sized(b.boxes, len(b.edges))
	for i, e := range b.edges {
		b.boxes[i] = e.bounds()
	}
	if len(b.edges) > fewEdges {
		b.layEnds()
	}
	if len(b.edges) > manyEdges {
		b.layRows(pad)
	}
	return b
}

// Region returns the region of which it is the border.
func (b *Border) Region() Region { return b.region }

// Release gives the room of a border to others. Afterwards nothing may be asked of
// it, nor may it be released again; its region stays.
func (b *Border) Release() {
	b.region = Region{}
	borders.Put(b)
}

// layEnds lays the slots in which same looks edges up.
func (b *Border) layEnds() {
	size := 16
	for size < 2*len(b.edges) {
		size *= 2
	}
	b.slots = blank(b.slots, size)
	for i, e := range b.edges {
		at := b.slot(e)
		for b.slots[at] > 0 {
			at = (at + 1) & uint64(size-1)
		}
		b.slots[at] = int32(i) + 1
	}
}

// same returns the first edge that has the same ends as another one; -1 if none
// has.
func (b *Border) same(e edge) int {
	if len(b.slots) == 0 {
		return slices.IndexFunc(b.edges, e.same)
	}
	for at := b.slot(e); b.slots[at] > 0; at = (at + 1) & uint64(len(b.slots)-1) {
		if i := int(b.slots[at] - 1); b.edges[i].same(e) {
			return i
		}
	}
	return -1
}

// slot is where the search for an edge begins, whichever way it runs.
func (b *Border) slot(e edge) uint64 {
	const odd = 0x9e3779b97f4a7c15         // 2^64 over the golden ratio, scatters neighbours
	middle := e.a.Plus(e.b).Plus(XY{0, 0}) // never a negative zero
	x, y := math.Float64bits(middle.X), math.Float64bits(middle.Y)
	return ((x*odd ^ y) * odd >> 32) & uint64(len(b.slots)-1)
}

// An edge is one of a region, which lies to its left.
type edge struct{ a, b XY }

// at returns the position a share t of the way along.
func (e edge) at(t float64) XY { return e.a.Toward(e.b, t) }

func (e edge) bounds() Bounds { return edgeBounds(e.a, e.b) }

// same reports whether two edges have the same ends.
func (e edge) same(o edge) bool { return e == o || e.a == o.b && e.b == o.a }
