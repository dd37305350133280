package render

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// A line is broken at plates and nowhere else: what is left lies on it and off
// them, and what is gone lay on one of them.
func TestBrokenLines(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		coordinate := rapid.Float64Range(0, 100)
		point := rapid.Custom(func(t *rapid.T) Point { return Point{coordinate.Draw(t, "x"), coordinate.Draw(t, "y")} })
		line := Line{Points: rapid.SliceOfN(point, 2, 8).Draw(t, "line")}
		var b board
		for range rapid.IntRange(0, 6).Draw(t, "plates") {
			b.take(turnedPlate(point.Draw(t, "at"), rapid.Float64Range(0.1, 30).Draw(t, "width"), rapid.Float64Range(0.1, 10).Draw(t, "height"),
				rapid.Float64Range(-90, 90).Draw(t, "turn")))
		}
		const slack = 1e-6 // mm
		onPlate := func(q Point, by float64) bool {
			for _, p := range b.taken {
				if p.grown(by).holds(q) {
					return true
				}
			}
			return false
		}
		kept := b.broken([]Line{line})
		var length float64
		for _, part := range kept {
			length += part.length()
			for way := 0.0; way < part.length(); way += 0.5 {
				q := part.at(way)
				if onPlate(q, -slack) || distanceTo(line, q) > slack {
					t.Fatalf("%v is left of %v", q, line)
				}
			}
		}
		if length > line.length()+slack {
			t.Fatalf("%g mm are left of %g", length, line.length())
		}
		for way := 0.0; way < line.length(); way += 0.5 {
			q, nearest := line.at(way), math.Inf(1)
			for _, part := range kept {
				nearest = min(nearest, distanceTo(part, q))
			}
			if nearest > 1e-3 && !onPlate(q, slack) {
				t.Fatalf("%v is gone, %g mm from what is left", q, nearest)
			}
		}
	})
}

func TestUnbrokenLineIsLeftAsItIs(t *testing.T) {
	var b board
	b.take(levelPlate(Point{50, 50}, 4, 4))
	line := Line{Points: []Point{{0, 0}, {10, 0}, {10, 10}}}
	if kept := b.broken([]Line{line}); len(kept) != 1 || len(kept[0].Points) != 3 {
		t.Errorf("left %v", kept)
	}
	across := Line{Points: []Point{{40, 50}, {60, 50}}}
	kept := b.broken([]Line{across})
	if len(kept) != 2 || kept[0].Points[1] != (Point{48, 50}) || kept[1].Points[0] != (Point{52, 50}) {
		t.Errorf("left %v", kept)
	}
}
