package lanes

import (
	"container/heap"
	"math"
	"slices"

	"example.org/turfplat/geo"
)

// An axisGraph is the middle of some ground: places as far from two parts of
// its edge as from a third, and which of them hang together.
type axisGraph struct {
	at   []geo.XY
	ways [][]int
}

// middleOf returns the middle of a region by its mesh: the centres of the
// circles round the triangles, joined where triangles share a side. If a circle
// passes through four stations, its triangles have one centre, however they
// divide it. A triangle at the edge, whose centre lies outside, has the middle
// of its longest side instead.
func middleOf(r geo.Region, at []geo.XY, mesh []triangle) *axisGraph {
	g := &axisGraph{make([]geo.XY, len(mesh)), make([][]int, len(mesh))}
	beside := make(map[[2]int]int) // triangle by side
	for i, t := range mesh {
		if g.at[i] = t.center(at); !r.Contains(g.at[i]) {
			g.at[i] = t.middleOfLongest(at)
		}
		for k := range 3 {
			a, b := t[k], t[(k+1)%3]
			if o, ok := beside[[2]int{b, a}]; ok {
				g.ways[i], g.ways[o] = append(g.ways[i], o), append(g.ways[o], i)
			}
			beside[[2]int{a, b}] = i
		}
	}
	return g
}

// center is the centre of the circle round a triangle.
func (t triangle) center(at []geo.XY) geo.XY {
	u, v := at[t[1]].Minus(at[t[0]]), at[t[2]].Minus(at[t[0]])
	k := 0.5 / u.Cross(v)
	return at[t[0]].Plus(geo.XY{X: k * (v.Y*u.Dot(u) - u.Y*v.Dot(v)), Y: k * (u.X*v.Dot(v) - v.X*u.Dot(u))})
}

func (t triangle) middleOfLongest(at []geo.XY) geo.XY {
	l := geo.Line{at[t[0]], at[t[1]], at[t[2]], at[t[0]]}
	return halfway(l)
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
			if d := s.away + g.at[s.node].Distance(g.at[n]); d < away[n] {
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
