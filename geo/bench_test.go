package geo

import (
	"fmt"
	"slices"
	"testing"

	"github.com/paulmach/orb"
)

// n is the number of vertices of the lawn.

func BenchmarkProject(b *testing.B) {
	for _, n := range []int{10, 100, 1000} {
		b.Run(fmt.Sprintf("n=%d", n), func(b *testing.B) {
			f := NewFrame(orb.Point{-93, 45})
			places := orb.Ring(f.Places(wobbly(n)))
			for b.Loop() {
				f.Ring(places)
			}
		})
	}
}

// BenchmarkArea goes from places to square metres.
func BenchmarkArea(b *testing.B) {
	for _, n := range []int{10, 100, 1000} {
		b.Run(fmt.Sprintf("n=%d", n), func(b *testing.B) {
			places := orb.Ring(NewFrame(orb.Point{-93, 45}).Places(wobbly(n)))
			for b.Loop() {
				f := NewFrame(Center(slices.Values(places)))
				r, err := RegionOf([]Ring{f.Ring(places)})
				if err != nil || f.Area(r) < 100 {
					b.Fatal(err, f.Area(r))
				}
			}
		})
	}
}

// BenchmarkDifference takes a bed over the edge and one inside out of a lawn.
func BenchmarkDifference(b *testing.B) {
	for _, n := range []int{10, 100, 1000} {
		b.Run(fmt.Sprintf("n=%d", n), func(b *testing.B) {
			lawn, beds := lawnWithBeds(b, n)
			for b.Loop() {
				if _, err := Difference(lawn, beds); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkAreaSigma(b *testing.B) {
	for _, n := range []int{10, 100, 1000} {
		b.Run(fmt.Sprintf("n=%d", n), func(b *testing.B) {
			lawn, beds := lawnWithBeds(b, n)
			turf := must[Region](b)(Difference(lawn, beds))
			traces := []Trace{{lawn.polygons[0].Rings(), EdgeError{Sigma: 0.3, Reach: 10}}}
			for b.Loop() {
				AreaSigma(turf, traces)
			}
		})
	}
}

// BenchmarkKnot reads a ring of some 500 crossings.
func BenchmarkKnot(b *testing.B) {
	knot := make(Ring, 60)
	for i := range knot {
		knot[i] = XY{float64(i * 37 % 61), float64(i * i % 59)}
	}
	for b.Loop() {
		if _, err := NonZeroRegionOf([]Ring{knot}); err != nil {
			b.Fatal(err)
		}
	}
}

func lawnWithBeds(b *testing.B, n int) (lawn, beds Region) {
	moved := func(r Ring, by XY) Ring {
		m := make(Ring, len(r))
		for i, p := range r {
			m[i] = p.Plus(by).snapped()
		}
		return m
	}
	beds = must[Region](b)(Union(regionFrom(b, moved(regular(24, 3), XY{15, 0})), regionFrom(b, moved(regular(24, 4), XY{-2, 1}))))
	return regionFrom(b, wobbly(n)), beds
}
