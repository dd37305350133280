package geo

import (
	"math"
	"slices"
	"testing"

	"github.com/paulmach/orb"
	"pgregory.net/rapid"
)

var meadows = NewFrame(orb.Point{-98.5, 40})

// needle returns a triangle 10 m long with a tip of some degrees.
func needle(tip float64) Ring {
	half := tip / 2 * degree
	return Ring{{0, 0}, {10 * math.Cos(half), -10 * math.Sin(half)}, {10 * math.Cos(half), 10 * math.Sin(half)}}
}

// pieces is a region of shells that lie apart.
func pieces(shells ...Ring) Region {
	var polygons []Polygon
	for _, shell := range shells {
		polygons = append(polygons, Polygon{Shell: shell})
	}
	return regionOf(polygons)
}

func TestBorderLengthLeavesOutWhatIsNarrow(t *testing.T) {
	lawn := rectangle(0, 0, 20, 10)
	width := 0.05 * (1 - math.Tan(2*degree)/steepest)
	cut := width / math.Sin(2*degree) // of each edge of a tip of 2 degrees
	for _, tt := range []struct {
		name   string
		region Region
		want   float64
	}{
		{"rectangle", regionFrom(t, lawn), 60},
		{"strip of 10 cm", regionFrom(t, rectangle(0, 0, 20, 0.1)), 40.2},
		{"strip of 4 cm", regionFrom(t, rectangle(0, 0, 20, 0.04)), 2 * 0.04},
		{"hairline beside a lawn", regionFrom(t, Ring{{0, 0}, {20, 0}, {20, 0.001}, {10, 0.001}, {10, 5}, {0, 5}}), 30},
		{"arm of 10 cm", regionFrom(t, Ring{{0, 0}, {20, 0}, {20, 0.1}, {10, 0.1}, {10, 5}, {0, 5}}), 50},
		{"gap of 1 mm between two lawns", pieces(lawn, rectangle(20.001, 0, 30, 10)), 80 - 0.002},
		{"gap of 10 cm between two lawns", pieces(lawn, rectangle(20.1, 0, 30, 10)), 99.8},
		{"slit in a lawn", regionFrom(t, lawn, rectangle(5, 5, 15, 5.01)), 60 + 2*0.01},
		{"drain of 10 cm in a lawn", regionFrom(t, lawn, rectangle(5, 5, 15, 5.1)), 60 + 20.2},
		{"slit along the rim, 4 cm off", regionFrom(t, lawn, rectangle(5, 0.04, 15, 0.0401)), 60 + 2*0.0001},
		{"lawns apart and not opposite", pieces(lawn, rectangle(20.01, 10, 30, 20)), 60 + 39.98},
		{"drawn in many parts", regionFrom(t, Ring{{0, 0}, {3, 0}, {20, 0}, {20, 0.001}, {17, 0.001}, {12, 0.001}, {10, 0.001}, {10, 5}, {0, 5}}), 30},
		{"corner of 30 degrees", regionFrom(t, needle(30)), 20 + 20*math.Sin(15*degree)},
		{"corner of 6 degrees", regionFrom(t, needle(6)), 20 + 20*math.Sin(3*degree)},
		{"corner of 2 degrees", regionFrom(t, needle(2)), 20 + 20*math.Sin(1*degree) - 2*cut},
		{"nothing", Region{}, 0},
	} {
		t.Run(tt.name, func(t *testing.T) {
			if got := float64(meadows.BorderLength(NewBroadBorder(tt.region, 0.05))); !near(got, tt.want, 1.1e-3, 0) {
				t.Errorf("border of %.6f m, want %.6f", got, tt.want)
			}
			if all := meadows.BorderLength(NewBorder(tt.region)); all != meadows.Perimeter(tt.region) {
				t.Errorf("all of the border is %v m, perimeter %v m", all, meadows.Perimeter(tt.region))
			}
		})
	}
}

// What lies along a walk of a hairline fronts on it no more.
func TestFrontageLeavesOutWhatIsNarrow(t *testing.T) {
	lawn := regionFrom(t, Ring{{0, 0}, {20, 0}, {20, 0.001}, {10, 0.001}, {10, 5}, {0, 5}})
	walk := NewBorder(regionFrom(t, rectangle(-5, -1, 25, 0)))
	for _, tt := range []struct{ narrow, want float64 }{{0, 30}, {0.0005, 30}, {0.05, 10}} {
		if got := float64(meadows.Frontage(NewBroadBorder(lawn, tt.narrow), walk, 0.01)); !near(got, tt.want, 1e-6, 0) {
			t.Errorf("frontage but for %g m = %.6f m, want %.6f", tt.narrow, got, tt.want)
		}
	}
}

