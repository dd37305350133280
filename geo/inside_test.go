package geo

import (
	"slices"
	"testing"

	"pgregory.net/rapid"
)

func (l Line) planarLength() float64 {
	var sum float64
	for i := 1; i < len(l); i++ {
		sum += l[i].Minus(l[i-1]).Norm()
	}
	return sum
}

func totalLength(lines []Line) float64 {
	var sum float64
	for _, l := range lines {
		sum += l.planarLength()
	}
	return sum
}

func TestInsideAndOutsideMakeUpALine(t *testing.T) {
	check(t, 300, func(t *rapid.T) {
		lawn := regionFrom(t, drawLawn(t, "lawn", 10))
		line := make(Line, rapid.IntRange(2, 8).Draw(t, "positions"))
		for i := range line {
			line[i] = XY{rapid.Float64Range(-40, 40).Draw(t, "x"), rapid.Float64Range(-40, 40).Draw(t, "y")}.snapped()
		}
		around := must[Region](t)(Difference(regionFrom(t, rectangle(-100, -100, 100, 100)), lawn))
		in, out := lawn.Inside(line), around.Inside(line)
		onEdge := 0.0 // a line may by chance run along an edge, and is then neither
		for i := 1; i < len(line); i++ {
			for _, e := range lawn.edgeList() {
				if s, ok := (edge{line[i-1], line[i]}).alongside(e, 0); ok {
					onEdge += (s.to - s.from) * line[i].Minus(line[i-1]).Norm()
				}
			}
		}
		if got := totalLength(in) + totalLength(out) + onEdge; !near(got, line.planarLength(), 1e-6, 0) {
			t.Errorf("%v m inside, %v m outside, %v m in all", totalLength(in), totalLength(out), line.planarLength())
		}
		for _, part := range in {
			for i := 1; i < len(part); i++ {
				if !lawn.Contains(part[i-1].Toward(part[i], 0.5)) {
					t.Errorf("%v is not inside", part)
				}
			}
		}
	})
}

func TestInside(t *testing.T) {
	square := regionFrom(t, rectangle(0, 0, 10, 10))
	pierced := regionFrom(t, rectangle(0, 0, 10, 10), rectangle(4, 4, 6, 6))
	for _, tt := range []struct {
		name   string
		region Region
		line   Line
		want   []Line
	}{
		{"through", square, Line{{-5, 5}, {15, 5}}, []Line{{{0, 5}, {10, 5}}}},
		{"inside throughout", square, Line{{1, 1}, {9, 1}, {9, 9}}, []Line{{{1, 1}, {9, 1}, {9, 9}}}},
		{"through a hole", pierced, Line{{-5, 5}, {15, 5}}, []Line{{{0, 5}, {4, 5}}, {{6, 5}, {10, 5}}}},
		{"in, out and in", square, Line{{5, 5}, {5, 15}, {7, 15}, {7, 5}}, []Line{{{5, 5}, {5, 10}}, {{7, 10}, {7, 5}}}},
		{"along the edge", square, Line{{0, 0}, {10, 0}}, nil},
		{"along the edge of a hole", pierced, Line{{0, 4}, {10, 4}}, []Line{{{0, 4}, {4, 4}}, {{6, 4}, {10, 4}}}},
		{"past a corner of a hole", pierced, Line{{2, 6}, {4, 6}, {5, 8}}, []Line{{{2, 6}, {4, 6}, {5, 8}}}},
		{"clear of it", square, Line{{20, 0}, {20, 10}}, nil},
		{"a position", square, Line{{5, 5}}, nil},
		{"nothing", square, nil, nil},
		{"in nothing", Region{}, Line{{0, 0}, {10, 0}}, nil},
	} {
		t.Run(tt.name, func(t *testing.T) {
			if got := tt.region.Inside(tt.line); !slices.EqualFunc(got, tt.want, func(a, b Line) bool { return slices.Equal(a, b) }) {
				t.Errorf("inside: %v, want %v", got, tt.want)
			}
		})
	}
}

func TestContains(t *testing.T) {
	r := regionFrom(t, rectangle(0, 0, 10, 10), rectangle(4, 4, 6, 6))
	for _, tt := range []struct {
		at              XY
		contains, holds bool
	}{
		{XY{1, 1}, true, true}, {XY{5, 5}, false, false}, {XY{0, 5}, true, false}, {XY{10, 10}, true, false},
		{XY{4, 5}, true, false}, {XY{4, 4}, true, false}, {XY{5, 4}, true, false}, {XY{7, 4}, true, true},
		{XY{-1, 5}, false, false}, {XY{11, 10}, false, false}, {XY{5, 11}, false, false},
	} {
		if r.Contains(tt.at) != tt.contains || r.holds(tt.at) != tt.holds {
			t.Errorf("%v: contains %t, holds %t; want %t and %t", tt.at, r.Contains(tt.at), r.holds(tt.at), tt.contains, tt.holds)
		}
	}
}
