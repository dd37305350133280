package sun

import (
	"math"
	"slices"

	"example.org/turfplat/geo"
)

// A caster is an obstacle ready to cast shadows.
type caster struct {
	pass   Pass
	bodies []body
}

func (s Scene) casters() []caster {
	casters := make([]caster, len(s.Obstacles))
	for i, o := range s.Obstacles {
		casters[i] = caster{o.Pass, o.Shape.bodies()}
	}
	return casters
}

// reach returns how far, and which way, the shadow of a point moves on the
// slope for each metre it stands above the ground. It reports false while the
// sun stands behind the slope.
func (s Slope) reach(b beam) (geo.XY, bool) {
	const grazing = 1e-6 // shadows a million times as long as what casts them
	sun := Degrees(b.towards / degree).heading()
	climb := b.climb + s.Rise*dot(s.Aspect.heading(), sun)
	return geo.XY{X: -sun.X / climb, Y: -sun.Y / climb}, climb > grazing
}

// cast shades what lies in the obstacle's shadow.
func (c caster) cast(r *raster, reach geo.XY, inLeaf float64) {
	r.pass = c.pass.when(inLeaf)
	parts := len(c.bodies) > 1 && r.pass > 0
	if parts {
		r.mark()
	}
	for _, body := range c.bodies {
		body.cast(r, reach)
	}
	if parts {
		r.unite()
	}
}

// fill sets the hours of the cells of a mask, on ground of one slope.
func fill(f *Field, mask []bool, casters []caster, beams []beam, ground Slope) {
	first, last := slices.Index(mask, true), lastTrue(mask)
	if first < 0 {
		return
	}
	r := newRaster(f.Grid, first/f.Columns, last/f.Columns+1)
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

func lastTrue(mask []bool) int {
	for i, m := range slices.Backward(mask) {
		if m {
			return i
		}
	}
	return -1
}

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

func noHours(g Grid) []float64 {
	values := make([]float64, g.Cells())
	for i := range values {
		values[i] = math.NaN()
	}
	return values
}
