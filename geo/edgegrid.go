package geo

import "math"

type edge struct{ a, b XY }

// at returns the position a share t of the way along.
func (e edge) at(t float64) XY { return e.a.Toward(e.b, t) }

// An edgeGrid finds the edges of a region near a given edge. It is not safe
// for use by several goroutines.
type edgeGrid struct {
	edges         []edge
	bounds        Bounds
	cell          float64
	columns, rows int
	first         []int32 // place in list of the first edge of a cell, row by row; one more than there are cells
	list          []int32
	seen          []int32 // query in which an edge was last returned
	query         int32
}

// newEdgeGrid puts edges into about as many cells as there are edges.
func newEdgeGrid(edges []edge) *edgeGrid {
	g := &edgeGrid{edges: edges, seen: make([]int32, len(edges)), bounds: noBounds}
	for _, e := range edges {
		g.bounds = g.bounds.With(e.a).With(e.b)
	}
	width, height := g.bounds.Width(), g.bounds.Height()
	n := float64(max(1, len(edges)))
	g.cell = max(math.Sqrt(width*height/n), max(width, height)/n, grain)
	g.columns, g.rows = 1+int(width/g.cell), 1+int(height/g.cell)

	g.first = make([]int32, g.columns*g.rows+1)
	for _, e := range edges {
		g.visit(e, 0, func(cell int) { g.first[cell+1]++ })
	}
	for cell := range g.columns * g.rows {
		g.first[cell+1] += g.first[cell]
	}
	g.list = make([]int32, g.first[len(g.first)-1])
	filled := make([]int32, g.columns*g.rows)
	for i, e := range edges {
		g.visit(e, 0, func(cell int) {
			g.list[g.first[cell]+filled[cell]] = int32(i)
			filled[cell]++
		})
	}
	return g
}

// near calls visit once for each edge that comes within d of e, and for some
// others.
func (g *edgeGrid) near(e edge, d float64, visit func(i int)) {
	box := edgeBounds(e.a, e.b).Grown(d)
	if !box.Meets(g.bounds) {
		return
	}
	g.query++
	g.visit(e, d, func(cell int) {
		for _, i := range g.list[g.first[cell]:g.first[cell+1]] {
			if g.seen[i] != g.query && edgeBounds(g.edges[i].a, g.edges[i].b).Meets(box) {
				g.seen[i] = g.query
				visit(int(i))
			}
		}
	})
}

// visit calls visit for the cells within d of an edge, column by column.
func (g *edgeGrid) visit(e edge, d float64, visit func(cell int)) {
	column := func(x float64) int { return min(g.columns-1, max(0, int((x-g.bounds.Min.X)/g.cell))) }
	row := func(y float64) int { return min(g.rows-1, max(0, int((y-g.bounds.Min.Y)/g.cell))) }
	box := edgeBounds(e.a, e.b).Grown(d)
	for x := column(box.Min.X); x <= column(box.Max.X); x++ {
		west := g.bounds.Min.X + float64(x)*g.cell
		low, high := e.over(west-d, west+g.cell+d)
		for y := row(max(low-d, box.Min.Y)); y <= row(min(high+d, box.Max.Y)); y++ {
			visit(y*g.columns + x)
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
