package render

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func TestPolygonMeasures(t *testing.T) {
	holed := append(box(100, 200, 10), ring{{102, 202}, {102, 206}, {106, 206}, {106, 202}})
	for _, tt := range []struct {
		name string
		area polygon
		want float64
		rel  float64
	}{
		{"square", box(100, 200, 10), 100, 1e-12},
		{"square with a hole", holed, 84, 1e-12},
		{"disc", disc(Point{50, 50}, 20), math.Pi * 400, 5e-4},
		{"two pieces", append(box(0, 0, 1), box(5, 5, 2)...), 5, 1e-12},
		{"nothing", nil, 0, 0},
	} {
		if got := tt.area.area(); math.Abs(got-tt.want) > tt.rel*tt.want {
			t.Errorf("%s: %g mm², want %g", tt.name, got, tt.want)
		}
	}
	if got := holed.bounds(); got != (rect{Point{100, 200}, Point{110, 210}}) {
		t.Errorf("bounds are %v", got)
	}
	if got := (polygon{}).bounds(); got != (rect{}) {
		t.Errorf("bounds of nothing are %v", got)
	}
}

func TestDiscStaysWithinFiveMicrometres(t *testing.T) {
	for _, radius := range []float64{0.001, 0.1, 1, 10, 100, 500} {
		disc := disc(Point{}, radius)
		disc.edges(func(a, b Point) {
			middle := math.Hypot((a.X+b.X)/2, (a.Y+b.Y)/2)
			if radius-middle > 0.005+1e-12 || math.Abs(math.Hypot(a.X, a.Y)-radius) > 1e-9 {
				t.Fatalf("radius %g: an edge lies %g mm inside the circle", radius, radius-middle)
			}
		})
	}
}

func TestBandsAgreeWithPlainCounting(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		area := starShaped(t)
		inside := bandsOf(area)
		for range 50 {
			q := Point{rapid.Float64Range(0, 210).Draw(t, "x"), rapid.Float64Range(0, 210).Draw(t, "y")}
			if inside.holds(q) != area.contains(q) {
				t.Fatalf("%v: holds is %v", q, inside.holds(q))
			}
		}
	})
}
