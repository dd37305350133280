package sun

import (
	"math"

	"example.org/turfplat/geo"
)

// under returns the hours that reach the wanted cells out of those of beams.
func (s Scene) under(beams []beam, g Grid, want geo.Region) *Field {
	f := &Field{Grid: g, Values: noHours(g)}
	casters := s.casters()
	left := g.within(want)
	for _, slope := range s.Slopes {
		var here []bool
		here, left = split(left, g.within(slope.Ground))
		fill(f, here, casters, beams, slope)
	}
	fill(f, left, casters, beams, Slope{})
	return f
}

func noHours(g Grid) []float64 {
	values := make([]float64, g.Cells())
	for i := range values {
		values[i] = math.NaN()
	}
	return values
}

// fill sets the hours of the cells of a mask, on ground of one slope.
func fill(f *Field, mask []bool, casters []caster, beams []beam, ground Slope) {
	from, to := f.rowsOf(mask)
	if from == to {
		return
	}
	r := newRaster(f.Grid, from, to)
	lost := make([]float64, f.Rows*(f.Columns+1))
	possible := 0.0
	for _, b := range beams {
		reach, above := ground.reach(b)
		if !above {
			continue
		}
		possible += b.hours
		r.clear()
		for _, c := range casters {
			c.cast(r, reach, b.inLeaf)
		}
		r.overlay(lost, b.hours)
	}
	f.settle(mask, lost, possible)
}

// settle sets the cells of a mask to what is left of the hours possible; lost
// holds rows of Columns+1 steps, to be summed.
func (f *Field) settle(mask []bool, lost []float64, possible float64) {
	for row := range f.Rows {
		sum := 0.0
		for column := range f.Columns {
			sum += lost[row*(f.Columns+1)+column]
			if cell := row*f.Columns + column; mask[cell] {
				f.Values[cell] = max(0, possible-sum)
			}
		}
	}
}
