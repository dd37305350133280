package render

import (
	"math"
	"testing"

	"github.com/tdewolff/canvas"
)

func TestWidth(t *testing.T) {
	// want: advance widths of the hmtx tables, 2048 units to the em.
	for _, tt := range []struct {
		face  Face
		text  string
		units float64
	}{
		{Regular, "0", 1139},
		{Regular, "1", 1139},
		{Bold, "8", 1139},
		{Regular, "ti", 579 + 505},
		{Bold, "ti", 682 + 592},
		{Italic, "ti", 601 + 527},
		{Medium, "ti", 630 + 548},
		{Regular, "", 0},
	} {
		want := tt.units / 2048 * 9 * 25.4 / 72
		if got := tt.face.width(tt.text, 9); math.Abs(got-want) > 1e-12 {
			t.Errorf("%s %q is %g mm wide, want %g", tt.face, tt.text, got, want)
		}
	}
}

// Canvas shapes text with a full layout engine; it must agree that nothing is
// kerned or tied.
func TestWidthIsThatOfShapedText(t *testing.T) {
	for f := range faces {
		font, err := canvas.LoadFont(cuts[f].file, 0, canvas.FontRegular)
		if err != nil {
			t.Fatal(err)
		}
		for _, text := range []string{"office field fl ffl", "AVATAR To. Wa, y.", "9,870 ft² ± 120", "Газон Αυλή", "1 in = 20 ft (1:240)"} {
			shaped := font.Face(9, canvas.Black).TextWidth(text)
			if got := Face(f).width(text, 9); math.Abs(got-shaped) > 1e-9 {
				t.Errorf("%s %q: %g mm, shaped %g mm", Face(f), text, got, shaped)
			}
		}
	}
}

func TestHeights(t *testing.T) {
	if got, want := Regular.capHeight(72), 1480.0/2048*25.4; math.Abs(got-want) > 1e-9 {
		t.Errorf("capitals of 72 pt are %g mm high, want %g", got, want)
	}
	if got, want := Regular.descent(72), 432.0/2048*25.4; math.Abs(got-want) > 1e-9 {
		t.Errorf("letters of 72 pt reach %g mm down, want %g", got, want)
	}
}
