package lanes

import (
	"container/heap"
	"math"

	"example.org/turfplat/geo"
)

// berth is how far, in metres, a way round a corner keeps off it.
const berth = 0.2

// A walker finds the shortest ways past what must not be crossed: straight, or
// from corner to corner of what stands in the way.
type walker struct {
	view    *fieldOfView
	corners []geo.XY
	next    [][]stop // corners seen from each corner, once asked for
	trees   map[geo.XY]*wayTree
}

// A wayTree holds the shortest ways from one place to all corners.
type wayTree struct {
	away   []float64
	before []int // -1 = straight from the place
}

// newWalker returns a walker past closed ground, which must not be entered,
// and walls.
func newWalker(grounds []geo.Region, walls []geo.Line) *walker {
	w := &walker{trees: make(map[geo.XY]*wayTree)}
	var edges [][2]geo.XY
	for _, g := range grounds {
		edgesOf(g, func(a, b geo.XY) { edges = append(edges, [2]geo.XY{a, b}) })
		for _, p := range g.Polygons() {
			for _, ring := range p.Rings() {
				w.corners = append(w.corners, cornersOf(ring)...)
			}
		}
	}
	for _, l := range walls {
		for i := 1; i < len(l); i++ {
			edges = append(edges, [2]geo.XY{l[i-1], l[i]})
		}
		w.corners = append(w.corners, roundEnds(l)...)
	}
	w.view = newFieldOfView(edges)
	free := w.corners[:0]
	for _, c := range w.corners {
		if !holdsAny(grounds, c) {
			free = append(free, c)
		}
	}
	w.corners = free
	w.next = make([][]stop, len(w.corners))
	return w
}

func holdsAny(grounds []geo.Region, p geo.XY) bool {
	for _, g := range grounds {
		if g.Contains(p) {
			return true
		}
	}
	return false
}

// cornersOf returns the places at which ways bend round closed ground, whose
// ring has it to the left: a berth off its outer corners, one for every half
// radian of a bend.
func cornersOf(ring geo.Ring) []geo.XY {
	const enough = 0.5
	var corners []geo.XY
	var turned float64
	n := len(ring)
	for i, p := range ring {
		in, out := unit(p.Minus(ring[(i+n-1)%n])), unit(ring[(i+1)%n].Minus(p))
		turn := math.Atan2(in.Cross(out), in.Dot(out))
		if turn <= 0 {
			continue
		}
		if turned += turn; turned < enough {
			continue
		}
		turned = 0
		off := in.Minus(out) // away from the ground
		corners = append(corners, p.Plus(unit(off).Times(berth)))
	}
	return corners
}

// roundEnds returns the places at which ways bend round a wall: beyond its
// ends, and on both sides of its bends.
func roundEnds(l geo.Line) []geo.XY {
	var at []geo.XY
	for i, p := range l {
		switch {
		case i == 0 && l[0] != l[len(l)-1]:
			at = append(at, p.Plus(unit(p.Minus(l[1])).Times(berth)))
		case i == len(l)-1 && l[0] != l[i]:
			at = append(at, p.Plus(unit(p.Minus(l[i-1])).Times(berth)))
		case i > 0 && i < len(l)-1:
			off := unit(p.Minus(l[i-1])).Minus(unit(l[i+1].Minus(p)))
			if off.Norm() > 0.2 {
				off = unit(off).Times(berth)
				at = append(at, p.Plus(off), p.Minus(off))
			}
		}
	}
	return at
}

// unreached is the length added to a way there is not, m.
const unreached = 1e5

// way returns the length of the shortest way from a to b, or, if there is
// none, more than any is.
func (w *walker) way(a, b geo.XY) float64 {
	if w.view.sees(a, b) {
		return a.Distance(b)
	}
	d, _ := w.last(a, b)
	return min(d, unreached+a.Distance(b))
}

// path returns the shortest way from a to b; nil if there is none.
func (w *walker) path(a, b geo.XY) geo.Line {
	if w.view.sees(a, b) {
		return geo.Line{a, b}
	}
	d, c := w.last(a, b)
	if math.IsInf(d, 1) {
		return nil
	}
	back := geo.Line{b}
	for t := w.tree(a); c >= 0; c = t.before[c] {
		back = append(back, w.corners[c])
	}
	back = append(back, a)
	for i, j := 0, len(back)-1; i < j; i, j = i+1, j-1 {
		back[i], back[j] = back[j], back[i]
	}
	return back
}

// last returns the length of the shortest bent way from a to b, and its last
// corner.
func (w *walker) last(a, b geo.XY) (float64, int) {
	t := w.tree(a)
	best, at := math.Inf(1), -1
	for c, away := range t.away {
		if d := away + w.corners[c].Distance(b); d < best && w.view.sees(w.corners[c], b) {
			best, at = d, c
		}
	}
	return best, at
}

// tree returns the shortest ways from a place (Dijkstra 1959).
func (w *walker) tree(from geo.XY) *wayTree {
	if t, ok := w.trees[from]; ok {
		return t
	}
	t := &wayTree{make([]float64, len(w.corners)), make([]int, len(w.corners))}
	queue := new(nearestFirst)
	for c, p := range w.corners {
		t.away[c], t.before[c] = math.Inf(1), -1
		if w.view.sees(from, p) {
			t.away[c] = from.Distance(p)
			heap.Push(queue, stop{c, t.away[c]})
		}
	}
	for queue.Len() > 0 {
		s := heap.Pop(queue).(stop)
		if s.away > t.away[s.node] {
			continue
		}
		for _, n := range w.seenFrom(s.node) {
			if d := s.away + n.away; d < t.away[n.node] {
				t.away[n.node], t.before[n.node] = d, s.node
				heap.Push(queue, stop{n.node, d})
			}
		}
	}
	w.trees[from] = t
	return t
}

// seenFrom lists the corners seen from a corner, and how far they are.
func (w *walker) seenFrom(c int) []stop {
	if w.next[c] == nil {
		w.next[c] = []stop{}
		for o, p := range w.corners {
			if o != c && w.view.sees(w.corners[c], p) {
				w.next[c] = append(w.next[c], stop{o, w.corners[c].Distance(p)})
			}
		}
	}
	return w.next[c]
}
