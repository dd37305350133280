package geo

import (
	"math"
	"slices"
	"sync"
)

// A Border is the edges of a region, made ready to be searched: the region's
// extent is cut into rows from south to north, and each row knows the edges in
// it; a few edges need no rows. A border never changes, so that several goroutines may use one.
type Border struct {
	region Region
	edges  []edge
	south  float64  // of the lowest row
	perM   float64  // rows a metre
	first  []int32  // place in list of the first edge of a row; one more than there are rows
	list   []listed // edges by row, in order
	slots  []int32  // number of an edge plus one, by the hash of its ends; a power of two of them
}

// A listed edge is one of a row, with what tells most edges apart from others.
type listed struct {
	west, east float64
	edge       int32
	lowest     int32 // row of its southern end
}

const (
	// edgesARow bounds how often an edge stands in the list, in the mean.
	edgesARow = 2
	// fewEdges are found faster one by one than by rows and slots.
	fewEdges = 12
)

// borders are those not in use.
var borders = sync.Pool{New: func() any { return new(Border) }}

// NewBorder makes the edges of a region ready. That takes time and memory in
// proportion to their number.
func NewBorder(r Region) *Border {
	b := borders.Get().(*Border)
	b.region, b.edges = r, r.appendEdges(b.edges[:0])
	b.first, b.list, b.slots = b.first[:0], b.list[:0], b.slots[:0]
	if len(b.edges) > fewEdges {
		b.layRows()
		b.layEnds()
	}
	return b
}

// Release gives the room of a border that nobody will look at again to others;
// a border need not be released.
func (b *Border) Release() {
	b.region = Region{}
	borders.Put(b)
}

func (b *Border) layRows() {
	var climbed float64
	for _, e := range b.edges {
		climbed += math.Abs(e.b.Y - e.a.Y)
	}
	bounds := b.region.Bounds()
	b.south, b.perM = bounds.Min.Y, float64(len(b.edges))/max(bounds.Height(), climbed/edgesARow, grain)
	rows := 1 + int(bounds.Height()*b.perM)
	b.first = blank(b.first, rows+1)
	for _, e := range b.edges {
		low, high := b.rowsOf(e)
		for row := low; row <= high; row++ {
			b.first[row+1]++
		}
	}
	sum(b.first)
	b.list = sized(b.list, int(b.first[rows]))
	for i, e := range b.edges {
		low, high := b.rowsOf(e)
		l := listed{min(e.a.X, e.b.X), max(e.a.X, e.b.X), int32(i), low}
		for row := low; row <= high; row++ {
			b.list[b.first[row]] = l
			b.first[row]++
		}
	}
	copy(b.first[1:], b.first) // each ended where the next began
	b.first[0] = 0
}

// rowsOf returns the lowest and the highest row of an edge.
func (b *Border) rowsOf(e edge) (low, high int32) {
	low, high = b.row(e.a.Y), b.row(e.b.Y)
	return min(low, high), max(low, high)
}

// row returns the row at y, or that nearest to it.
func (b *Border) row(y float64) int32 {
	return int32(max(0, min(float64(len(b.first)-2), (y-b.south)*b.perM)))
}

// near adds to some numbers those of the edges whose bounds meet a box, each
// once.
func (b *Border) near(box Bounds, found []int32) []int32 {
	if !box.Meets(b.region.Bounds()) {
		return found
	}
	if len(b.list) == 0 {
		return b.nearOfAll(box, found)
	}
	low, high := b.row(box.Min.Y), b.row(box.Max.Y)
	if listed := b.first[high+1] - b.first[low]; int(listed) >= len(b.edges) {
		return b.nearOfAll(box, found)
	}
	for row := low; row <= high; row++ {
		in := b.list[b.first[row]:b.first[row+1]]
		for k := range in {
			l := &in[k]
			if apart(l.west, box.Max.X, box.Min.X, l.east) || max(low, l.lowest) != row {
				continue
			}
			if e := &b.edges[l.edge]; min(e.a.Y, e.b.Y) <= box.Max.Y && max(e.a.Y, e.b.Y) >= box.Min.Y {
				found = append(found, l.edge)
			}
		}
	}
	return found
}

// apart reports whether a > b or c > d, by the signs of two differences: one
// branch, which guesses well, where two would not.
func apart(a, b, c, d float64) bool {
	return (math.Float64bits(b-a)|math.Float64bits(d-c))>>63 != 0
}

func (b *Border) nearOfAll(box Bounds, found []int32) []int32 {
	for i := range b.edges {
		if b.edges[i].meets(box) {
			found = append(found, int32(i))
		}
	}
	return found
}

// holds reports whether p lies in the region and not on its edge.
func (b *Border) holds(p XY) bool {
	if len(b.list) == 0 {
		return b.region.holds(p)
	}
	if !b.region.Bounds().holds(p) {
		return false
	}
	in, row := false, b.row(p.Y)
	for _, l := range b.list[b.first[row]:b.first[row+1]] {
		if l.east < p.X {
			continue
		}
		crosses, on := eastward(b.edges[l.edge].a, b.edges[l.edge].b, p)
		if on {
			return false
		}
		in = in != crosses
	}
	return in
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

// meets reports whether the bounds of the edge share a point with a box.
func (e *edge) meets(box Bounds) bool {
	return (e.a.X <= box.Max.X || e.b.X <= box.Max.X) && (e.a.X >= box.Min.X || e.b.X >= box.Min.X) &&
		(e.a.Y <= box.Max.Y || e.b.Y <= box.Max.Y) && (e.a.Y >= box.Min.Y || e.b.Y >= box.Min.Y)
}

func (e edge) bounds() Bounds { return edgeBounds(e.a, e.b) }

// same reports whether two edges have the same ends.
func (e edge) same(o edge) bool { return e == o || e.a == o.b && e.b == o.a }
