package lanes

import (
	"iter"
	"math"

	"example.org/turfplat/geo"
)

// A field is ground that one grid holds, and the lanes on it.
type field struct {
	ground *raster[uint8] // what lies where
	lanes  []int          // of the plan, that spread
}

// fields yields the grids that hold all that lanes reach: one for all if it
// is fine enough, else one for each ground that lies apart, so that two lawns
// far from each other are seen as finely as each alone.
func (p Plan) fields(y Yard) iter.Seq[field] {
	return func(yield func(field) bool) {
		for _, b := range p.apart() {
			f := field{ground: newRaster[uint8](b, p.cell(b))}
			p.mark(y, f.ground)
			for i, l := range p.Lanes {
				if l.Spreading && b.Meets(geo.Line(l.Line[:1]).Bounds()) {
					f.lanes = append(f.lanes, i)
				}
			}
			if !yield(f) {
				return
			}
		}
	}
}

// cell is the side of the cells of a grid within bounds, in metres.
func (p Plan) cell(b geo.Bounds) float64 {
	return max(p.finest(), math.Sqrt(b.Width()*b.Height()/mostCells))
}

func (p Plan) finest() float64 { return p.Work.Pattern.Swath() / cellsPerSwath }

// apart returns the bounds of all that lanes reach; several that do not meet if
// one would be too large for the finest grid.
func (p Plan) apart() []geo.Bounds {
	left, right := p.Work.Pattern.Reach()
	var each []geo.Bounds
	all := geo.Region{}.Bounds()
	for _, r := range p.Walked {
		for _, piece := range r.Pieces() {
			b := piece.Bounds().Grown(max(left, right))
			each, all = joined(each, b), all.Union(b)
		}
	}
	if p.cell(all) == p.finest() {
		return []geo.Bounds{all}
	}
	return each
}

// joined adds bounds to others that do not meet, as one with those that they
// meet.
func joined(each []geo.Bounds, b geo.Bounds) []geo.Bounds {
	for i := 0; i < len(each); i++ {
		if each[i].Meets(b) {
			b = b.Union(each[i])
			each = append(each[:i], each[i+1:]...)
			i = -1 // it may meet others now
		}
	}
	return append(each, b)
}
