package render

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestWrapped(t *testing.T) {
	for _, tt := range []struct {
		name, text string
		width      float64
		want       []string
	}{
		{"fits", "Back bed", 100, []string{"Back bed"}},
		{"breaks at a space", "Back bed by the fence", 20, []string{"Back bed by", "the fence"}},
		{"line feed", "Gate: north\nDog: yes", 100, []string{"Gate: north", "Dog: yes"}},
		{"empty line", "a\n\nb", 100, []string{"a", "", "b"}},
		{"word too long", "iiiiiiiiii by", 4, []string{"iiiii", "iiiii", "by"}},
		{"no width at all", "abc", 0, []string{"a", "b", "c"}},
		{"no break between number and unit", "slope 8\u00a0% here", 12, []string{"slope", "8\u00a0%", "here"}},
		{"nothing", "", 10, []string{""}},
	} {
		if got := wrapped(tt.text, Regular, 9, tt.width); strings.Join(got, "|") != strings.Join(tt.want, "|") {
			t.Errorf("%s: %q, want %q", tt.name, got, tt.want)
		}
	}
}

func TestWrappedLinesFitAndLoseNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringMatching(`[a-zA-Z0-9,. ]{0,80}`).Draw(t, "text")
		width := rapid.Float64Range(4, 60).Draw(t, "width")
		lines := wrapped(text, Medium, 9, width)
		for _, line := range lines {
			if Medium.width(line, 9) > width {
				t.Fatalf("%q is wider than %g mm", line, width)
			}
		}
		squeeze := func(s string) string { return strings.ReplaceAll(s, " ", "") }
		if squeeze(strings.Join(lines, "")) != squeeze(text) {
			t.Fatalf("%q became %q", text, lines)
		}
	})
}

func TestShortened(t *testing.T) {
	for _, tt := range []struct {
		text  string
		width float64
		want  string
	}{
		{"Side strip", 50, "Side strip"},
		{"Side strip", 12.5, "Side s…"},
		{"Side strip", 11, "Side…"},
		{"Side strip", 0, "…"},
	} {
		if got := shortened(tt.text, Regular, 9, tt.width); got != tt.want {
			t.Errorf("%q in %g mm is %q, want %q", tt.text, tt.width, got, tt.want)
		}
	}
}

func TestStackFlowsDownwards(t *testing.T) {
	one := paragraph{text: "One", size: 10, ink: black}
	two := paragraph{text: "Two\nthree", size: 10, ink: black, anchor: End}
	elements, height := stack(Point{20, 100}, 50, 3, one, two)
	if want := 3*lineHeight(10) + 3; math.Abs(height-want) > 1e-9 {
		t.Errorf("three lines and a gap are %g mm high, want %g", height, want)
	}
	first, second := elements[0].(Text), elements[1].(Text)
	if first.At.X != 20 || second.At.X != 70 || second.Anchor != End {
		t.Errorf("texts stand at %v and %v", first.At, second.At)
	}
	if top, cap := 100-first.At.Y, Regular.capHeight(10); math.Abs(top-cap/2-lineHeight(10)/2) > 1e-9 {
		t.Errorf("the first base line is %g mm down", top)
	}
	if down := first.At.Y - second.At.Y; math.Abs(down-lineHeight(10)-3) > 1e-9 {
		t.Errorf("the second base line is %g mm below the first", down)
	}
}
