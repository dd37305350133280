package geo

import "math"

type edge struct{ a, b XY }

// at returns the position a share t of the way along.
func (e edge) at(t float64) XY { return e.a.toward(e.b, t) }

func (e edge) length() float64 { return e.b.minus(e.a).norm() }

// An edgeGrid finds the edges of a region near a given edge.
type edgeGrid struct {
	edges  []edge
	place  map[edge]int
	cells  map[[2]int][]int
	cell   float64
	seen   []int // query in which an edge was last returned
	query  int
	bounds Bounds
}

// newEdgeGrid puts edges into cells about as large as the mean edge is long.
func newEdgeGrid(edges []edge) *edgeGrid {
	g := &edgeGrid{edges: edges, place: make(map[edge]int, len(edges)),
		cells: make(map[[2]int][]int), seen: make([]int, len(edges)), bounds: noBounds}
	var total float64
	for i, e := range edges {
		g.place[e] = i
		total += e.length()
		g.bounds = g.bounds.With(e.a).With(e.b)
	}
	least := max(g.bounds.Width(), g.bounds.Height()) / 1000
	g.cell = max(total/float64(max(1, len(edges))), least, grain)
	for i, e := range edges {
		g.visit(e, 0, func(cell [2]int) { g.cells[cell] = append(g.cells[cell], i) })
	}
	return g
}

// same returns the edge between the same two positions.
func (g *edgeGrid) same(e edge) (int, bool) {
	if i, ok := g.place[e]; ok {
		return i, true
	}
	i, ok := g.place[edge{e.b, e.a}]
	return i, ok
}

// near calls visit once for each edge that comes within d of e, and for some
// others.
func (g *edgeGrid) near(e edge, d float64, visit func(i int)) {
	box := edgeBounds(e.a, e.b).Grown(d)
	if !box.Meets(g.bounds) {
		return
	}
	g.query++
	g.visit(e, d, func(cell [2]int) {
		for _, i := range g.cells[cell] {
			if g.seen[i] != g.query && edgeBounds(g.edges[i].a, g.edges[i].b).Meets(box) {
				g.seen[i] = g.query
				visit(i)
			}
		}
	})
}

// visit calls visit for the cells within d of an edge, column by column.
func (g *edgeGrid) visit(e edge, d float64, visit func(cell [2]int)) {
	index := func(v float64) int { return int(math.Floor(v / g.cell)) }
	box := edgeBounds(e.a, e.b).Grown(d).clipped(g.bounds)
	for x := index(box.Min.X); x <= index(box.Max.X); x++ {
		low, high := e.over(float64(x)*g.cell-d, float64(x+1)*g.cell+d)
		for y := index(max(low-d, box.Min.Y)); y <= index(min(high+d, box.Max.Y)); y++ {
			visit([2]int{x, y})
		}
	}
}

// over returns the range of y of an edge between two meridians of the frame.
func (e edge) over(west, east float64) (low, high float64) {
	dx := e.b.X - e.a.X
	if dx == 0 {
		return min(e.a.Y, e.b.Y), max(e.a.Y, e.b.Y)
	}
	at := func(x float64) float64 { return e.at(min(1, max(0, (x-e.a.X)/dx))).Y }
	return min(at(west), at(east)), max(at(west), at(east))
}
