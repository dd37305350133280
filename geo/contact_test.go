package geo

import (
	"math"
	"testing"

	"github.com/paulmach/orb"
	"pgregory.net/rapid"
)

func TestContactWithItself(t *testing.T) {
	f := NewFrame(orb.Point{10, 50})
	check(t, 300, func(t *rapid.T) {
		lawn := regionFrom(t, drawLawn(t, "lawn", 50))
		d := rapid.SampledFrom([]float64{1e-6, 0.01, 0.5}).Draw(t, "distance")
		got, want := f.Contact(lawn, lawn, d), f.Perimeter(lawn)
		if !near(float64(got), float64(want), 0, 1e-9) {
			t.Errorf("contact %v m, perimeter %v m", got, want)
		}
	})
}

func TestContact(t *testing.T) {
	f := NewFrame(orb.Point{10, 50})
	square := regionFrom(t, rectangle(0, 0, 10, 10))
	wedge := Ring{{10, 0}, {20, 0}, {20, 10}, {11, 10}} // leans away from x = 10 by 1 in 10
	for _, tt := range []struct {
		name  string
		other Region
		d     float64
		want  float64
	}{
		{"edge in common", regionFrom(t, rectangle(10, 2, 15, 8)), 0.01, 6},
		{"edge traced in many parts", regionFrom(t, Ring{{10, 2}, {15, 2}, {15, 8}, {10, 8}, {10, 7}, {10, 5.5}, {10, 3}}), 0.01, 6},
		{"near enough", regionFrom(t, rectangle(10.2, 2, 15, 8)), 0.25, 6},
		{"too far", regionFrom(t, rectangle(10.3, 2, 15, 8)), 0.25, 0},
		{"overlapping by little", regionFrom(t, rectangle(9.8, 2, 15, 8)), 0.25, 6},
		{"corner to corner", regionFrom(t, rectangle(10, 10, 15, 15)), 0.25, 0},
		// the part of the edge within 0.5 m of the leaning one; the end of
		// that is 0.5 m / cos away
		{"leaning away", regionFrom(t, wedge), 0.5, 0.5 * math.Hypot(1, 10)},
		{"askew", regionFrom(t, Ring{{10.1, 5}, {20, -5}, {20, 15}}), 0.5, 0},
		{"round it", regionFrom(t, rectangle(-5, -5, 15, 15), rectangle(0, 0, 10, 10)), 0.01, 40},
		{"nothing", Region{}, 1, 0},
	} {
		t.Run(tt.name, func(t *testing.T) {
			if got := float64(f.Contact(square, tt.other, tt.d)); !near(got, tt.want, 1e-6, 0) {
				t.Errorf("contact = %.6f m, want %.6f", got, tt.want)
			}
		})
	}
}
