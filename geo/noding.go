package geo

import (
	"cmp"
	"math"
	"math/big"
	"slices"
)

// A linework is rings that may cross, overlap and touch themselves and each
// other.
type linework []Ring

// A meeting is a place inside an edge at which it crosses another, or at which
// another has its end.
type meeting struct {
	first, second int // edges, counted through the linework
	at            []XY
	crossing      bool // the edges pass through each other
}

func (w linework) edges() []edge {
	var edges []edge
	for _, r := range w {
		for i, a := range r {
			edges = append(edges, edge{a, r.next(i)})
		}
	}
	return edges
}

// noded returns the linework with a vertex at each meeting, so that edges
// share whole edges and vertices only, and the meetings. ErrTangled says that
// there are more than limit. One round does, if rounding is kind; a few settle
// it.
func (w linework) noded(limit int) (linework, []meeting, error) {
	const rounds = 10
	var all []meeting
	for range rounds {
		edges := w.edges()
		ms := meetings(edges, limit)
		if len(ms) == 0 {
			return w, all, nil
		}
		if len(ms) > limit {
			break
		}
		if all == nil {
			all = ms
		}
		w = w.divided(edges, ms)
	}
	return nil, nil, ErrTangled
}

// meetings finds all of a list of edges by a sweep from west to east. It stops
// when more than limit are found.
func meetings(edges []edge, limit int) []meeting {
	type boxed struct {
		Bounds
		edge int
	}
	order := make([]boxed, len(edges))
	for i, e := range edges {
		order[i] = boxed{edgeBounds(e.a, e.b), i}
	}
	slices.SortFunc(order, func(a, b boxed) int { return cmp.Or(cmp.Compare(a.Min.X, b.Min.X), cmp.Compare(a.edge, b.edge)) })

	var found []meeting
	var open []boxed
	for _, e := range order {
		kept := open[:0]
		for _, o := range open {
			if o.Max.X < e.Min.X {
				continue
			}
			kept = append(kept, o)
			if o.Min.Y > e.Max.Y || o.Max.Y < e.Min.Y {
				continue
			}
			i, j := min(e.edge, o.edge), max(e.edge, o.edge)
			if at, crossing := edges[i].meet(edges[j]); len(at) > 0 {
				found = append(found, meeting{i, j, at, crossing})
			}
		}
		if len(found) > limit {
			break
		}
		open = append(kept, e)
	}
	slices.SortFunc(found, func(a, b meeting) int { return cmp.Or(cmp.Compare(a.first, b.first), cmp.Compare(a.second, b.second)) })
	return found
}

// meet returns where two edges cross, or one has an end inside the other.
func (e edge) meet(o edge) (at []XY, crossing bool) {
	ea, eb := orientation(e.a, e.b, o.a), orientation(e.a, e.b, o.b)
	if ea*eb > 0 {
		return nil, false
	}
	oa, ob := orientation(o.a, o.b, e.a), orientation(o.a, o.b, e.b)
	if ea*eb < 0 && oa*ob < 0 {
		return []XY{e.intersection(o)}, true
	}
	add := func(p XY, turn int, e edge) {
		if turn == 0 && between(e.a, e.b, p) && p != e.a && p != e.b {
			at = append(at, p)
		}
	}
	add(o.a, ea, e)
	add(o.b, eb, e)
	add(e.a, oa, o)
	add(e.b, ob, o)
	return at, false
}

// intersection returns the common point of two edges that cross, snapped.
func (e edge) intersection(o edge) XY {
	share, _ := new(big.Float).Quo(exactCross(e.a, o.a, o.a, o.b), exactCross(e.a, e.b, o.a, o.b)).Float64()
	return e.at(share).snapped()
}

// divided returns the linework, whose edges are given, with a vertex at each
// meeting and wherever an edge passes through the square of side grain about a
// vertex or a crossing. Without the latter, snapping would move edges across
// vertices and so make new crossings (Hobby 1999, "Practical segment
// intersection with finite precision output").
func (w linework) divided(edges []edge, ms []meeting) linework {
	extra := make([][]XY, len(edges))
	nodes := slices.Concat(w...)
	for _, m := range ms {
		extra[m.first] = append(extra[m.first], m.at...)
		extra[m.second] = append(extra[m.second], m.at...)
		nodes = append(nodes, m.at...)
	}
	slices.SortFunc(nodes, compareXY)
	nodes = slices.Compact(nodes)
	spots := make([]edge, len(nodes))
	for i, p := range nodes {
		spots[i] = edge{p, p}
	}
	grid := newEdgeGrid(spots)

	d := make(linework, len(w))
	k := 0
	for i, r := range w {
		for range r {
			e := edges[k]
			d[i] = append(append(d[i], e.a), e.stations(grid, extra[k])...)
			k++
		}
		d[i] = d[i].withoutRepeats()
	}
	return d
}

// stations returns the positions at which an edge needs a vertex, in order.
func (e edge) stations(nodes *edgeGrid, on []XY) []XY {
	nodes.near(e, grain, func(i int) {
		if p := nodes.edges[i].a; p != e.a && p != e.b && e.passes(p) {
			on = append(on, p)
		}
	})
	slices.SortFunc(on, func(p, q XY) int {
		return cmp.Or(cmp.Compare(math.Abs(p.X-e.a.X), math.Abs(q.X-e.a.X)), cmp.Compare(math.Abs(p.Y-e.a.Y), math.Abs(q.Y-e.a.Y)))
	})
	return on
}

// passes reports whether an edge passes through the square of side grain about
// p.
func (e edge) passes(p XY) bool {
	const h = grain / 2
	if !edgeBounds(e.a, e.b).Grown(h).holds(p) {
		return false
	}
	left, right := false, false
	for _, corner := range [4]XY{{-h, -h}, {h, -h}, {h, h}, {-h, h}} {
		turn := orientation(e.a, e.b, p.plus(corner))
		left, right = left || turn > 0, right || turn < 0
	}
	return left && right
}
