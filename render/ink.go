package render

import (
	"fmt"
	"math"
)

// Ink is an opaque colour. The zero value is no ink at all.
type Ink struct {
	R, G, B uint8
	laid    bool
}

// RGB returns the ink of a number such as 0x0072B2.
func RGB(hex uint32) Ink {
	return Ink{uint8(hex >> 16), uint8(hex >> 8), uint8(hex), true}
}

// none reports whether there is no ink.
func (k Ink) none() bool { return !k.laid }

// String gives the ink as in CSS, "#0072b2", or "none".
func (k Ink) String() string {
	if k.none() {
		return "none"
	}
	return fmt.Sprintf("#%02x%02x%02x", k.R, k.G, k.B)
}

// tint returns the ink thinned with white; strength is 1 for the full ink and
// 0 for white.
func (k Ink) tint(strength float64) Ink { return k.mixed(white, strength) }

// shade returns the ink darkened with black; strength is 1 for the full ink
// and 0 for black.
func (k Ink) shade(strength float64) Ink { return k.mixed(black, strength) }

func (k Ink) mixed(with Ink, share float64) Ink {
	mix := func(a, b uint8) uint8 {
		return uint8(math.Round(float64(a)*share + float64(b)*(1-share)))
	}
	return Ink{mix(k.R, with.R), mix(k.G, with.G), mix(k.B, with.B), true}
}

// readableContrast is the least contrast of text with its ground: WCAG 2.2,
// success criterion 1.4.3, level AA.
const readableContrast = 4.5

// readableOn returns the ink, darkened just as far as text on the given ground
// needs. On a dark ground it may end as black, which is then the best there is.
func (k Ink) readableOn(ground Ink) Ink {
	const step = 0.02
	for strength := 1.0; strength > 0; strength -= step {
		if shade := k.shade(strength); contrast(shade, ground) >= readableContrast {
			return shade
		}
	}
	return black
}

// contrast returns the contrast ratio of two inks, from 1 to 21 (WCAG 2.2).
func contrast(a, b Ink) float64 {
	const flare = 0.05
	la, lb := a.luminance(), b.luminance()
	return (max(la, lb) + flare) / (min(la, lb) + flare)
}

// luminance is the relative luminance of WCAG 2.2.
func (k Ink) luminance() float64 {
	linear := func(c uint8) float64 {
		v := float64(c) / 255
		if v <= 0.04045 {
			return v / 12.92
		}
		return math.Pow((v+0.055)/1.055, 2.4)
	}
	return 0.2126*linear(k.R) + 0.7152*linear(k.G) + 0.0722*linear(k.B)
}
