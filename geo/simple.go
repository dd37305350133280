package geo

import (
	"math"
	"slices"
	"sort"
)

// nudge is more than an overlay moves positions by when it rounds them.
const nudge = 4 * mesh

// few is how many edges a ring may have for comparing them all to beat a sweep.
const few = 40

// simple reports whether no two edges of a ring share a point, save
// neighbours their common vertex; and whether they are known to keep clear of
// each other by so much that an overlay need not compare them.
func (r Ring) simple() (simple, clear bool) {
	if len(r) <= few {
		return r.simpleByPairs()
	}
	return r.simpleBySweep(), false
}

// simpleByPairs compares each edge with all others.
func (r Ring) simpleByPairs() (simple, clear bool) {
	clear = true
	var room [few]Bounds
	boxes := room[:0]
	for i, a := range r {
		b := r.next(i)
		if a == b {
			return false, false
		}
		clear = clear && max(math.Abs(b.X-a.X), math.Abs(b.Y-a.Y)) > nudge
		boxes = append(boxes, edgeBounds(a, b).Grown(nudge))
	}
	for i := range boxes {
		for j := range boxes[:i] {
			if !boxes[j].Meets(boxes[i]) || r.clears(j, i) {
				continue
			}
			if r.meet(j, i) {
				return false, false
			}
			clear = false
		}
	}
	return true, clear
}

// simpleBySweep sweeps over the vertices from west to east, keeps the edges cut
// by the sweep in order from south to north, and compares those that become
// neighbours there (Shamos & Hoey 1976, "Geometric intersection problems").
func (r Ring) simpleBySweep() bool {
	order := make([]int, len(r))
	for i := range order {
		order[i] = i
	}
	slices.SortFunc(order, func(i, j int) int { return compareXY(r[i], r[j]) })
	for k := 1; k < len(order); k++ {
		if r[order[k-1]] == r[order[k]] {
			return false
		}
	}
	s := sweep{ring: r}
	return !slices.ContainsFunc(order, func(i int) bool { return !s.pass(i) })
}

// A sweep holds the edges of a ring, by their start, that a line from south to
// north cuts; a line that leans a little to the west, so that of two vertices
// on one meridian it meets the southern first.
type sweep struct {
	ring Ring
	cut  []int
}

// pass moves the sweep over vertex i. It returns false if edges meet.
func (s *sweep) pass(i int) bool {
	n, p := len(s.ring), s.ring[i]
	before := (i + n - 1) % n
	var starting []int
	if compareXY(p, s.ring[before]) < 0 {
		starting = append(starting, before)
	}
	if compareXY(p, s.ring.next(i)) < 0 {
		starting = append(starting, i)
	}
	if len(starting) == 2 && orientation(p, s.ring[before], s.ring.next(i)) < 0 {
		starting[0], starting[1] = i, before
	}
	at := sort.Search(len(s.cut), func(k int) bool { return !s.below(s.cut[k], p) })
	over := at + 2 - len(starting) // the edges that end here are at..over
	if over > len(s.cut) {
		return false
	}
	for _, e := range s.cut[at:over] {
		if e != before && e != i {
			return false
		}
	}
	s.cut = slices.Replace(s.cut, at, over, starting...)
	for k := at; k <= at+len(starting); k++ {
		if k > 0 && k < len(s.cut) && s.ring.meet(s.cut[k-1], s.cut[k]) {
			return false
		}
	}
	return true
}

// below reports whether an edge that the sweep cuts passes south of p.
func (s *sweep) below(e int, p XY) bool {
	a, b := s.ring[e], s.ring.next(e)
	if compareXY(a, b) > 0 {
		a, b = b, a
	}
	return orientation(a, b, p) > 0
}

// clears reports whether two edges, of which neighbours have a common vertex,
// keep clear of each other (see strand.clearOf). False may also mean that it
// takes exact arithmetic to find out.
func (r Ring) clears(e, f int) bool {
	a, b, c, d := r[e], r.next(e), r[f], r.next(f)
	switch {
	case b == c:
		return clearSide(a, b, d) != 0 && clearSide(c, d, a) != 0
	case d == a:
		return clearSide(a, b, c) != 0 && clearSide(c, d, b) != 0
	}
	return clearSide(a, b, c)*clearSide(a, b, d) > 0 || clearSide(c, d, a)*clearSide(c, d, b) > 0
}

// clearSide is +1 if p lies to the left of the line from a to b, -1 if to the
// right, and 0 if it lies so near the line that a nudge matters.
func clearSide(a, b, p XY) int {
	x, y := b.X-a.X, b.Y-a.Y
	l, r := x*(p.Y-a.Y), y*(p.X-a.X)
	near := nudge*(math.Abs(x)+math.Abs(y)) + 4*roundingOfCross*(math.Abs(l)+math.Abs(r))
	switch det := l - r; {
	case det > near:
		return 1
	case det < -near:
		return -1
	}
	return 0
}

// meet reports whether two edges share a point other than the common vertex
// of neighbours.
func (r Ring) meet(e, f int) bool {
	a, b, c, d := r[e], r.next(e), r[f], r.next(f)
	switch {
	case b == c:
		return orientation(a, b, d) == 0 && (between(a, b, d) || between(c, d, a))
	case d == a:
		return orientation(c, d, b) == 0 && (between(c, d, b) || between(a, b, c))
	}
	return edgesMeet(a, b, c, d)
}
