package track

import (
	"container/heap"
	"errors"
	"slices"

	"example.org/turfplat/geo"
)

// errCrosses says that smoothing does not make a ring simple.
var errCrosses = errors.New("ring crosses itself however it is smoothed")

// outlined draws a ring that encloses an area: the mean ring, smoothed no more
// than it takes not to cross itself, and set out or in all round until its
// area is that of the laps.
func outlined(ring []geo.XY, area float64) (geo.Region, error) {
	for half := 0; half <= len(ring)/8; half = max(half+1, half*2) {
		drawn := setOut(rounded(ring, half), area)
		r, err := geo.RegionOf([]geo.Ring{drawn})
		if err == nil && len(r.Polygons()) == 1 {
			return simplified(r, drawn, area), nil
		}
	}
	return geo.Region{}, errCrosses
}

// rounded smooths a closed ring over half samples before and after each.
func rounded(ring []geo.XY, half int) []geo.XY {
	n := len(ring)
	out := make([]geo.XY, n)
	for i := range ring {
		var sum geo.XY
		var weights float64
		for k := -half; k <= half; k++ {
			u := float64(k) / float64(half+1)
			w := 1 - u*u
			sum = sum.Plus(ring[(i+k+n)%n].Times(w))
			weights += w
		}
		out[i] = sum.Times(1 / weights)
	}
	return out
}

// setOut moves all edges of a counter-clockwise ring outwards by one and the
// same distance, small against the ring, so that it encloses an area.
func setOut(ring []geo.XY, area float64) geo.Ring {
	n := len(ring)
	out := slices.Clone(ring)
	for range 4 {
		d := (area - signedArea(out)) / ringLength(out)
		moved := make([]geo.XY, n)
		for i, p := range out {
			chord := out[(i+1)%n].Minus(out[(i+n-1)%n])
			moved[i] = p.Plus(turnedRight(chord).Times(d / max(chord.Norm(), 1e-9)))
		}
		out = moved
	}
	return out
}

// simplified leaves out vertices as long as the ring stays simple; otherwise
// the region stands as it is.
func simplified(r geo.Region, ring geo.Ring, area float64) geo.Region {
	fewer := setOut(thinned(ring, simplify.Value), area)
	s, err := geo.RegionOf([]geo.Ring{fewer})
	if err != nil || len(s.Polygons()) != 1 {
		return r
	}
	return s
}

// thinned leaves out, least first, each vertex that lies within a tolerance of
// the line between its neighbours (after Visvalingam & Whyatt 1993, Cartogr.
// J. 30:46-51, by distance instead of area).
func thinned(ring []geo.XY, tolerance float64) []geo.XY {
	n := len(ring)
	q := &vertices{ring: ring, before: make([]int, n), after: make([]int, n), off: make([]float64, n), place: make([]int, n)}
	for i := range ring {
		q.before[i], q.after[i] = (i+n-1)%n, (i+1)%n
		q.place[i] = i
		q.heap = append(q.heap, i)
	}
	for i := range ring {
		q.off[i] = q.offset(i)
	}
	heap.Init(q)
	for len(q.heap) > 4 && q.off[q.heap[0]] < tolerance {
		i := heap.Pop(q).(int)
		b, a := q.before[i], q.after[i]
		q.after[b], q.before[a] = a, b
		for _, k := range []int{a, b} {
			q.off[k] = max(q.off[i], q.offset(k)) // an effect once dropped is not forgotten
			heap.Fix(q, q.place[k])
		}
	}
	left := slices.Sorted(slices.Values(q.heap))
	out := make([]geo.XY, len(left))
	for k, i := range left {
		out[k] = ring[i]
	}
	return out
}

// vertices is a queue of the vertices of a ring, the least needed first.
type vertices struct {
	ring          []geo.XY
	before, after []int // neighbours left
	off           []float64
	heap, place   []int // vertices, and where each stands in the queue
}

func (q *vertices) offset(i int) float64 {
	return fromEdge(q.ring[i], q.ring[q.before[i]], q.ring[q.after[i]]).Norm()
}

func (q *vertices) Len() int { return len(q.heap) }
func (q *vertices) Less(a, b int) bool {
	i, j := q.heap[a], q.heap[b]
	return q.off[i] < q.off[j] || q.off[i] == q.off[j] && i < j
}
func (q *vertices) Swap(a, b int) {
	q.heap[a], q.heap[b] = q.heap[b], q.heap[a]
	q.place[q.heap[a]], q.place[q.heap[b]] = a, b
}
func (q *vertices) Push(x any) { q.heap = append(q.heap, x.(int)) }
func (q *vertices) Pop() any {
	last := len(q.heap) - 1
	i := q.heap[last]
	q.heap = q.heap[:last]
	return i
}
