package render

import (
	"math"
	"testing"
)

func TestDashed(t *testing.T) {
	straight := Line{Points: []Point{{0, 0}, {10, 0}}}
	around := Line{Points: []Point{{0, 0}, {4, 0}, {4, 3}}, Closed: true}
	for _, tt := range []struct {
		name    string
		line    Line
		pattern []float64
		pieces  int
		length  float64
	}{
		{"unbroken", straight, nil, 1, 10},
		{"even", straight, []float64{2, 2}, 3, 6},
		{"odd pattern is doubled", straight, []float64{3}, 2, 6},
		{"four parts", straight, []float64{3, 1, 1, 1}, 3, 3 + 1 + 3},
		{"longer than the line", straight, []float64{20, 5}, 1, 10},
		{"round corners and home again", around, []float64{5, 1}, 2, 10},
		{"a point", Line{Points: []Point{{1, 1}}}, []float64{1, 1}, 1, 0},
	} {
		got := dashed(tt.line, tt.pattern)
		if len(got) != tt.pieces || math.Abs(lengthOf(got)-tt.length) > 1e-9 {
			t.Errorf("%s: %d pieces of %g mm, want %d of %g", tt.name, len(got), lengthOf(got), tt.pieces, tt.length)
		}
	}
}

func TestStrokeOutlineIsCounterClockwise(t *testing.T) {
	path := Path{Lines: wobbly(40, Point{20, 20}, 10).lines(), Weight: 0.5, Round: true}
	outline := path.strokeOutline()
	if len(outline) != 80 {
		t.Errorf("%d pieces for 40 edges and 40 corners", len(outline))
	}
	for _, piece := range outline {
		if (polygon{piece.Points}).area() <= 0 {
			t.Fatalf("piece %v is wound clockwise or empty", piece.Points)
		}
	}
}

func TestPlank(t *testing.T) {
	plank := polygon{plank(Point{1, 1}, Point{4, 5}, 0.6)}
	if math.Abs(plank.area()-5*0.6) > 1e-12 {
		t.Errorf("a stroke of 5 x 0.6 mm covers %g mm²", plank.area())
	}
}
