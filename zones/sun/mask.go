package sun

import "example.org/turfplat/geo"

// within returns which cells have their centres in a region.
func (g Grid) within(region geo.Region) []bool {
	mask := make([]bool, g.Cells())
	r := newRaster(g, 0, g.Rows)
	for _, piece := range region.Polygons() {
		r.plan(piece.Rings(), geo.XY{})
	}
	for row, spans := range r.rows {
		for _, s := range spans {
			for column := s.from; column < s.to; column++ {
				mask[row*g.Columns+column] = true
			}
		}
	}
	return mask
}

// split returns the cells of a mask that are in another, and the rest.
func split(mask, by []bool) (in, rest []bool) {
	in, rest = make([]bool, len(mask)), make([]bool, len(mask))
	for i, m := range mask {
		in[i], rest[i] = m && by[i], m && !by[i]
	}
	return in, rest
}

// rowsOf returns the rows that hold cells of a mask, to excluded.
func (g Grid) rowsOf(mask []bool) (from, to int) {
	for cell, in := range mask {
		if in {
			if to == 0 {
				from = cell / g.Columns
			}
			to = cell/g.Columns + 1
		}
	}
	return from, to
}
