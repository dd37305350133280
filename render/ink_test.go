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
		{Black, White, 21},
		{White, White, 1},
		{RGB(0x767676), White, 4.5422},
		{RGB(0x777777), White, 4.4781},
		{RGB(0x595959), White, 7.0047},
		{RGB(0xFF0000), White, 3.9985},
		{Orange, White, 2.2523},
		{SkyBlue, White, 2.3075},
		{BluishGreen, White, 3.4211},
		{Yellow, White, 1.3223},
		{Blue, White, 5.1854},
		{Vermillion, White, 3.8672},
		{ReddishPurple, White, 3.0610},
		{Black, Yellow, 15.8811},
		{Blue, Black, 4.0498},
	} {
		if got := Contrast(tt.a, tt.b); math.Abs(got-tt.want) > 5e-5 {
			t.Errorf("contrast of %s on %s is %.4f, want %.4f", tt.a, tt.b, got, tt.want)
		}
		if Contrast(tt.a, tt.b) != Contrast(tt.b, tt.a) {
			t.Errorf("contrast of %s and %s depends on their order", tt.a, tt.b)
		}
	}
}

func TestReadableOnTints(t *testing.T) {
	inks := []Ink{Black, Grey, Orange, SkyBlue, BluishGreen, Yellow, Blue, Vermillion, ReddishPurple}
	for _, ink := range inks {
		for _, ground := range inks {
			for _, strength := range []float64{0, 0.14, 0.3} {
				tint := ground.Tint(strength)
				if text := ink.ReadableOn(tint); Contrast(text, tint) < ReadableContrast {
					t.Errorf("%s on %s becomes %s: contrast %.2f", ink, tint, text, Contrast(text, tint))
				}
			}
		}
	}
	if got := Blue.ReadableOn(White); got != Blue {
		t.Errorf("blue reads well on white, but becomes %s", got)
	}
}

func TestInkMixes(t *testing.T) {
	for _, tt := range []struct {
		got  Ink
		want string
	}{
		{Blue.Tint(1), "#0072b2"},
		{Blue.Tint(0), "#ffffff"},
		{Blue.Shade(0), "#000000"},
		{RGB(0x204060).Shade(0.5), "#102030"},
		{Black.Tint(0.2), "#cccccc"},
		{Ink{}, "none"},
	} {
		if tt.got.String() != tt.want {
			t.Errorf("got %s, want %s", tt.got, tt.want)
		}
	}
}
