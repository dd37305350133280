package ingest

import (
	"cmp"
	"math"
	"slices"

	"github.com/paulmach/orb"
)

// A nestRing is a ring of an assembly with what it takes to find its place
// among the others.
type nestRing struct {
	assembledRing
	area   float64 // twice the area, in square degrees
	bound  orb.Bound
	depth  int // rings around it
	around int // the smallest of them, -1 if none
}

// An assembledArea is a shell and its holes.
type assembledArea struct {
	shell assembledRing
	holes []assembledRing
}

// A nesting sorts rings into shells and holes: a ring with an even number of
// others around it is a shell. left is how many steps it may take, over all
// that it sorts.
type nesting struct {
	left int
}

// nestingSteps bound the work for the relations of an extract: a few seconds.
const nestingSteps = 1 << 30

// areas returns the areas, largest first. It is not ok if the rings cross.
func (n *nesting) areas(a *assembly, rings []assembledRing) (areas []assembledArea, ok bool) {
	nested := a.nestRings(rings)
	for i := range nested {
		n.look(a, nested, i)
	}
	if n.left < 0 {
		return nil, true
	}
	at := make([]int, len(nested)) // where the area of a shell stands
	for i, r := range nested {
		switch {
		case r.depth%2 == 0:
			at[i] = len(areas)
			areas = append(areas, assembledArea{shell: r.assembledRing})
		case nested[r.around].depth%2 == 0:
			area := &areas[at[r.around]]
			area.holes = append(area.holes, r.assembledRing)
		default:
			return nil, false
		}
	}
	return areas, true
}

// nestRings measures rings and sorts them, the largest first. Those that
// enclose nothing are dropped.
func (a *assembly) nestRings(rings []assembledRing) []nestRing {
	var nested []nestRing
	for _, r := range rings {
		t := trace{points: a.line(r.vertices)}
		area, doubt := t.area()
		if math.Abs(area) <= doubt {
			continue
		}
		first := a.plane(r.vertices[0])
		bound := orb.Bound{Min: first, Max: first}
		for _, v := range r.vertices[1:] {
			bound = bound.Extend(a.plane(v))
		}
		nested = append(nested, nestRing{assembledRing: r, area: math.Abs(area), bound: bound, around: -1})
	}
	slices.SortStableFunc(nested, func(q, r nestRing) int { return cmp.Compare(r.area, q.area) })
	return nested
}

// look finds the rings around ring i, which are all larger.
func (n *nesting) look(a *assembly, rings []nestRing, i int) {
	r := &rings[i]
	// Rings may share vertices, but never an edge.
	p, q := a.plane(r.vertices[0]), a.plane(r.vertices[1])
	middle := orb.Point{(p[0] + q[0]) / 2, (p[1] + q[1]) / 2}
	for k := range rings[:i] {
		if n.left--; n.left < 0 {
			return
		}
		if !rings[k].bound.Contains(middle) {
			continue
		}
		n.left -= len(rings[k].vertices)
		if a.encloses(rings[k].vertices, middle) {
			r.depth++
			r.around = k
		}
	}
}

// encloses reports whether a ring goes round p, by the even-odd rule.
func (a *assembly) encloses(ring []int32, p orb.Point) bool {
	inside := false
	for i, v := range ring[1:] {
		s, t := a.plane(ring[i]), a.plane(v)
		if (s[1] > p[1]) == (t[1] > p[1]) {
			continue
		}
		if s[1] > t[1] {
			s, t = t, s
		}
		d, e := orb.Point{t[0] - s[0], t[1] - s[1]}, orb.Point{p[0] - s[0], p[1] - s[1]}
		if cross(d, e) > 0 {
			inside = !inside
		}
	}
	return inside
}
