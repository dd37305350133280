package render

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"
)

func TestPoleOfKnownShapes(t *testing.T) {
	for _, tt := range []struct {
		name      string
		area      polygon
		clearance float64
	}{
		{"square", box(3, 4, 10), 5},
		{"upright rectangle", rect{Point{0, 0}, Point{4, 30}}.polygon(), 2},
		{"triangle 3-4-5", polygon{{{0, 0}, {4, 0}, {0, 3}}}, 1},
		{"disc", disc(Point{50, 50}, 20), 20},
		{"square with a square hole", append(box(0, 0, 30), ring{{10, 10}, {10, 20}, {20, 20}, {20, 10}}), 10 * (2 - math.Sqrt2)},
		{"larger of two pieces", append(box(0, 0, 4), box(100, 0, 10)...), 5},
		{"needle", polygon{{{0, 0}, {1000, 0}, {1000, 0.01}, {0, 0.01}}}, 0.005},
		{"point", polygon{{{1, 1}, {1, 1}, {1, 1}}}, 0},
		{"nothing", nil, 0},
		{"not a number", polygon{{{math.NaN(), 0}, {1, 0}, {1, 1}}}, 0},
	} {
		const tolerance = 0.01
		at, clearance := pole(tt.area, tolerance)
		if clearance > tt.clearance+0.006 || clearance < tt.clearance-tolerance-0.006 {
			t.Errorf("%s: clearance %g at %v, want %g", tt.name, clearance, at, tt.clearance)
		}
		if tt.clearance > tolerance && !tt.area.contains(at) {
			t.Errorf("%s: %v lies outside", tt.name, at)
		}
	}
}

func TestPoleAgainstBruteForce(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		area := starShaped(t)
		const tolerance = 0.1
		at, clearance := pole(area, tolerance)
		if !area.contains(at) || math.Abs(area.edgeDistance(at)-clearance) > 1e-9 {
			t.Fatalf("pole at %v, clearance %g, edge at %g", at, clearance, area.edgeDistance(at))
		}
		bounds := area.bounds()
		const steps = 40
		for i := range steps {
			for j := range steps {
				q := Point{bounds.min.X + bounds.width()*float64(i)/steps, bounds.min.Y + bounds.height()*float64(j)/steps}
				if area.contains(q) && area.edgeDistance(q) > clearance+tolerance {
					t.Fatalf("%v has clearance %g, the pole %v only %g", q, area.edgeDistance(q), at, clearance)
				}
			}
		}
	})
}

func BenchmarkPole(b *testing.B) {
	for _, n := range []int{10, 100, 1000, 10_000} {
		area := wobbly(n, Point{100, 100}, 60)
		b.Run(fmt.Sprintf("n=%d", n), func(b *testing.B) {
			for b.Loop() {
				pole(area, 0.1)
			}
		})
	}
}
