package material

import (
	"math"
	"strconv"

	"example.org/turfplat/zones"
)

// A Figure is an amount or a rate as people read and measure it out.
type Figure struct {
	Value    float64
	Unit     Unit
	decimals int
}

// String writes the figure with its unit, as in "1,558 gal".
func (f Figure) String() string { return f.Number() + " " + f.Unit.String() }

// Number writes the figure without its unit, with commas between thousands.
func (f Figure) Number() string {
	text := strconv.FormatFloat(f.Value, 'f', f.decimals, 64)
	whole := len(text)
	if f.decimals > 0 {
		whole -= f.decimals + 1
	}
	for i := whole - 3; i > 0; i -= 3 {
		text = text[:i] + "," + text[i:]
	}
	return text
}

// Figures writes amounts and rates in the units that people read, rounded to
// what they can weigh and measure out: by at most a twentieth, a tenth where
// only down, and mostly far less. Bags and other packs are never rounded; they
// are counted by [Buy].
type Figures struct{ Units zones.Units }

// Amount writes an amount of a product.
func (f Figures) Amount(a Amount) Figure {
	return rounded(roundingKind{f.Units, a.By.String()}, a.Size, math.Round)
}

// AtMost writes an amount of a product whose label sets a limit: rounded down.
func (f Figures) AtMost(a Amount) Figure {
	return rounded(roundingKind{f.Units, a.By.String()}, a.Size, down)
}

// down rounds down what is not within rounding of the arithmetic of the next
// step.
func down(steps float64) float64 {
	const rounding = 1e-9
	return math.Floor(steps * (1 + rounding))
}

// Mix writes a volume of water or of a finished mix.
func (f Figures) Mix(v Volume) Figure {
	return rounded(roundingKind{f.Units, "mix"}, float64(v), math.Round)
}

// Rate writes a rate of a product; of bulk, eighths of an inch as they are.
func (f Figures) Rate(r Rate) Figure {
	figure := rounded(roundingKind{f.Units, r.By.String() + " rate"}, r.PerM2, math.Round)
	if in := 12 * r.Depth().Feet(); r.By == Bulk && !f.metric() && isOddEighth(in) {
		figure.Value, figure.decimals = in, 3
	}
	return figure
}

// isOddEighth reports whether a length in inches is one of eighths that two decimals
// do not write.
func isOddEighth(in float64) bool {
	const rounding = 1e-9 // of the arithmetic
	n := math.Round(8 * in)
	return math.Abs(8*in-n) < rounding && math.Mod(n, 2) == 1
}

// MixRate writes a rate of a carrier.
func (f Figures) MixRate(r Rate) Figure {
	return rounded(roundingKind{f.Units, "mix rate"}, r.PerM2, math.Round)
}
