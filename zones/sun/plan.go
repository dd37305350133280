package sun

import (
	"math"
	"slices"

	"example.org/turfplat/geo"
)

// plan shades the ground inside rings, moved by a shift, whatever their
// winding: what an odd number of rings holds.
func (r *raster) plan(rings []geo.Ring, shift geo.XY) {
	low, high := r.to, r.from
	for _, ring := range rings {
		before := r.cells(moved(ring[len(ring)-1], shift))
		for _, p := range ring {
			p = r.cells(moved(p, shift))
			if first, last := r.cross(before, p); first < last {
				low, high = min(low, first), max(high, last)
			}
			before = p
		}
	}
	for row := low; row < high; row++ {
		xs := r.crossings[row]
		slices.Sort(xs)
		for i := 0; i+1 < len(xs); i += 2 {
			r.add(row, xs[i], xs[i+1])
		}
		r.crossings[row] = xs[:0]
	}
}

// cross notes where a side crosses rows: from first to last, excluded.
func (r *raster) cross(a, b geo.XY) (first, last int) {
	if a.Y > b.Y {
		a, b = b, a
	}
	first = int(math.Ceil(max(a.Y, float64(r.from))))
	last = int(math.Ceil(min(b.Y, float64(r.to))))
	for row := first; row < last; row++ {
		x := a.X + (float64(row)-a.Y)*(b.X-a.X)/(b.Y-a.Y)
		r.crossings[row] = append(r.crossings[row], x)
	}
	return first, last
}

func moved(p, by geo.XY) geo.XY { return geo.XY{X: p.X + by.X, Y: p.Y + by.Y} }
