package sun

import (
	"math"

	"example.org/turfplat/geo"
)

// A classing is the cells over one piece of ground by their class, on its way
// from what the hours say to what a person can walk.
type classing struct {
	Field  // of hours; NaN where no turf is
	limits Limits
	class  []int8 // by the limits, or none
}

// none is the class of cells that have none (yet).
const none int8 = -1

// classed lays a grid over the turf, with room around it, and classes the
// field's cells that lie in it.
func classed(f *Field, turf geo.Region, l Limits) *classing {
	c := newClassing(f.windowOver(turf.Bounds()), l)
	inside := c.within(turf)
	for i := range c.Values {
		if h := f.at(c.Center(i)); inside[i] && !math.IsNaN(h) {
			c.Values[i], c.class[i] = h, l.class(h)
		}
	}
	return c
}

// newClassing returns cells that have neither hours nor a class.
func newClassing(g Grid, l Limits) *classing {
	c := &classing{Field: Field{g, make([]float64, g.Cells())}, limits: l, class: make([]int8, g.Cells())}
	for i := range c.class {
		c.Values[i], c.class[i] = math.NaN(), none
	}
	return c
}

// room is how many cells a window reaches beyond its ground, so that the rim
// of the window, where outlines end, lies clear of it.
const room = 3

// windowOver returns the cells of the field's grid, or of its continuation,
// over some bounds and a little more.
func (f *Field) windowOver(b geo.Bounds) Grid {
	column := func(x float64) int { return int(math.Floor((x - f.Origin.X) / f.Step)) }
	row := func(y float64) int { return int(math.Floor((y - f.Origin.Y) / f.Step)) }
	west, south := column(b.Min.X)-room, row(b.Min.Y)-room
	return Grid{
		Origin:  geo.XY{X: f.Origin.X + float64(west)*f.Step, Y: f.Origin.Y + float64(south)*f.Step},
		Step:    f.Step,
		Columns: column(b.Max.X) + room + 1 - west,
		Rows:    row(b.Max.Y) + room + 1 - south,
	}
}

// at returns the value of the cell that holds a position; NaN off the grid.
func (f *Field) at(p geo.XY) float64 {
	column, row := math.Floor((p.X-f.Origin.X)/f.Step), math.Floor((p.Y-f.Origin.Y)/f.Step)
	if column < 0 || row < 0 || column >= float64(f.Columns) || row >= float64(f.Rows) {
		return math.NaN()
	}
	return f.Values[int(row)*f.Columns+int(column)]
}

// side is a direction from a cell: south, east, north, west, counter-clockwise.
type side int

var steps = [4][2]int{{0, -1}, {1, 0}, {0, 1}, {-1, 0}}

// beside returns the cell on a side of another; -1 beyond the rim.
func (g Grid) beside(cell int, s side) int {
	return g.offset(cell, steps[s%4][0], steps[s%4][1])
}

// offset returns the cell so many columns east and rows north; -1 beyond the
// rim, and of what lies beyond it.
func (g Grid) offset(cell, east, north int) int {
	if cell < 0 {
		return -1
	}
	column, row := cell%g.Columns+east, cell/g.Columns+north
	if column < 0 || row < 0 || column >= g.Columns || row >= g.Rows {
		return -1
	}
	return row*g.Columns + column
}

// classOf is the class of a cell; none beyond the rim.
func (c *classing) classOf(cell int) int8 {
	if cell < 0 {
		return none
	}
	return c.class[cell]
}
