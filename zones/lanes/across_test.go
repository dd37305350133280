package lanes

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"example.org/turfplat/geo"
	"example.org/turfplat/zones"
	"example.org/turfplat/zones/material"
)

// inPasses is work of which every place gets a kilogram on a square metre a pass.
func inPasses(w Work, n int) Work {
	w.Load = &Load{Step: "feed", Material: "feed", Rate: material.Rate{By: material.Weight, PerM2: 1}, Passes: n}
	w.Units = zones.Metric
	return w
}

// fillHeadings are the bearings, 0 to pi, of the fill lanes of a pass.
func (p Plan) fillHeadings(pass int) []float64 {
	var all []float64
	for _, l := range p.Lanes {
		if l.Spreading && l.PassNo == pass && l.Pass == Fill {
			way := l.Line[len(l.Line)-1].Minus(l.Line[0])
			all = append(all, math.Mod(math.Atan2(way.Y, way.X)+2*math.Pi, math.Pi))
		}
	}
	return all
}

// Rows of the second pass lie at right angles to those of the first, those of the
// third as those of the first; where the ground is too narrow or too steep for that
// they repeat it, and say why.
func TestSecondPassLiesAcross(t *testing.T) {
	along := 0.3
	for _, tt := range []struct {
		name    string
		lawn    geo.Ring
		contour *float64
		mode    Mode
		across  bool
		again   Again
	}{
		{"lawn", rectangle(0, 0, 40, 24), nil, Single, true, ""},
		{"lawn, tight", rectangle(0, 0, 40, 24), nil, Tight, true, ""},
		{"strip", rectangle(0, 0, 60, 9), nil, Single, false, Narrow},
		{"header laps alone", rectangle(0, 0, 60, 5), nil, Single, false, Narrow},
		{"bank", rectangle(0, 0, 40, 24), &along, Single, false, Contour},
		{"crosswise already", rectangle(0, 0, 40, 24), nil, Cross, false, ""},
	} {
		t.Run(tt.name, func(t *testing.T) {
			y := yardOf(must[geo.Region](t)(geo.RegionOf([]geo.Ring{tt.lawn})))
			y.Plots[0].Contour = tt.contour
			w := inPasses(singleWork(3), 3)
			w.Mode = tt.mode
			p := must[Plan](t)(Lay(y, w))
			if p.Passes() != 3 {
				t.Fatalf("%d passes", p.Passes())
			}
			first, second, third := p.fillHeadings(1), p.fillHeadings(2), p.fillHeadings(3)
			if tt.across && (len(first) == 0 || len(second) == 0 || math.Abs(apart(first[0], second[0])-math.Pi/2) > 1e-9) {
				t.Errorf("headings %v, then %v", first, second)
			}
			slices.Sort(first)
			slices.Sort(third)
			slices.Sort(second)
			if alike := func(a, b []float64) bool {
				return slices.EqualFunc(a, b, func(a, b float64) bool { return apart(a, b) < 1e-9 })
			}; !alike(first, third) || !tt.across && !alike(first, second) {
				t.Errorf("headings %v, then %v, then %v", first, second, third)
			}
			for _, why := range []Again{Narrow, Contour} {
				if got := p.RepeatedIn(2, why); (len(got) > 0) != (why == tt.again) {
					t.Errorf("%q is said of %v", why, got)
				}
				if got := slices.Concat(p.RepeatedIn(1, why), p.RepeatedIn(3, why)); len(got) > 0 {
					t.Errorf("%q is said in the first or third pass of %v", why, got)
				}
			}
		})
	}
}

// Each pass puts down its rate on all the ground, from a hopper filled for it and
// empty after it, and the first is that which is laid for one pass alone.
func TestPassesAddUp(t *testing.T) {
	check(t, 20, func(t *rapid.T) {
		s, w := drawScene(t), drawWork(t)
		w.Filling = rapid.SampledFrom([]float64{0, 100, 1000}).Draw(t, "filling")
		n := rapid.IntRange(2, 4).Draw(t, "passes")
		one, all := must[Plan](t)(Lay(s.yard(t), inPasses(w, 1))), must[Plan](t)(Lay(s.yard(t), inPasses(w, n)))
		if len(one.Lanes) == 0 {
			return
		}
		if all.Passes() != n {
			t.Fatalf("%d passes, want %d", all.Passes(), n)
		}
		number := 0
		for pass := 1; pass <= n; pass++ {
			part := all.OfPass(pass)
			var served float64
			for _, l := range part.Lanes {
				if !l.Spreading {
					continue
				}
				if number++; l.N != number {
					t.Fatalf("lane %d of pass %d has number %d", number, pass, l.N)
				}
				served += l.Ground
			}
			near(t, "ground that a pass serves", served, areaOf(all.Walked), 1e-9, 0)
			if last := part.Lanes[slices.IndexFunc(part.Lanes, func(l Lane) bool { return l.N == number && l.Spreading })]; last.Left > 1e-6*served {
				t.Errorf("%g m2 left in the hopper after pass %d", last.Left, pass)
			}
			if part.Passes() != 1 || part.Turns != part.count()-1 {
				t.Errorf("a pass of %d passes, %d turns, %d lanes", part.Passes(), part.Turns, part.count())
			}
			if w.Filling > 0 {
				checkFillings(t, part)
			}
		}
		first := all.OfPass(1)
		sameLengths(t, one, first)
		near(t, "lanes and ways of the first pass", float64(len(first.Lanes)), float64(len(one.Lanes)), 0, 0)
	})
}

// What all passes leave together is as even as what one leaves, or more so, and
// misses no more.
func TestPassesAcrossAreEven(t *testing.T) {
	y := hectare(t)
	for _, mode := range []Mode{Single, Tight} {
		w := singleWork(3)
		w.Mode = mode
		one, two := must[Plan](t)(Lay(y, inPasses(w, 1))), must[Plan](t)(Lay(y, inPasses(w, 2)))
		a, b := one.Coverage(y), two.Coverage(y)
		if b.Even.CV > a.Even.CV || b.Missed > a.Missed+0.5 || b.Ground != a.Ground {
			t.Errorf("%s: CV %.4f, missed %.1f m2 in one pass; %.4f, %.1f m2 in two", mode, a.Even.CV, a.Missed, b.Even.CV, b.Missed)
		}
		sum := two.Summary(b)
		if len(sum.Passes) != 2 || sum.Lanes != sum.Passes[0].Lanes+sum.Passes[1].Lanes {
			t.Fatalf("%+v", sum.Passes)
		}
		near(t, "length of both", sum.SpreadLengthM, sum.Passes[0].SpreadLengthM+sum.Passes[1].SpreadLengthM, 1e-12, 0)
		near(t, "total of all passes", sum.Product.AllTotal, 2*a.Ground, 1e-9, 0)
		near(t, "total of one", sum.Product.Total, a.Ground, 1e-9, 0)
	}
}
