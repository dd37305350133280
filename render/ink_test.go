package render

import (
	"math"
	"testing"
)

func TestContrast(t *testing.T) {
	// want: relative luminance of WCAG 2.2 worked out apart from this code.
	for _, tt := range []struct {
		a, b Ink
		want float64
	}{
		{black, white, 21},
		{white, white, 1},
		{RGB(0x767676), white, 4.5422},
		{RGB(0x777777), white, 4.4781},
		{RGB(0x595959), white, 7.0047},
		{RGB(0xFF0000), white, 3.9985},
		{orange, white, 2.2523},
		{skyBlue, white, 2.3075},
		{bluishGreen, white, 3.4211},
		{yellow, white, 1.3223},
		{blue, white, 5.1854},
		{vermillion, white, 3.8672},
		{reddishPurple, white, 3.0610},
		{black, yellow, 15.8811},
		{blue, black, 4.0498},
	} {
		if got := contrast(tt.a, tt.b); math.Abs(got-tt.want) > 5e-5 {
			t.Errorf("contrast of %s on %s is %.4f, want %.4f", tt.a, tt.b, got, tt.want)
		}
		if contrast(tt.a, tt.b) != contrast(tt.b, tt.a) {
			t.Errorf("contrast of %s and %s depends on their order", tt.a, tt.b)
		}
	}
}

func TestReadableOnTints(t *testing.T) {
	inks := []Ink{black, grey, orange, skyBlue, bluishGreen, yellow, blue, vermillion, reddishPurple}
	for _, ink := range inks {
		for _, ground := range inks {
			for _, strength := range []float64{0, 0.14, 0.3} {
				tint := ground.tint(strength)
				if text := ink.readableOn(tint); contrast(text, tint) < readableContrast {
					t.Errorf("%s on %s becomes %s: contrast %.2f", ink, tint, text, contrast(text, tint))
				}
			}
		}
	}
	if got := blue.readableOn(white); got != blue {
		t.Errorf("blue reads well on white, but becomes %s", got)
	}
}

func TestInkMixes(t *testing.T) {
	for _, tt := range []struct {
		got  Ink
		want string
	}{
		{blue.tint(1), "#0072b2"},
		{blue.tint(0), "#ffffff"},
		{blue.shade(0), "#000000"},
		{RGB(0x204060).shade(0.5), "#102030"},
		{black.tint(0.2), "#cccccc"},
		{Ink{}, "none"},
	} {
		if tt.got.String() != tt.want {
			t.Errorf("got %s, want %s", tt.got, tt.want)
		}
	}
}
