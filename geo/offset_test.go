package geo

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// distanceToEdge is the way from p to the nearest edge of a region.
func (r Region) distanceToEdge(p XY) float64 {
	nearest := math.Inf(1)
	r.edges(func(a, b XY) { nearest = min(nearest, edge{a, b}.distance(p)) })
	return nearest
}

// What lies inside an offset region is told by the distance to the edge alone.
func TestOffsetByDistance(t *testing.T) {
	check(t, 200, func(t *rapid.T) {
		lawn := regionFrom(t, drawLawn(t, "lawn", 50))
		if rapid.Bool().Draw(t, "with a bed") {
			lawn = must[Region](t)(Difference(lawn, regionFrom(t, drawLawn(t, "bed", 50))))
		}
		if lawn.Empty() {
			return
		}
		d := rapid.Float64Range(0.05, 5).Draw(t, "distance")
		in, out := must[Region](t)(lawn.Offset(-d)), must[Region](t)(lawn.Offset(d))
		checkValid(t, in)
		checkValid(t, out)
		b := lawn.Bounds().Grown(d)
		for range 40 {
			p := XY{rapid.Float64Range(b.Min.X, b.Max.X).Draw(t, "x"), rapid.Float64Range(b.Min.Y, b.Max.Y).Draw(t, "y")}
			away, within := lawn.distanceToEdge(p), lawn.Contains(p)
			if math.Abs(away-d) < 0.001 {
				continue
			}
			if want := within && away > d; in.Contains(p) != want {
				t.Errorf("inset by %v m holds %v, %v m from the edge: %v", d, p, away, !want)
			}
			if want := within || away < d; out.Contains(p) != want {
				t.Errorf("outset by %v m holds %v, %v m from the edge: %v", d, p, away, !want)
			}
		}
		for _, r := range []Region{in, out} {
			r.edges(func(a, _ XY) {
				if off := lawn.distanceToEdge(a); math.Abs(off-d) > 0.001 {
					t.Errorf("edge offset by %v m has a vertex %v m off", d, off)
				}
			})
		}
	})
}

// A convex region grows by its perimeter times d and the disc of radius d
// (Steiner's formula), and a rectangle shrinks to a rectangle.
func TestOffsetOfConvexRegions(t *testing.T) {
	for name, ring := range map[string]Ring{"square": rectangle(0, 0, 20, 20), "strip": rectangle(0, 0, 100, 1),
		"triangle": {{0, 0}, {30, 0}, {10, 20}}, "60-gon": regular(60, 15).snapped()} {
		for _, d := range []float64{0.3, 1, 7} {
			r := regionFrom(t, ring)
			want := ring.signedArea() + d*ring.length() + math.Pi*d*d
			if got := must[Region](t)(r.Offset(d)).PlanarArea(); math.Abs(got-want) > 2*math.Pi*d*roundness {
				t.Errorf("%s grown by %v m has %v m2, want %v", name, d, got, want)
			}
		}
	}
	lawn := regionFrom(t, rectangle(0, 0, 20, 30))
	same(t, "inset of a rectangle", must[Region](t)(lawn.Offset(-3)).PlanarArea(), 14*24)
	for _, d := range []float64{-10, -15} {
		if r := must[Region](t)(lawn.Offset(d)); !r.Empty() {
			t.Errorf("offset by %v m leaves %v m2", d, r.PlanarArea())
		}
	}
}

// A strip with a round bulge at each end falls apart in two discs; opened, it
// loses the strip.
func TestOffsetOfADumbbell(t *testing.T) {
	lawn := must[Region](t)(Union(regionFrom(t, regular(64, 5).snapped()), regionFrom(t, rectangle(0, -0.5, 30, 0.5)), Disc(XY{30, 0}, 5)))
	in := must[Region](t)(lawn.Offset(-0.6))
	if n := len(in.polygons); n != 2 {
		t.Fatalf("%d pieces, want 2", n)
	}
	opened := must[Region](t)(in.Offset(0.6))
	if beyond := must[Region](t)(Difference(opened, lawn)).PlanarArea(); beyond > 0.001*63 {
		t.Errorf("opened it holds %v m2 more", beyond)
	}
}

func BenchmarkOffset(b *testing.B) {
	lawn := regionFrom(b, wobbly(200))
	for b.Loop() {
		must[Region](b)(lawn.Offset(-1.25))
	}
}
