package lanes

import (
	"container/heap"
	"math"
	"slices"

	"example.org/turfplat/geo"
)

// straightness is how far, as a part of the width of its arm, an axis may be
// drawn beside the middle for the sake of a straighter walk.
const straightness = 0.2

// axesOf returns the lines along the middle of a narrow region, the longest
// first, none shorter than least: the chordal axis of a mesh of it (Prasad
// 1997), run on to the region's edge at its ends.
func axesOf(arm geo.Region, step, least float64) []geo.Line {
	g := chordalAxis(meshOf(arm, step))
	var axes []geo.Line
	for {
		path := g.longest()
		line := make(geo.Line, len(path))
		for i, n := range path {
			line[i] = g.at[n]
		}
		if len(line) < 2 || length(line) < least {
			return axes
		}
		width := widthAlong(line, arm)
		if line = withoutForks(line, width); length(line) > 0 {
			line = runOn(straightened(line, arm, straightness*width), arm, width)
		}
		if length(line) >= least {
			axes = append(axes, line)
		}
		g.drop(path)
	}
}

// withoutForks cuts the ends off an axis at which it leaves the middle for a
// corner of its arm: three quarters of the arm's width, as the fork at a
// square end is.
func withoutForks(l geo.Line, width float64) geo.Line {
	const fork = 0.75
	return shortened(turned(shortened(turned(l), fork*width)), fork*width)
}

// straightened simplifies a line as far as it stays in its arm.
func straightened(l geo.Line, arm geo.Region, tolerance float64) geo.Line {
	for ; tolerance > trifle; tolerance /= 2 {
		if s := simplified(l, tolerance); len(arm.Inside(s)) == 1 && length(arm.Inside(s)[0]) > length(s)-trifle {
			return s
		}
	}
	return l
}

// widthAlong is the greatest width of an arm along its axis.
func widthAlong(axis geo.Line, arm geo.Region) float64 {
	width := 0.0
	for _, p := range axis {
		width = max(width, 2*distanceToEdges(p, arm))
	}
	return width
}

// shortened cuts a length off the start of a line; nothing is left of one that
// is shorter.
func shortened(l geo.Line, by float64) geo.Line {
	for i := 1; i < len(l); i++ {
		d := distance(l[i-1], l[i])
		if d > by {
			return append(geo.Line{toward(l[i-1], l[i], by/d)}, l[i:]...)
		}
		by -= d
	}
	return nil
}

// distanceToEdges is the way from p to the nearest edge of a region.
func distanceToEdges(p geo.XY, r geo.Region) float64 {
	nearest := math.Inf(1)
	edgesOf(r, func(a, b geo.XY) { nearest = min(nearest, distanceToEdge(p, a, b)) })
	return nearest
}

// An axisGraph has a node in the middle of each side that two triangles share,
// and one in each triangle where three ways meet.
type axisGraph struct {
	at   []geo.XY
	ways [][]int
}

func (g *axisGraph) node(p geo.XY) int {
	g.at, g.ways = append(g.at, p), append(g.ways, nil)
	return len(g.at) - 1
}

func (g *axisGraph) join(a, b int) {
	g.ways[a], g.ways[b] = append(g.ways[a], b), append(g.ways[b], a)
}

func chordalAxis(at []geo.XY, mesh []triangle) *axisGraph {
	g := new(axisGraph)
	sides := make(map[[2]int]int) // node of a side, -1 until a second triangle has it
	key := func(a, b int) [2]int { return [2]int{min(a, b), max(a, b)} }
	for _, t := range mesh {
		for k := range 3 {
			a, b := t[k], t[(k+1)%3]
			if _, shared := sides[key(a, b)]; shared {
				sides[key(a, b)] = g.node(toward(at[a], at[b], 0.5))
			} else {
				sides[key(a, b)] = -1
			}
		}
	}
	for _, t := range mesh {
		var doors []int
		for k := range 3 {
			if n := sides[key(t[k], t[(k+1)%3])]; n >= 0 {
				doors = append(doors, n)
			}
		}
		switch len(doors) {
		case 2:
			g.join(doors[0], doors[1])
		case 3:
			hub := g.node(times(plus(plus(at[t[0]], at[t[1]]), at[t[2]]), 1./3))
			for _, n := range doors {
				g.join(hub, n)
			}
		}
	}
	return g
}

