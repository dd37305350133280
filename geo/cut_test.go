package geo

import (
	"errors"
	"testing"

	"pgregory.net/rapid"
)

func TestCutTiles(t *testing.T) {
	check(t, 200, func(t *rapid.T) {
		lawn := regionFrom(t, drawLawn(t, "lawn", 20))
		line := make(Line, rapid.IntRange(2, 5).Draw(t, "positions"))
		for i := range line { // eastwards, so that it never crosses itself, nor when run on
			line[i] = XY{12*float64(i) - 24 + rapid.Float64Range(0, 11).Draw(t, "x"), rapid.Float64Range(-15, 15).Draw(t, "y")}.snapped()
		}
		left, right, err := lawn.Cut(line)
		if err != nil {
			t.Fatalf("unexpected error: %v", err)
		}
		checkValid(t, left)
		checkValid(t, right)
		same(t, "left and right", left.PlanarArea()+right.PlanarArea(), lawn.PlanarArea())
		same(t, "overlap", must[Region](t)(Intersection(left, right)).PlanarArea(), 0)
		back, _, err := lawn.Cut(Line(reversed(Ring(line))))
		if err != nil {
			t.Fatalf("unexpected error: %v", err)
		}
		same(t, "left of the line walked back", back.PlanarArea(), right.PlanarArea())
	})
}

func TestCut(t *testing.T) {
	square := regionFrom(t, rectangle(0, 0, 10, 10))
	for _, tt := range []struct {
		name        string
		line        Line
		left, right float64
		err         error
	}{
		{name: "north through the middle", line: Line{{5, 4}, {5, 6}}, left: 50, right: 50},
		{name: "south through the middle", line: Line{{3, 6}, {3, 4}}, left: 70, right: 30},
		{name: "west", line: Line{{8, 2}, {1, 2}}, left: 20, right: 80},
		{name: "east", line: Line{{1, 2}, {8, 2}}, left: 80, right: 20},
		{name: "from corner to corner", line: Line{{0, 0}, {10, 10}}, left: 50, right: 50},
		{name: "along an edge", line: Line{{0, 0}, {10, 0}}, left: 100, right: 0},
		{name: "clear of it, to the left", line: Line{{20, 0}, {20, 10}}, left: 100, right: 0},
		{name: "clear of it, to the right", line: Line{{-5, 0}, {-5, 10}}, left: 0, right: 100},
		{name: "bent", line: Line{{5, -5}, {5, 5}, {15, 5}}, left: 75, right: 25},
		{name: "bent, ends on one side", line: Line{{4, -5}, {4, 5}, {6, 5}, {6, -5}}, left: 90, right: 10},
		{name: "bent, ends on one side, the other way", line: Line{{6, -5}, {6, 5}, {4, 5}, {4, -5}}, left: 10, right: 90},
		{name: "position repeated", line: Line{{5, 4}, {5, 4}, {5, 6}, {5, 6}}, left: 50, right: 50},
		{name: "crosses itself", line: Line{{-5, 5}, {5, 5}, {5, 8}, {3, 8}, {3, -5}}, err: ErrBentCut},
		{name: "closed", line: Line{{2, 2}, {8, 2}, {8, 8}, {2, 8}, {2, 2}}, err: ErrBentCut},
		{name: "no length", line: Line{{5, 5}, {5, 5}}, err: ErrBentCut},
		{name: "nothing", line: nil, err: ErrBentCut},
	} {
		t.Run(tt.name, func(t *testing.T) {
			left, right, err := square.Cut(tt.line)
			if !errors.Is(err, tt.err) {
				t.Fatalf("error = %v, want %v", err, tt.err)
			}
			if !near(left.PlanarArea(), tt.left, 1e-6, 0) || !near(right.PlanarArea(), tt.right, 1e-6, 0) {
				t.Errorf("left %v m2, right %v m2; want %v and %v", left.PlanarArea(), right.PlanarArea(), tt.left, tt.right)
			}
		})
	}
}
