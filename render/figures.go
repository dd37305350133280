package render

import (
	"fmt"
	"math"
	"strconv"

	"example.org/turfplat/zones"
)

// figures writes measures with the signs of units that a sheet can show.
type figures struct{ zones.Figures }

func (f figures) areaUnit() string {
	if f.Metric() {
		return "m²"
	}
	return "ft²"
}

func (f figures) lengthUnit() string {
	if f.Metric() {
		return "m"
	}
	return "ft"
}

// lengthText writes a length with its unit.
func (f figures) lengthText(m float64) string { return f.Length(m) + " " + f.lengthUnit() }

// shortLength writes a length of which less than the unit matters, with its
// unit.
func (f figures) shortLength(m float64) string {
	return strconv.FormatFloat(math.Round(10*f.InLengthUnit(m))/10, 'f', -1, 64) + " " + f.lengthUnit()
}

// areaInWords writes an area with its error and unit.
func (f figures) areaInWords(m2, ci95M2 float64) string {
	return f.Area(m2, ci95M2) + " ± " + f.PlusMinus(ci95M2) + " " + f.areaUnit()
}

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
