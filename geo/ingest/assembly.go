package ingest

import (
	"cmp"
	"slices"

	"github.com/paulmach/orb"
)

// An assembly builds rings from lines that meet end to end, touch, branch or
// run along each other. Stretches that occur an even number of times cancel
// out, so that two areas with a common side become one; the rest bounds one
// area by the even-odd rule, however it is walked.
type assembly struct {
	vertices []orb.Point // sorted, each once
	halves   []halfEdge  // those of one edge follow each other: 2k and 2k+1
	lines    []int32     // of each edge, the line it is from
}

// A halfEdge is an edge seen from one of its ends. Those that leave a vertex
// and are not yet part of a ring are linked in a circle by their direction.
type halfEdge struct {
	from, to int32 // vertices
	left     int32 // the next one counter-clockwise
	right    int32 // the next one clockwise
	used     bool
}

// An assembledRing is closed and meets itself nowhere but at its end; lines are
// those it is made of, sorted.
type assembledRing struct {
	vertices []int32
	lines    []int32
}

// newAssembly takes lines in degrees.
func newAssembly(lines [][]orb.Point) *assembly {
	a := &assembly{vertices: slices.Concat(lines...)}
	slices.SortFunc(a.vertices, comparePoints)
	a.vertices = slices.Compact(a.vertices)
	edges := a.soleEdges(lines)
	a.halves = make([]halfEdge, 0, 2*len(edges))
	a.lines = make([]int32, 0, len(edges))
	for _, e := range edges {
		a.halves = append(a.halves, halfEdge{from: e.a, to: e.b}, halfEdge{from: e.b, to: e.a})
		a.lines = append(a.lines, e.line)
	}
	return a
}

// plane is where a vertex lies in degrees from the first one, unbroken at the
// antimeridian.
func (a *assembly) plane(v int32) orb.Point { return offset(a.vertices[0], a.vertices[v]) }

// line gives the positions of vertices.
func (a *assembly) line(vertices []int32) []orb.Point {
	line := make([]orb.Point, len(vertices))
	for i, v := range vertices {
		line[i] = a.vertices[v]
	}
	return line
}

func comparePoints(p, q orb.Point) int { return slices.Compare(p[:], q[:]) }

// A lineEdge joins two vertices, the lesser first.
type lineEdge struct{ a, b, line int32 }

// soleEdges are the edges that occur an odd number of times, once each, sorted.
func (a *assembly) soleEdges(lines [][]orb.Point) []lineEdge {
	count := 0
	for _, line := range lines {
		count += len(line)
	}
	all := make([]lineEdge, 0, count)
	for i, line := range lines {
		last := int32(-1)
		for _, p := range line {
			v, _ := slices.BinarySearchFunc(a.vertices, p, comparePoints)
			if next := int32(v); last >= 0 && last != next {
				all = append(all, lineEdge{min(last, next), max(last, next), int32(i)})
			}
			last = int32(v)
		}
	}
	slices.SortFunc(all, func(e, f lineEdge) int {
		return cmp.Or(cmp.Compare(e.a, f.a), cmp.Compare(e.b, f.b), cmp.Compare(e.line, f.line))
	})
	sole := all[:0]
	for _, e := range all {
		if last := len(sole) - 1; last >= 0 && sole[last].a == e.a && sole[last].b == e.b {
			sole = sole[:last]
			continue
		}
		sole = append(sole, e)
	}
	return sole
}

// openEnds are the vertices at which an odd number of edges meet.
func (a *assembly) openEnds() []orb.Point {
	meeting := make([]int, len(a.vertices))
	for _, h := range a.halves {
		meeting[h.from]++
	}
	var ends []orb.Point
	for v, n := range meeting {
		if n%2 != 0 {
			ends = append(ends, a.vertices[v])
		}
	}
	return ends
}

// rings takes the lines apart into rings that do not cross each other where
// they meet. There must be no open ends.
//
// It always turns into the next edge clockwise from the one it came by, and so
// follows the edge of one face of the plane, on its left; a place it comes to
// twice ends a ring. As no edge lies between the two a walk takes at a vertex,
// no later walk can cross it there.
func (a *assembly) rings() []assembledRing {
	order := a.linkVertices()
	var rings []assembledRing
	w := walker{assembly: a, reached: make([]int32, len(a.vertices))}
	for _, h := range order {
		if !a.halves[h].used {
			rings = append(rings, w.walk(h)...)
		}
	}
	return rings
}

// linkVertices links the halves at each vertex, and returns them by vertex and
// direction.
func (a *assembly) linkVertices() []int32 {
	order := make([]int32, len(a.halves))
	for h := range order {
		order[h] = int32(h)
	}
	slices.SortFunc(order, func(g, h int32) int {
		return cmp.Or(cmp.Compare(a.halves[g].from, a.halves[h].from), compareDirections(a.direction(g), a.direction(h)), cmp.Compare(g, h))
	})
	for first := 0; first < len(order); {
		end := first + 1
		for end < len(order) && a.halves[order[end]].from == a.halves[order[first]].from {
			end++
		}
		for i := first; i < end; i++ {
			h, next := order[i], order[first]
			if i+1 < end {
				next = order[i+1]
			}
			a.halves[h].left, a.halves[next].right = next, h
		}
		first = end
	}
	return order
}

func (a *assembly) direction(h int32) orb.Point {
	return offset(a.vertices[a.halves[h].from], a.vertices[a.halves[h].to])
}

// compareDirections orders directions counter-clockwise, beginning after south.
func compareDirections(d, e orb.Point) int {
	if c := cmp.Compare(westward(d), westward(e)); c != 0 {
		return c
	}
	return cmp.Compare(0, cross(d, e))
}

// westward is 1 for the directions from just past north to south, else 0.
func westward(d orb.Point) int {
	if d[0] < 0 || d[0] == 0 && d[1] < 0 {
		return 1
	}
	return 0
}

// use takes both halves of an edge out of their circles.
func (a *assembly) use(h int32) {
	for _, g := range []int32{h, h ^ 1} {
		e := &a.halves[g]
		e.used = true
		a.halves[e.left].right = e.right
		a.halves[e.right].left = e.left
	}
}

// A walker follows edges until they are rings.
type walker struct {
	*assembly
	path    []int32 // halves walked that are no ring yet
	reached []int32 // of each vertex, 1 + where the path leaves it, or 0
}

// walk returns the rings found on a walk that begins with h and ends where it
// began.
func (w *walker) walk(h int32) []assembledRing {
	var rings []assembledRing
	for {
		w.path = append(w.path, h)
		w.reached[w.halves[h].from] = int32(len(w.path))
		next := w.halves[h^1].right
		w.use(h)
		if since := w.reached[w.halves[h].to]; since > 0 {
			rings = append(rings, w.ring(w.path[since-1:]))
			w.path = w.path[:since-1]
			if len(w.path) == 0 {
				return rings
			}
		}
		h = next
	}
}

// ring makes a ring of halves, and forgets that the path was there.
func (w *walker) ring(halves []int32) assembledRing {
	var r assembledRing
	for _, h := range halves {
		v := w.halves[h].from
		w.reached[v] = 0
		r.vertices = append(r.vertices, v)
		r.lines = append(r.lines, w.lines[h/2])
	}
	r.vertices = append(r.vertices, r.vertices[0])
	slices.Sort(r.lines)
	r.lines = slices.Compact(r.lines)
	return r
}
