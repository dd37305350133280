package render

import (
	"math"
	"strings"
	"testing"
)

func TestWhatCannotBeDrawnIsRefused(t *testing.T) {
	nan := math.NaN()
	line := func(p Point) []Line { return []Line{{Points: []Point{{1, 1}, p}}} }
	for _, tt := range []struct {
		name    string
		element Element
		says    string
	}{
		{"path without a place", Path{Lines: line(Point{nan, 1}), Stroke: black, Weight: 1}, "path through"},
		{"endless path", Path{Lines: line(Point{1, math.Inf(-1)}), Fill: black}, "path through"},
		{"path in a group", Group{Elements: []Element{Path{Lines: line(Point{nan, 1})}}}, "path through"},
		{"weight", Path{Lines: line(Point{2, 2}), Stroke: black, Weight: nan}, "line weight"},
		{"negative weight", Path{Lines: line(Point{2, 2}), Stroke: black, Weight: -1}, "line weight"},
		{"dash of nothing", Path{Lines: line(Point{2, 2}), Stroke: black, Weight: 1, Dash: []float64{1, 0}}, "dash"},
		{"text without a place", Text{At: Point{1, nan}, String: "a", Size: 9}, `text "a" at`},
		{"text without a size", Text{String: "a"}, "size 0 pt"},
		{"text turned nowhere", Text{String: "a", Size: 9, Turn: nan}, "turned by"},
		{"halo", Text{String: "a", Size: 9, Halo: -1}, "halo -1"},
		{"pointer", &Path{}, "element *render.Path"},
		{"nothing", nil, "element <nil>"},
		{"face", Text{String: "a", Size: 9, Face: 9}, "face 9"},
	} {
		s := NewSheet("yard", "Yard", A4)
		s.Add(tt.element)
		for name, write := range writers {
			if _, err := write(s); err == nil || !strings.Contains(err.Error(), tt.says) || !strings.Contains(err.Error(), `"yard"`) {
				t.Errorf("%s in %s: %v", tt.name, name, err)
			}
		}
	}
	for _, paper := range []Paper{{"none", 0, 10}, {"vast", 10, 1e6}, {"odd", nan, 10}} {
		if _, err := SVG(NewSheet("yard", "Yard", paper)); err == nil {
			t.Errorf("%s paper is taken", paper.Name)
		}
	}
}