// longest returns the longest of the shortest paths found from each part's far
// ends; of a tree, its longest path.
func (g *axisGraph) longest() []int {
	var best []int
	most := 0.0
	seen := make([]bool, len(g.at))
	for n := range g.at {
		if seen[n] || len(g.ways[n]) == 0 {
			continue
		}
		far, _, _ := g.farthest(n, seen)
		end, path, reach := g.farthest(far, seen)
		if reach > most {
			most, best = reach, nil
			for ; end >= 0; end = path[end] {
				best = append(best, end)
			}
		}
	}
	return best
}

// farthest returns the node farthest from one along the ways, the node before
// each on its path, and how far it is.
func (g *axisGraph) farthest(from int, seen []bool) (far int, before []int, reach float64) {
	before = make([]int, len(g.at))
	away := make([]float64, len(g.at))
	for i := range away {
		away[i] = math.Inf(1)
	}
	away[from], before[from] = 0, -1
	far = from
	queue := &nearestFirst{{from, 0}}
	for queue.Len() > 0 {
		s := heap.Pop(queue).(stop)
		if s.away > away[s.node] {
			continue
		}
		seen[s.node] = true
		if s.away > reach {
			far, reach = s.node, s.away
		}
		for _, n := range g.ways[s.node] {
			if d := s.away + distance(g.at[s.node], g.at[n]); d < away[n] {
				away[n], before[n] = d, s.node
				heap.Push(queue, stop{n, d})
			}
		}
	}
	return far, before, reach
}

// drop takes the ways of a path out of the graph.
func (g *axisGraph) drop(path []int) {
	for i := 1; i < len(path); i++ {
		a, b := path[i-1], path[i]
		g.ways[a] = slices.DeleteFunc(g.ways[a], func(n int) bool { return n == b })
		g.ways[b] = slices.DeleteFunc(g.ways[b], func(n int) bool { return n == a })
	}
}

// simplified drops the positions of a line that lie within tolerance metres of
// a straight way past them (Douglas & Peucker 1973).
func simplified(l geo.Line, tolerance float64) geo.Line {
	if len(l) < 3 {
		return l
	}
	a, b := l[0], l[len(l)-1]
	off, at := 0.0, 0
	for i := 1; i < len(l)-1; i++ {
		if d := distanceToEdge(l[i], a, b); d > off {
			off, at = d, i
		}
	}
	if off <= tolerance {
		return geo.Line{a, b}
	}
	head, tail := simplified(l[:at+1], tolerance), simplified(l[at:], tolerance)
	return append(head[:len(head)-1:len(head)-1], tail...)
}

// runOn lengthens a line straight at both ends to the edge of the region round
// it, but no farther than most metres.
func runOn(l geo.Line, r geo.Region, most float64) geo.Line {
	n := len(l)
	longer := append(geo.Line(nil), l...)
	longer[0] = onward(l[1], l[0], r, most)
	longer[n-1] = onward(l[n-2], l[n-1], r, most)
	return longer
}

// onward goes on from a past b almost to the edge of a region.
func onward(a, b geo.XY, r geo.Region, most float64) geo.XY {
	const short = 0.3 // m
	way := minus(b, a)
	return plus(b, times(unit(way), max(0, min(most, sight(r, b, way)-short))))
}

// sight is the way from p in a direction to the first edge of a region, m; 0
// if there is none.
func sight(r geo.Region, p, direction geo.XY) float64 {
	far := plus(p, unit(direction))
	nearest := math.Inf(1)
	edgesOf(r, func(a, b geo.XY) {
		if t, s, ok := sightOf(p, far, a, b); ok && t > 0 && 0 <= s && s <= 1 {
			nearest = min(nearest, t)
		}
	})
	if math.IsInf(nearest, 1) {
		return 0
	}
	return nearest
}

// distanceToEdge is the way from p to the edge from a to b.
func distanceToEdge(p, a, b geo.XY) float64 {
	way := minus(b, a)
	t := 0.0
	if d := dot(way, way); d > 0 {
		t = min(1, max(0, dot(minus(p, a), way)/d))
	}
	return distance(p, toward(a, b, t))
}
