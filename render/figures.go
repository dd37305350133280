package render

import (
	"fmt"
	"math"
	"strconv"

	"example.org/turfplat/geo"
	"example.org/turfplat/zones"
)

// figures writes measures in the units that people read, areas rounded to what
// their error bears.
type figures struct{ units zones.Units }

func (f figures) metric() bool { return f.units == zones.Metric }

func (f figures) areaUnit() string {
	if f.metric() {
		return "m²"
	}
	return "ft²"
}

func (f figures) lengthUnit() string {
	if f.metric() {
		return "m"
	}
	return "ft"
}

func (f figures) inAreaUnit(m2 float64) float64 {
	if f.metric() {
		return m2
	}
	return geo.Area(m2).SquareFeet()
}

func (f figures) inLengthUnit(m float64) float64 {
	if f.metric() {
		return m
	}
	return geo.Length(m).Feet()
}

// area writes an area, without its unit.
func (f figures) area(m2, ci95M2 float64) string {
	return grouped(zones.Bearable(f.inAreaUnit(m2), f.inAreaUnit(ci95M2)))
}

// plusMinus writes half of a 95 % interval to a fifth of itself, without its
// unit.
func (f figures) plusMinus(ci95M2 float64) string {
	const fifth = 1. / 5
	ci := f.inAreaUnit(ci95M2)
	if ci > 0 && ci < 0.5 {
		return "<1"
	}
	return grouped(zones.Bearable(ci, ci*fifth))
}

// areaInWords writes an area with its error and unit.
func (f figures) areaInWords(m2, ci95M2 float64) string {
	return f.area(m2, ci95M2) + " ± " + f.plusMinus(ci95M2) + " " + f.areaUnit()
}

// length writes a whole number of units, without the unit.
func (f figures) length(m float64) string { return grouped(math.Round(f.inLengthUnit(m))) }

// share writes a part as whole percents of its whole; what is more than the
// whole has no share.
func share(part, whole float64) string {
	percent := 100 * part / whole
	switch {
	case !(whole > 0) || percent > 100.5:
		return ""
	case part > 0 && percent < 1:
		return "<1 %"
	}
	return fmt.Sprintf("%.0f %%", percent)
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

// degreesText writes a position as "40.00025° N, 98.49985° W", to about a
// metre.
func degreesText(lon, lat float64) string {
	const places = 5
	side := func(v float64, positive, negative string) string {
		if v < 0 {
			positive = negative
		}
		return strconv.FormatFloat(math.Abs(v), 'f', places, 64) + "° " + positive
	}
	return side(lat, "N", "S") + ", " + side(lon, "E", "W")
}
