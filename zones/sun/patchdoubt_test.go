package sun

import (
	"math"
	"testing"

	"example.org/turfplat/geo"
)

func TestDoubtful(t *testing.T) {
	lawn := region(t, rectangle(0, 0, 20, 20))
	for _, tt := range []struct {
		name  string
		hours func(geo.XY) float64
		west  float64 // where the band begins, if it is one
		east  float64
	}{
		{"none near a limit", func(geo.XY) float64 { return 5 }, 0, 0},
		{"all near a limit", func(geo.XY) float64 { return 3.7 }, 0, 20},
		{"a band across the lawn", func(p geo.XY) float64 { return 5.25 + p.X/10 }, 2.5, 12.5}, // 5.5 h to 6.5 h
	} {
		band, err := Doubtful(fieldOf(lawn, 0.5, tt.hours), lawn, DefaultLimits())
		if err != nil {
			t.Fatalf("%s: %v", tt.name, err)
		}
		if got, want := float64(frame.Area(band)), 20*(tt.east-tt.west); math.Abs(got-want) > 0.1 {
			t.Errorf("%s: %.2f m2, want %.2f", tt.name, got, want)
		}
		if want := region(t, rectangle(tt.west, 0, tt.east, 20)).Bounds(); tt.east > 0 && !band.Bounds().Grown(1e-6).Meets(want) {
			t.Errorf("%s: lies at %v, want %v", tt.name, band.Bounds(), want)
		}
	}
}
