package geo

import (
	"cmp"
	"slices"
)

// A meeting is a place where two edges of a ring that are not neighbours
// share a point, or where neighbours fold back on one another.
type meeting struct {
	first, second int // edges, by their start
	at            []XY
	crossing      bool // the edges pass through each other
}

// meetings finds all of a ring by a sweep from west to east. It stops when
// more than limit are found.
func (r Ring) meetings(limit int) []meeting {
	order := make([]int, len(r))
	boxes := make([]Bounds, len(r))
	for i, a := range r {
		order[i], boxes[i] = i, edgeBounds(a, r.next(i))
	}
	slices.SortFunc(order, func(i, j int) int { return cmp.Or(cmp.Compare(boxes[i].Min.X, boxes[j].Min.X), cmp.Compare(i, j)) })

	var found []meeting
	var open []int
	for _, i := range order {
		open = slices.DeleteFunc(open, func(j int) bool { return boxes[j].Max.X < boxes[i].Min.X })
		for _, j := range open {
			if !boxes[i].Meets(boxes[j]) {
				continue
			}
			if m, ok := r.meet(min(i, j), max(i, j)); ok {
				found = append(found, m)
			}
		}
		if len(found) > limit {
			break
		}
		open = append(open, i)
	}
	slices.SortFunc(found, func(a, b meeting) int { return cmp.Or(cmp.Compare(a.first, b.first), cmp.Compare(a.second, b.second)) })
	return found
}

// meet compares the edges i < j.
func (r Ring) meet(i, j int) (meeting, bool) {
	a, b, c, d := r[i], r.next(i), r[j], r.next(j)
	m := meeting{first: i, second: j}
	abc, abd := orientation(a, b, c), orientation(a, b, d)
	cda, cdb := orientation(c, d, a), orientation(c, d, b)
	if abc*abd < 0 && cda*cdb < 0 {
		m.crossing, m.at = true, []XY{intersection(a, b, c, d)}
		return m, true
	}
	add := func(p XY, on bool, q, s XY) {
		if on && between(q, s, p) && !slices.Contains(m.at, p) {
			m.at = append(m.at, p)
		}
	}
	add(c, abc == 0, a, b)
	add(d, abd == 0, a, b)
	add(a, cda == 0, c, d)
	add(b, cdb == 0, c, d)
	if b == c || d == a { // neighbours share one point, and should share no more
		return m, len(m.at) > 1
	}
	return m, len(m.at) > 0
}

// intersection returns the common point of two edges that cross, snapped.
func intersection(a, b, c, d XY) XY {
	u, v := b.minus(a), d.minus(c)
	return a.toward(b, c.minus(a).cross(v)/u.cross(v)).snapped()
}

// noded returns the ring with a vertex at each meeting.
func (r Ring) noded(ms []meeting) Ring {
	extra := make(map[int][]XY)
	for _, m := range ms {
		extra[m.first] = append(extra[m.first], m.at...)
		extra[m.second] = append(extra[m.second], m.at...)
	}
	var n Ring
	for i, a := range r {
		n = append(n, a)
		points := extra[i]
		slices.SortFunc(points, func(p, q XY) int {
			return cmp.Or(cmp.Compare(p.minus(a).norm(), q.minus(a).norm()), compareXY(p, q))
		})
		n = append(n, points...)
	}
	return n.withoutRepeats()
}

// loops takes a noded ring apart at each position it comes back to. Loops
// that enclose nothing are left out; the winding numbers of the rest add up
// to those of the ring.
func (r Ring) loops() []Ring {
	var loops []Ring
	var path Ring
	seen := make(map[XY]int) // place in path
	for _, p := range append(slices.Clone(r), r[0]) {
		start, again := seen[p]
		if !again {
			seen[p] = len(path)
			path = append(path, p)
			continue
		}
		if loop := slices.Clone(path[start:]); len(loop) > 2 && loop.signedArea() != 0 {
			loops = append(loops, loop)
		}
		for _, q := range path[start+1:] {
			delete(seen, q)
		}
		path = path[:start+1]
	}
	return loops
}
