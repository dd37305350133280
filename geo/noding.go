package geo

import (
	"cmp"
	"slices"
)

// A meeting is a place inside an edge of a ring at which it crosses another
// edge, or at which another has its end.
type meeting struct {
	first, second int // edges, by their start
	at            []XY
	crossing      bool // the edges pass through each other
}

// noded returns the ring with a vertex at each meeting, so that its edges
// share whole edges and vertices only, and the meetings. Snapping a crossing
// moves its edges by up to a grain, which may make another; a few rounds
// settle it.
func (r Ring) noded() (Ring, []meeting, error) {
	const rounds = 10
	var all []meeting
	for range rounds {
		ms := r.meetings(mostMeetings)
		if len(ms) == 0 {
			return r, all, nil
		}
		if len(ms) > mostMeetings {
			break
		}
		if all == nil {
			all = ms
		}
		r = r.divided(ms)
	}
	return nil, nil, ErrTangled
}

// meetings finds all of a ring by a sweep from west to east. It stops when
// more than limit are found.
func (r Ring) meetings(limit int) []meeting {
	type boxed struct {
		Bounds
		edge int
	}
	order := make([]boxed, len(r))
	for i, a := range r {
		order[i] = boxed{edgeBounds(a, r.next(i)), i}
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
			if m, ok := r.meet(min(e.edge, o.edge), max(e.edge, o.edge)); ok {
				found = append(found, m)
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

// meet compares the edges i < j.
func (r Ring) meet(i, j int) (meeting, bool) {
	a, b, c, d := r[i], r.next(i), r[j], r.next(j)
	m := meeting{first: i, second: j}
	abc, abd := orientation(a, b, c), orientation(a, b, d)
	if abc*abd > 0 {
		return m, false
	}
	cda, cdb := orientation(c, d, a), orientation(c, d, b)
	if abc*abd < 0 && cda*cdb < 0 {
		m.crossing, m.at = true, []XY{intersection(a, b, c, d)}
		return m, true
	}
	add := func(p XY, turn int, q, s XY) {
		if turn == 0 && between(q, s, p) && p != q && p != s {
			m.at = append(m.at, p)
		}
	}
	add(c, abc, a, b)
	add(d, abd, a, b)
	add(a, cda, c, d)
	add(b, cdb, c, d)
	return m, len(m.at) > 0
}

// intersection returns the common point of two edges that cross, snapped.
func intersection(a, b, c, d XY) XY {
	u, v := b.minus(a), d.minus(c)
	return a.toward(b, c.minus(a).cross(v)/u.cross(v)).snapped()
}

// divided returns the ring with a vertex at each meeting.
func (r Ring) divided(ms []meeting) Ring {
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
