package render

import (
	"math"
	"testing"

	"example.org/turfplat/geo"
)

// extent is the box round all paths of the elements.
func extent(elements []Element) rect {
	var all polygon
	visit(elements, func(e Element) {
		if p, ok := e.(Path); ok {
			for _, line := range p.Lines {
				all = append(all, line.Points)
			}
		}
	})
	return all.bounds()
}

func TestSignsAreAsLargeAsAsked(t *testing.T) {
	at := Point{50, 60}
	for name, sign := range map[string]func(Point, float64) Group{
		"start": startSign, "refill": refillSign, "hazard": hazardSign, "gate": gateSign,
	} {
		for _, height := range []float64{3, 5, 12} {
			box := extent(sign(at, height).Elements)
			if h := box.height() / height; h < 0.85 || h > 1.25 || box.width()/height > 1.5 {
				t.Errorf("%s of %g mm is %g x %g mm", name, height, box.width(), box.height())
			}
			if middle := (box.min.X + box.max.X) / 2; math.Abs(middle-at.X) > 1e-9 || math.Abs(box.min.Y+box.max.Y-2*at.Y)/2 > height*0.1 {
				t.Errorf("%s of %g mm is not centred: %v", name, height, box)
			}
		}
	}
}

func TestTreeCrownIsTrueToScale(t *testing.T) {
	for _, leaf := range []leaf{broadLeaf, needleLeaf} {
		for _, diameter := range []float64{1, 4, 25, 80} {
			crown := tree(Point{100, 100}, diameter, leaf).Elements[0].(Path).Lines[0].Points
			farthest := 0.0
			for _, p := range crown {
				farthest = max(farthest, math.Hypot(p.X-100, p.Y-100))
			}
			if math.Abs(farthest-diameter/2) > 1e-9 {
				t.Errorf("a crown of %g mm reaches %g mm from its trunk", diameter, farthest)
			}
		}
	}
}

func TestNorthArrowTurns(t *testing.T) {
	for _, turn := range []float64{0, 30, 90, -45} {
		group := northArrow(Point{50, 50}, 16, turn)
		tip := group.Elements[0].(Path).Lines[0].Points[0]
		if got := math.Atan2(-(tip.X-50), tip.Y-50) * 180 / math.Pi; math.Abs(got-turn) > 1e-9 {
			t.Errorf("an arrow turned by %g points to %g", turn, got)
		}
	}
	if box := extent(northArrow(Point{50, 50}, 16, 0).Elements); box.min.Y < 50-1e-9 || box.max.Y > 66 {
		t.Errorf("an arrow of 16 mm stands from %g to %g", box.min.Y, box.max.Y)
	}
}

func TestScaleBarIsTrue(t *testing.T) {
	for _, scale := range []Scale{100, 120, 240, 250, 500, 600, 2400, 60_000} {
		group := scaleBar(Point{10, 10}, scale, 80)
		var frames []float64 // lengths of the two sides on paper
		var last []string    // figures at their ends
		for i, e := range group.Elements {
			if p, ok := e.(Path); ok && p.Weight == hairLine {
				frames = append(frames, extent([]Element{e}).width())
			}
			if text, ok := e.(Text); ok && (text.String == "ft" || text.String == "m") {
				last = append(last, group.Elements[i-1].(Text).String)
			}
		}
		if len(frames) != 2 || len(last) != 2 {
			t.Fatalf("%s: %d sides with %d ends", scale, len(frames), len(last))
		}
		feet, metres := number(t, []byte(last[0])), number(t, []byte(last[1]))
		if math.Abs(frames[0]-scale.MM(feet*geo.FootM)) > 1e-9 || math.Abs(frames[1]-scale.MM(metres)) > 1e-9 {
			t.Errorf("%s: %g ft are %g mm, %g m are %g mm", scale, feet, frames[0], metres, frames[1])
		}
		for _, frame := range frames {
			if frame > 68 || frame < 30 {
				t.Errorf("%s: a side is %g mm long", scale, frame)
			}
		}
		if box := extent(group.Elements); box.min.Y < 10 || box.max.Y > 10+scaleBarHeight {
			t.Errorf("%s: the bar stands from %g to %g", scale, box.min.Y, box.max.Y)
		}
	}
}

func TestBarParts(t *testing.T) {
	for _, tt := range []struct {
		limit, part float64
		parts       int
	}{
		{61, 20, 3}, {19, 5, 3}, {50, 10, 5}, {5, 1, 5}, {3.1, 1, 3}, {2.9, 0.5, 5}, {0.9, 0.2, 4}, {999, 200, 4},
	} {
		if part, parts := barParts(tt.limit); math.Abs(part-tt.part) > 1e-12 || parts != tt.parts {
			t.Errorf("up to %g: %d parts of %g, want %d of %g", tt.limit, parts, part, tt.parts, tt.part)
		}
	}
}
