package geo

import "math"

// An edgeGrid finds the edges of a region near a given edge.
type edgeGrid struct {
	edges  []edge
	cells  map[[2]int][]int
	cell   float64
	seen   []int // query in which an edge was last returned
	query  int
	bounds Bounds
}

type edge struct{ a, b XY }

// at returns the position a share t of the way along.
func (e edge) at(t float64) XY { return e.a.toward(e.b, t) }

func (e edge) length() float64 { return e.b.minus(e.a).norm() }

// newEdgeGrid puts edges into cells about as large as the mean edge is long.
func newEdgeGrid(edges []edge) *edgeGrid {
	g := &edgeGrid{edges: edges, cells: make(map[[2]int][]int), seen: make([]int, len(edges)), bounds: noBounds}
	var total float64
	for _, e := range edges {
		total += e.length()
		g.bounds = g.bounds.With(e.a).With(e.b)
	}
	least := max(g.bounds.Width(), g.bounds.Height()) / 1000
	g.cell = max(total/float64(max(1, len(edges))), least, grain)
	for i, e := range edges {
		g.visit(edgeBounds(e.a, e.b), func(cell [2]int) { g.cells[cell] = append(g.cells[cell], i) })
	}
	return g
}

func (g *edgeGrid) visit(b Bounds, visit func(cell [2]int)) {
	column := func(v float64) int { return int(math.Floor(v / g.cell)) }
	for x := column(b.Min.X); x <= column(b.Max.X); x++ {
		for y := column(b.Min.Y); y <= column(b.Max.Y); y++ {
			visit([2]int{x, y})
		}
	}
}

// near calls visit once for each edge whose bounds come within d of those of e.
func (g *edgeGrid) near(e edge, d float64, visit func(i int)) {
	box := edgeBounds(e.a, e.b).Grown(d)
	if !box.Meets(g.bounds) {
		return
	}
	g.query++
	g.visit(box.clipped(g.bounds), func(cell [2]int) {
		for _, i := range g.cells[cell] {
			if g.seen[i] != g.query && edgeBounds(g.edges[i].a, g.edges[i].b).Meets(box) {
				g.seen[i] = g.query
				visit(i)
			}
		}
	})
}
