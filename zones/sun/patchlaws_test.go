package sun

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"example.org/turfplat/geo"
)

// drawTurf draws a lawn with beds and a house in it, which may part it.
func drawTurf(t *rapid.T, most float64) geo.Region {
	star := func(x, y, least, most float64) geo.Ring {
		corners := rapid.IntRange(4, 9).Draw(t, "corners")
		r := make(geo.Ring, corners)
		for i := range r {
			k := rapid.Float64Range(least, most).Draw(t, "radius")
			sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(corners))
			r[i] = geo.XY{X: x + k*cos, Y: y + k*sin}
		}
		return r
	}
	at := func() float64 { return rapid.Float64Range(-most/2, most/2).Draw(t, "metres") }
	rings := []geo.Ring{star(0, 0, most/3, most)}
	for range rapid.IntRange(0, 3).Draw(t, "holes") {
		rings = append(rings, star(at(), at(), 0.5, most/2))
	}
	if rapid.Bool().Draw(t, "drive") {
		x := at()
		rings = append(rings, rectangle(x, -2*most, x+3, 2*most))
	}
	return region(t, rings...)
}

// drawHours draws hours of sun that fall off across the lawn and in round and
// square shadows, with a little unrest.
func drawHours(t *rapid.T, most float64) func(geo.XY) float64 {
	type shadow struct {
		x, y, reach, depth, edge float64
		square                   bool
	}
	metres := rapid.Float64Range(-most, most)
	var shadows []shadow
	for range rapid.IntRange(0, 6).Draw(t, "shadows") {
		shadows = append(shadows, shadow{
			metres.Draw(t, "x"), metres.Draw(t, "y"), rapid.Float64Range(0.3, most/2).Draw(t, "reach"),
			rapid.Float64Range(1, 9).Draw(t, "depth"), rapid.Float64Range(0.05, 3).Draw(t, "edge"), rapid.Bool().Draw(t, "square"),
		})
	}
	fall := rapid.Float64Range(-0.3, 0.3).Draw(t, "fall")
	unrest := rapid.SampledFrom([]float64{0, 0, 0.3, 2}).Draw(t, "unrest")
	return func(p geo.XY) float64 {
		h := 9 + fall*p.X + unrest*math.Sin(12.9898*p.X+78.233*p.Y)
		for _, s := range shadows {
			d := math.Hypot(p.X-s.x, p.Y-s.y)
			if s.square {
				d = max(math.Abs(p.X-s.x), math.Abs(p.Y-s.y))
			}
			h -= s.depth / (1 + math.Exp((d-s.reach)/s.edge))
		}
		return max(0, h)
	}
}

// Whatever the turf and its sun, patches tile the turf and can be walked.
func TestPatchesTileAndCanBeWalked(t *testing.T) {
	check(t, 1000, func(t *rapid.T) {
		const most = 18
		turf := drawTurf(t, most)
		if turf.Empty() {
			return
		}
		step := rapid.SampledFrom([]float64{0.5, 1, 1, 1}).Draw(t, "step")
		patches := patchesOf(t, fieldOf(turf, step, drawHours(t, most)), turf)
		if len(patches) == 0 {
			return
		}
		checkTiling(t, patches, turf)
		checkWalkable(t, patches, turf)
		if len(turf.Polygons()) == 1 { // islands are classed with other turf
			checkHours(t, patches)
		}
	})
}

// Two strips along a wall, each too narrow for a patch, are a patch when they are
// wide enough together, of the class of their hours.
func TestNarrowStripsAreAPatchTogether(t *testing.T) {
	const step, long = 0.25, 20.0
	check(t, 200, func(t *rapid.T) {
		cells := rapid.IntRange(2, 5) // under 1.5 m
		near := cells.Draw(t, "near the wall")
		far := cells.Filter(func(far int) bool { return near+far != 6 }).Draw(t, "far from it") // at 1.5 m rounding decides
		shaded, mild := rapid.Float64Range(2, 3.9).Draw(t, "hours near"), rapid.Float64Range(4, 5.9).Draw(t, "hours far")
		wide := float64(near+far) * step
		turf := region(t, rectangle(0, 0, 12, long))
		patches := patchesOf(t, fieldOf(turf, step, func(p geo.XY) float64 {
			switch {
			case p.X < float64(near)*step:
				return shaded
			case p.X < wide:
				return mild
			}
			return 9
		}), turf)
		checkTiling(t, patches, turf)
		checkWalkable(t, patches, turf)
		checkHours(t, patches)
		want := 1
		if wide > 1.5 {
			want = 2
		}
		if len(patches) != want {
			t.Fatalf("%d patches of strips %.2f m wide: %s", len(patches), wide, listed(patches))
		}
		if area := float64(frame.Area(patches[want-1].Region)); want == 2 && math.Abs(area-wide*long) > 0.5*long {
			t.Errorf("%.1f m2 of %.1f", area, wide*long)
		}
	})
}

// checkHours proves that the mean hours of patches are those of their exposure.
func checkHours(t failer, patches []Patch) {
	t.Helper()
	for _, p := range patches {
		if far := DefaultLimits().distance(p.Hours, int8(p.Class)); far > 1e-9 {
			t.Errorf("%s gets %.2f h", Exposures[p.Class], p.Hours)
		}
	}
}

// Outlines lie within half a metre of the edges between cells of different
// classes, and the other way round, at every step of the grid.
func TestOutlineError(t *testing.T) {
	check(t, 60, func(t *rapid.T) {
		const most = 10
		turf := drawTurf(t, most)
		step := rapid.SampledFrom([]float64{0.25, 0.5, 1}).Draw(t, "step")
		c := classed(fieldOf(turf, step, drawHours(t, most)), turf, DefaultLimits())
		c.settle()
		edges := c.edgeMiddles()
		for k, rings := range c.outlines() {
			for _, p := range edges[k] {
				least := math.Inf(1)
				for _, r := range rings {
					for i := range r {
						least = min(least, p.DistanceToEdge(r[i], r[(i+1)%len(r)]))
					}
				}
				if least > 0.5+1e-9 {
					t.Errorf("edge at %v lies %.3f m from the outline of %s", p, least, Exposures[k])
				}
			}
			for _, r := range rings {
				for _, p := range r {
					least := math.Inf(1)
					for _, q := range edges[k] {
						least = min(least, math.Hypot(p.X-q.X, p.Y-q.Y))
					}
					if least > 0.5+1e-9 {
						t.Errorf("outline of %s at %v lies %.3f m from any edge", Exposures[k], p, least)
					}
				}
			}
		}
	})
}

// edgeMiddles are the middles of the edges of cells round each class.
func (c *classing) edgeMiddles() map[int8][]geo.XY {
	middles := make(map[int8][]geo.XY)
	for cell, k := range c.class {
		for s := side(0); s < 4; s++ {
			if k != none && c.classOf(c.beside(cell, s)) != k {
				middles[k] = append(middles[k], c.markOn(cell, s).middle)
			}
		}
	}
	return middles
}
