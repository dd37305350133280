package lanes

import (
	"math"
	"testing"

	"example.org/turfplat/geo"
	"example.org/turfplat/zones"
)

// hectare is a lawn of 125 by 80 m with 20 round beds in it.
func hectare(t failer) Yard {
	ring := rectangle(0, 0, 125, 80)
	var beds []geo.Region
	for i := range 20 {
		beds = append(beds, geo.Disc(geo.XY{X: 12 + 25*float64(i%5) + float64(i), Y: 10 + 20*float64(i/5) + float64(i%3)}, 1.5+float64(i%4)/2))
	}
	lawn := must[geo.Region](t)(geo.RegionOf([]geo.Ring{ring}))
	bed := must[geo.Region](t)(geo.Union(beds...))
	return yardOf(must[geo.Region](t)(geo.Difference(lawn, bed)), zones.Cover{Kind: zones.Bed, Region: bed})
}

// yardOf is a yard of one plot, with other covers beside it.
func yardOf(turf geo.Region, covers ...zones.Cover) Yard {
	return Yard{Plots: []Plot{{Zones: []zones.Zone{{ID: "zone/turf", Region: turf}}, Turf: turf}}, Covers: covers, Closed: covers}
}

func rectangle(west, south, east, north float64) geo.Ring {
	return geo.Ring{{X: west, Y: south}, {X: east, Y: south}, {X: east, Y: north}, {X: west, Y: north}}
}

// regular returns a regular polygon.
func regular(n int, x, y, radius float64) geo.Ring {
	r := make(geo.Ring, n)
	for i := range r {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(n))
		r[i] = geo.XY{X: x + radius*cos, Y: y + radius*sin}
	}
	return r
}

// failer is what testing.T, testing.B and rapid.T have in common.
type failer interface {
	Helper()
	Errorf(format string, args ...any)
	Fatalf(format string, args ...any)
}

func must[T any](t failer) func(T, error) T {
	return func(v T, err error) T {
		t.Helper()
		if err != nil {
			t.Fatalf("unexpected error: %v", err)
		}
		return v
	}
}

func singleWork(swath float64) Work {
	return Work{Pattern: Triangle(swath), Mode: Single, Practice: CommonPractice()}
}

func BenchmarkLayHectare(b *testing.B) {
	y := hectare(b)
	for b.Loop() {
		plan := must[Plan](b)(Lay(y, singleWork(2.5)))
		plan.Coverage(y)
	}
}
