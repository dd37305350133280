package sun

import (
	"math"

	"example.org/turfplat/geo"
)

// A span is a run of cells of one row that an obstacle shades.
type span struct {
	from, to int     // columns, to excluded
	pass     float64 // the share of sun that comes through
}

// A raster gathers the shadows of one instant on a grid, row by row. Inside it
// lengths are in cells, and the centre of the cell in column 3 of row 2 is at
// 3, 2.
type raster struct {
	grid     Grid
	from, to int      // rows looked at, to excluded
	rows     [][]span // by row
	pass     float64  // of the obstacle at work

	low, high   int       // rows of the outline at work, high excluded
	left, right []float64 // its extent in each row
	crossings   [][]float64
	points      []geo.XY // scratch of the shapes
	hull        []geo.XY
	active      []span
	marks       []int
}

func newRaster(g Grid, from, to int) *raster {
	return &raster{
		grid: g, from: max(0, from), to: min(g.Rows, to),
		rows: make([][]span, g.Rows),
		left: make([]float64, g.Rows), right: make([]float64, g.Rows),
		crossings: make([][]float64, g.Rows), marks: make([]int, g.Rows),
	}
}

// clear forgets all shadows.
func (r *raster) clear() {
	for row := r.from; row < r.to; row++ {
		r.rows[row] = r.rows[row][:0]
	}
}

// cells returns a position of the frame in cells.
func (r *raster) cells(p geo.XY) geo.XY {
	return geo.XY{X: (p.X-r.grid.Origin.X)/r.grid.Step - 0.5, Y: (p.Y-r.grid.Origin.Y)/r.grid.Step - 0.5}
}

// touch is how far outside an outline, in cells, a centre still counts as
// inside: outlines that share an edge must leave no crack.
const touch = 1e-9

// add shades the cells of a row whose centres lie between two abscissas.
func (r *raster) add(row int, left, right float64) {
	from := int(math.Ceil(max(left-touch, 0)))
	to := int(math.Floor(min(right+touch, float64(r.grid.Columns-1)))) + 1
	if from < to {
		r.rows[row] = append(r.rows[row], span{from, to, r.pass})
	}
}

// begin starts a convex outline that lies within the bounds, in cells. It
// reports whether any of it can fall on the rows looked at.
func (r *raster) begin(b geo.Bounds) bool {
	if b.Max.X < -touch || b.Min.X > float64(r.grid.Columns-1)+touch {
		return false
	}
	r.low = int(math.Ceil(max(b.Min.Y, float64(r.from))))
	r.high = int(math.Floor(min(b.Max.Y, float64(r.to-1)))) + 1
	for row := r.low; row < r.high; row++ {
		r.left[row], r.right[row] = math.Inf(1), math.Inf(-1)
	}
	return r.low < r.high
}

// side runs one straight side of the outline, in either direction.
func (r *raster) side(a, b geo.XY) {
	if a.Y > b.Y {
		a, b = b, a
	}
	first := int(math.Ceil(max(a.Y, float64(r.low))))
	last := int(math.Floor(min(b.Y, float64(r.high-1))))
	if first > last {
		return
	}
	slope := 0.0
	if b.Y > a.Y {
		slope = (b.X - a.X) / (b.Y - a.Y)
	}
	for row := first; row <= last; row++ {
		x := a.X + (float64(row)-a.Y)*slope
		r.left[row] = min(r.left[row], x)
		r.right[row] = max(r.right[row], x)
	}
}

// end shades what the outline holds.
func (r *raster) end() {
	for row := r.low; row < r.high; row++ {
		r.add(row, r.left[row], r.right[row])
	}
}

// convex shades a convex outline in the frame; it overwrites the corners.
func (r *raster) convex(corners []geo.XY) {
	bounds := geo.Bounds{Min: geo.XY{X: math.Inf(1), Y: math.Inf(1)}, Max: geo.XY{X: math.Inf(-1), Y: math.Inf(-1)}}
	for i, p := range corners {
		corners[i] = r.cells(p)
		bounds = bounds.With(corners[i])
	}
	if !r.begin(bounds) {
		return
	}
	before := corners[len(corners)-1]
	for _, p := range corners {
		r.side(before, p)
		before = p
	}
	r.end()
}
