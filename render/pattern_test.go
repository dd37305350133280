package render

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"
)

var allPatterns = map[string]pattern{
	"hatch": hatch, "back hatch": backHatch, "cross hatch": crossHatch, "dashes": dashes, "stipple": stipple,
	"tufts": tufts, "waves": waves, "bricks": bricks, "chips": chips,
}

func TestPatternsStayInside(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		area := starShaped(t)
		for name, pattern := range allPatterns {
			for _, line := range pattern.fill(area, black).Lines {
				for i := 1; i < len(line.Points); i++ {
					a, b := line.Points[i-1], line.Points[i]
					middle := Point{(a.X + b.X) / 2, (a.Y + b.Y) / 2}
					if len(pattern.rulings) > 0 && !area.contains(middle) && area.edgeDistance(middle) > 1e-9 {
						t.Fatalf("%s: a line from %v to %v has its middle outside", name, a, b)
					}
					if len(pattern.tiles) > 0 && !(area.contains(a) && area.contains(b)) {
						t.Fatalf("%s: a mark reaches outside from %v to %v", name, a, b)
					}
				}
			}
		}
	})
}

// Lines at a spacing measure an area: their total length times the spacing is
// the area, but for the pieces between the edge and the nearest line.
func TestRulingLengthIsAreaBySpacing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		area := starShaped(t)
		r := ruling{angle: rapid.Float64Range(0, 180).Draw(t, "angle"), spacing: rapid.Float64Range(0.2, 3).Draw(t, "spacing")}
		total := lengthOf(r.fill(area)) * r.spacing
		if slack := area.perimeter() * r.spacing; math.Abs(total-area.area()) > slack {
			t.Fatalf("lines cover %g mm², the area is %g mm², more than %g apart", total, area.area(), slack)
		}
	})
	fine := ruling{angle: 30, spacing: 0.1}
	if disc := disc(Point{100, 100}, 40); math.Abs(lengthOf(fine.fill(disc))*0.1/disc.area()-1) > 1e-4 {
		t.Errorf("fine lines cover %g of a disc", lengthOf(fine.fill(disc))*0.1/disc.area())
	}
}

func TestDashesKeepTheirShare(t *testing.T) {
	r := ruling{angle: 20, spacing: 0.5, dash: 3, gap: 1, shift: 1.3}
	unbroken := ruling{angle: 20, spacing: 0.5}
	area := box(10, 10, 100)
	if share := lengthOf(r.fill(area)) / lengthOf(unbroken.fill(area)); math.Abs(share-0.75) > 0.01 {
		t.Errorf("dashes take %g of the lines, want 0.75", share)
	}
}

// Two halves of an area show what the whole shows: the pattern goes on across
// the line between them.
func TestNeighboursContinueThePattern(t *testing.T) {
	whole := rect{Point{10, 10}, Point{90, 70}}.polygon()
	left, right := rect{Point{10, 10}, Point{47.3, 70}}.polygon(), rect{Point{47.3, 10}, Point{90, 70}}.polygon()
	for name, pattern := range allPatterns {
		all := lengthOf(pattern.fill(whole, black).Lines)
		parts := lengthOf(pattern.fill(left, black).Lines) + lengthOf(pattern.fill(right, black).Lines)
		if len(pattern.tiles) == 0 && math.Abs(parts-all) > 1e-6 {
			t.Errorf("%s: the halves show %g mm of line, the whole %g", name, parts, all)
		}
		if parts > all+1e-6 || parts < 0.9*all {
			t.Errorf("%s: the halves show %g mm of marks, the whole %g", name, parts, all)
		}
	}
}

func TestPatternsOfOddAreas(t *testing.T) {
	for name, area := range map[string]polygon{
		"nothing":             nil,
		"empty ring":          {{}},
		"a point":             {{{1, 1}, {1, 1}, {1, 1}}},
		"not a number":        {{{math.NaN(), 1}, {2, 2}, {3, 1}}},
		"endless":             {{{math.Inf(1), 1}, {2, 2}, {3, 1}}},
		"far off":             box(5000, 5000, 10),
		"huge":                box(-90_000, -90_000, 180_000),
		"needle across sheet": {{{0, 0}, {1400, 0.001}, {1400, 0.002}}},
	} {
		for kind, pattern := range allPatterns {
			path := pattern.fill(area, black)
			if err := path.check(); err != nil {
				t.Errorf("%s of %s: %v", kind, name, err)
			}
		}
	}
}

func BenchmarkHatch(b *testing.B) {
	for _, n := range []int{100, 1000, 10_000} {
		area := wobbly(n, Point{100, 100}, 60)
		for _, kind := range []string{"hatch", "tufts", "stipple"} {
			b.Run(fmt.Sprintf("%s/n=%d", kind, n), func(b *testing.B) {
				for b.Loop() {
					allPatterns[kind].fill(area, black)
				}
			})
		}
	}
}
