package lanes

import (
	"iter"
	"math"
	"slices"

	"example.org/turfplat/geo"
)

// A grid is square cells, numbered row by row.
type grid struct {
	origin        geo.XY // the south-west corner
	step          float64
	columns, rows int
}

// A raster is a figure for each cell of a grid.
type raster[T any] struct {
	grid
	cells []T
}

func newRaster[T any](b geo.Bounds, step float64) *raster[T] {
	g := grid{b.Min, step, int(math.Ceil(b.Width()/step)) + 1, int(math.Ceil(b.Height()/step)) + 1}
	return &raster[T]{g, make([]T, g.columns*g.rows)}
}

// middle is the centre of a cell.
func (g grid) middle(column, row int) geo.XY {
	return geo.XY{X: g.origin.X + (float64(column)+0.5)*g.step, Y: g.origin.Y + (float64(row)+0.5)*g.step}
}

// within yields the cells whose centres lie within bounds, and the centres.
func (g grid) within(b geo.Bounds) iter.Seq2[int, geo.XY] {
	return func(yield func(int, geo.XY) bool) {
		fromColumn, toColumn, fromRow, toRow := g.window(b)
		for row := fromRow; row < toRow; row++ {
			for column := fromColumn; column < toColumn; column++ {
				if !yield(row*g.columns+column, g.middle(column, row)) {
					return
				}
			}
		}
	}
}

// window returns the columns and rows whose centres lie within bounds.
func (g grid) window(b geo.Bounds) (fromColumn, toColumn, fromRow, toRow int) {
	index := func(v, origin float64) int { return int(math.Ceil((v-origin)/g.step - 0.5)) }
	return max(0, index(b.Min.X, g.origin.X)), min(g.columns, index(b.Max.X, g.origin.X)),
		max(0, index(b.Min.Y, g.origin.Y)), min(g.rows, index(b.Max.Y, g.origin.Y))
}

// paint sets the cells whose centres lie in a region.
func (r *raster[T]) paint(g geo.Region, v T) {
	for _, p := range g.Polygons() {
		crossings := make(map[int][]float64) // by row
		for _, ring := range p.Rings() {
			for i, a := range ring {
				r.cross(a, ring[(i+1)%len(ring)], crossings)
			}
		}
		for row, at := range crossings {
			slices.Sort(at)
			for i := 1; i < len(at); i += 2 {
				from, to, _, _ := r.window(geo.Bounds{Min: geo.XY{X: at[i-1]}, Max: geo.XY{X: at[i]}})
				for column := from; column < to; column++ {
					r.cells[row*r.columns+column] = v
				}
			}
		}
	}
}

// cross notes where an edge crosses the middle of rows.
func (g grid) cross(a, b geo.XY, crossings map[int][]float64) {
	if a.Y > b.Y {
		a, b = b, a
	}
	_, _, from, to := g.window(geo.Bounds{Min: a, Max: b})
	for row := from; row < to; row++ {
		y := g.middle(0, row).Y
		crossings[row] = append(crossings[row], a.X+(b.X-a.X)*(y-a.Y)/(b.Y-a.Y))
	}
}
