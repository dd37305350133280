package geo

import (
	"math"
	"testing"
)

func TestStrips(t *testing.T) {
	ring := func(at ...XY) Region { return must[Region](t)(RegionOf([]Ring{at})) }
	for _, tt := range []struct {
		name   string
		ground Region
		area   float64 // m2 of strips under 0.1 m
	}{
		{"a rectangle", ring(XY{0, 0}, XY{10, 0}, XY{10, 4}, XY{0, 4}), 0},
		{"a strip", ring(XY{0, 0}, XY{10, 0}, XY{10, 0.05}, XY{0, 0.05}), 0.5},
		{"a strip that is wider", ring(XY{0, 0}, XY{10, 0}, XY{10, 0.2}, XY{0, 0.2}), 0},
		{"a strip that bends", ring(XY{0, 0}, XY{10, 0}, XY{5, 0.05}), 0.25},
		{"a corner", ring(XY{0, 0}, XY{10, 0}, XY{10, 4}), 0},
		{"a whisker on a rectangle", ring(XY{0, 0}, XY{10, 0}, XY{10, 3.95}, XY{30, 3.95}, XY{30, 4}, XY{0, 4}), 1},
		{"a gap in a rectangle", ring(XY{0, 0}, XY{10, 0}, XY{10, 2}, XY{5, 2}, XY{5, 2.05}, XY{10, 2.05}, XY{10, 4}, XY{0, 4}), 0},
	} {
		strips, rest, err := tt.ground.Strips(0.1)
		if err != nil {
			t.Fatalf("%s: %v", tt.name, err)
		}
		if !near(strips.PlanarArea(), tt.area, 1e-4, 0) {
			t.Errorf("%s: strips of %.6f m2, want %.6f", tt.name, strips.PlanarArea(), tt.area)
		}
		if sum := strips.PlanarArea() + rest.PlanarArea(); !near(sum, tt.ground.PlanarArea(), 1e-6, 0) {
			t.Errorf("%s: strips and rest are %.9f m2, want %.9f", tt.name, sum, tt.ground.PlanarArea())
		}
	}
}

// Two that share one side of a strip get what lies along each.
func TestFlank(t *testing.T) {
	strip := must[Region](t)(RegionOf([]Ring{{{0, 0}, {10, 0}, {10, 0.05}, {0, 0.05}}}))
	for _, tt := range []struct {
		name       string
		west, east float64 // of the neighbour to the south
		area       float64
	}{
		{"along all of it", -5, 15, 0.5},
		{"along the west of it", 0, 4, 0.2},
		{"along the middle of it", 3, 4, 0.05},
		{"beyond it", 10, 14, 0},
	} {
		beside := must[Region](t)(RegionOf([]Ring{{{tt.west, -3}, {tt.east, -3}, {tt.east, 0}, {tt.west, 0}}}))
		flank := must[Region](t)(strip.Flank(beside, 0.1))
		got := must[Region](t)(Intersection(strip, flank)).PlanarArea()
		if !near(got, tt.area, 1e-9, 0) {
			t.Errorf("%s: %.9f m2, want %.9f", tt.name, got, tt.area)
		}
	}
}

// Against the frame itself: the middle of a parallel, and the straight edge
// between its ends.
func TestBend(t *testing.T) {
	for _, lat := range latitudes {
		if lat > 80 {
			continue
		}
		f := NewFrame([2]float64{-93, lat})
		for _, half := range []float64{0.0005, 0.02} { // degrees
			west, east := f.project([2]float64{-93 - half, lat}), f.project([2]float64{-93 + half, lat})
			want := math.Abs(west.Toward(east, 0.5).Y - f.project([2]float64{-93, lat}).Y)
			if got := f.Bend(west.Distance(east)); !near(got, want, 1e-8, 0.02) {
				t.Errorf("at %v: %.3g m over %.0f m, want %.3g", lat, got, west.Distance(east), want)
			}
		}
	}
}
