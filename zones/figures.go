package zones

import (
	"math"
	"strconv"

	"example.org/turfplat/geo"
)

// Figures writes measures in the units that people read, areas rounded to what
// their error bears. Units are left to the reader's table head.
type Figures struct{ Units Units }

// Metric reports whether the units are metres.
func (f Figures) Metric() bool { return f.Units == Metric }

// Area writes an area whose 95 % interval is known.
func (f Figures) Area(m2, ci95M2 float64) string {
	return grouped(Bearable(f.inAreaUnit(m2), f.inAreaUnit(ci95M2)))
}

// Told writes an area with its unit, for a message: whole, or if it is small to
// a tenth.
func (f Figures) Told(a geo.Area) string {
	v, unit := f.inAreaUnit(float64(a)), "ft2"
	if f.Metric() {
		unit = "m2"
	}
	if math.Abs(v) < 10 {
		return strconv.FormatFloat(v, 'f', 1, 64) + " " + unit
	}
	return strconv.FormatFloat(v, 'f', 0, 64) + " " + unit
}

// PlusMinus writes half of a 95 % interval to a fifth of itself.
func (f Figures) PlusMinus(ci95M2 float64) string {
	ci := f.inAreaUnit(ci95M2)
	if ci > 0 && ci < 0.5 {
		return "<1"
	}
	return grouped(Bearable(ci, ci/5))
}

// Length writes a length in whole units.
func (f Figures) Length(m float64) string { return grouped(math.Round(f.InLengthUnit(m))) }

// ToldLength writes a length with its unit to a tenth, for a message.
func (f Figures) ToldLength(m float64) string {
	unit := " ft"
	if f.Metric() {
		unit = " m"
	}
	return strconv.FormatFloat(f.InLengthUnit(m), 'f', 1, 64) + unit
}

// InLengthUnit turns metres into the unit of length.
func (f Figures) InLengthUnit(m float64) float64 {
	if f.Metric() {
		return m
	}
	return geo.Length(m).Feet()
}

func (f Figures) inAreaUnit(m2 float64) float64 {
	if f.Metric() {
		return m2
	}
	return geo.Area(m2).SquareFeet()
}

// grouped writes a whole number with commas between thousands and a true
// minus sign.
func grouped(v float64) string {
	s := strconv.FormatFloat(math.Abs(v), 'f', 0, 64)
	negative := v < 0 && s != "0"
	for i := len(s) - 3; i > 0; i -= 3 {
		s = s[:i] + "," + s[i:]
	}
	if negative {
		return "−" + s
	}
	return s
}
