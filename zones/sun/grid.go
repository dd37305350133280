package sun

import (
	"math"

	"example.org/turfplat/geo"
)

// A Grid is square cells over a part of a frame. Cells are numbered row by
// row from the south-west corner.
type Grid struct {
	Origin        geo.XY  // the south-west corner
	Step          float64 // side of a cell, m
	Columns, Rows int
}

// GridOver returns the least grid of a step, in metres, that holds the bounds.
// Its corner lies on a whole step of the frame, so that grids over
// neighbouring ground fit together.
func GridOver(b geo.Bounds, step float64) Grid {
	if b.Empty() {
		return Grid{Step: step}
	}
	west, south := math.Floor(b.Min.X/step), math.Floor(b.Min.Y/step)
	return Grid{
		Origin:  geo.XY{X: west * step, Y: south * step},
		Step:    step,
		Columns: int(math.Ceil(b.Max.X/step) - west),
		Rows:    int(math.Ceil(b.Max.Y/step) - south),
	}
}

// Cells is how many cells the grid has.
func (g Grid) Cells() int { return g.Columns * g.Rows }

// Center is the middle of a cell.
func (g Grid) Center(cell int) geo.XY {
	column, row := cell%g.Columns, cell/g.Columns
	return geo.XY{X: g.Origin.X + (float64(column)+0.5)*g.Step, Y: g.Origin.Y + (float64(row)+0.5)*g.Step}
}

// A Field is a figure for each cell of a grid, such as hours of sun a day;
// NaN where none was asked for.
type Field struct {
	Grid
	Values []float64
}