// A gap or an overlap of less than the width, between two parts of a lawn, adds
// no more to its border than it is wide and slips along.
func TestNarrowGapsAddNothingToABorder(t *testing.T) {
	check(t, 500, func(t *rapid.T) {
		whole := drawRoomyLawn(t, "whole")
		from, to := XY{rapid.Float64Range(-6, 6).Draw(t, "from"), -50}, XY{rapid.Float64Range(-6, 6).Draw(t, "to"), 50}
		way := to.Minus(from)
		ahead := way.Times(1 / way.Norm())
		gap := rapid.SampledFrom([]float64{0, 1e-8, 1e-6, 1e-4, 0.01, 0.045}).Draw(t, "gap")
		slip := rapid.SampledFrom([]float64{0, 1e-6, 0.01}).Draw(t, "slip")
		east := Ring{from, to, {60, 50}, {60, -50}}
		left := must[Region](t)(Difference(whole, regionFrom(t, east)))
		right := moved(must[Region](t)(Intersection(whole, regionFrom(t, east))), XY{ahead.Y, -ahead.X}.Times(gap).Plus(ahead.Times(slip)))
		both := regionOf(slices.Concat(left.polygons, right.polygons))

		got, want := float64(meadows.BorderLength(NewBroadBorder(both, 0.05))), float64(meadows.Perimeter(whole))
		if !near(got, want, 4*(gap+slip)+1e-5, 0) {
			t.Errorf("border of %.9f m, without the gap of %g m %.9f m", got, gap, want)
		}
	})
}

// drawRoomyLawn draws a lawn of eight corners that has no narrow parts, nor any
// where it is cut from south to north.
func drawRoomyLawn(t *rapid.T, label string) Region {
	r := regular(8, 1)
	for i := range r {
		r[i] = r[i].Times(rapid.Float64Range(18, 22).Draw(t, label+" radius")).snapped()
	}
	return regionFrom(t, r)
}

// moved is a region somewhere else.
func moved(r Region, way XY) Region {
	var polygons []Polygon
	for _, p := range r.polygons {
		q := Polygon{Shell: make(Ring, len(p.Shell))}
		for i, at := range p.Shell {
			q.Shell[i] = at.Plus(way)
		}
		polygons = append(polygons, q)
	}
	return regionOf(polygons)
}

// redrawn is a ring begun elsewhere, perhaps the other way round.
func redrawn(t *rapid.T, r Ring) Ring {
	start := rapid.IntRange(0, len(r)-1).Draw(t, "start")
	r = slices.Concat(r[start:], r[:start])
	if rapid.Bool().Draw(t, "the other way") {
		slices.Reverse(r)
	}
	return r
}

func TestBorderLengthIsThatOfTheGround(t *testing.T) {
	check(t, 500, func(t *rapid.T) {
		a, _, _ := drawMeeting(t)
		narrow := rapid.SampledFrom([]float64{0.05, 0.5, 3}).Draw(t, "narrow")
		want := meadows.BorderLength(NewBroadBorder(a, narrow))
		again := rapid.Permutation(a.polygons).Draw(t, "order")
		for i, p := range again {
			again[i] = Polygon{Shell: redrawn(t, p.Shell)}
			for _, hole := range rapid.Permutation(p.Holes).Draw(t, "holes") {
				again[i].Holes = append(again[i].Holes, redrawn(t, hole))
			}
		}
		if got := meadows.BorderLength(NewBroadBorder(regionOf(again), narrow)); !near(float64(got), float64(want), 1e-9, 0) {
			t.Errorf("border of %v m, drawn in another way %v m", want, got)
		}
		if whole := meadows.Perimeter(a); want > whole || want < -1e-9 {
			t.Errorf("border of %v m of %v m", want, whole)
		}
	})
}

// Of a comb finer than the width, teeth that are wider than the gaps are one
// piece of ground, and narrower ones are none.
func TestBorderOfAFineComb(t *testing.T) {
	const teeth, pitch, long = 1000, 1.0 / 1024, 30.0
	const width = teeth * pitch
	for _, tt := range []struct{ tooth, want float64 }{{0.75, 2 * (width + 1 + long)}, {0.25, 2 * (width + 1)}} {
		comb := Ring{{0, 0}, {0, -1}, {width, -1}, {width, 0}}
		for i := teeth - 1; i >= 0; i-- {
			west, east := (float64(i)+0.5-tt.tooth/2)*pitch, (float64(i)+0.5+tt.tooth/2)*pitch
			comb = append(comb, XY{east, 0}, XY{east, long}, XY{west, long}, XY{west, 0})
		}
		b := NewBorder(pieces(comb))
		if found, all := b.facings(0.05); all || len(found) > (mostFacings+1)*len(comb) {
			t.Errorf("teeth of %g: %d facings of %d edges at a time", tt.tooth, len(found), len(comb))
		}
		b.strikeNarrow(0.05)
		if got := float64(meadows.BorderLength(b)); !near(got, tt.want, 2*pitch, 0) {
			t.Errorf("teeth of %g: border of %.6f m, want %.6f", tt.tooth, got, tt.want)
		}
	}
}
