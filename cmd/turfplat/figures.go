package main

import (
	"fmt"
	"math"
	"strconv"

	"example.org/turfplat/geo"
	"example.org/turfplat/zones"
)

// figures print measures in the units of a site, areas rounded to what their
// error bears.
type figures struct{ units zones.Units }

func (f figures) areaUnit() string {
	if f.units == zones.Metric {
		return "m2"
	}
	return "ft2"
}

func (f figures) inUnit(m2 float64) float64 {
	if f.units == zones.Metric {
		return m2
	}
	return geo.Area(m2).SquareFeet()
}

// area prints an area whose 95 % interval is known.
func (f figures) area(m2, ci95M2 float64) string {
	return grouped(zones.Bearable(f.inUnit(m2), f.inUnit(ci95M2)))
}

func (f figures) plusMinus(ci95M2 float64) string {
	ci := f.inUnit(ci95M2)
	return grouped(zones.Bearable(ci, ci/5))
}

func (f figures) length(m float64) string {
	if f.units == zones.Metric {
		return grouped(math.Round(m)) + " m"
	}
	return grouped(math.Round(geo.Length(m).Feet())) + " ft"
}

func share(part, whole float64) string {
	if whole == 0 {
		return ""
	}
	return fmt.Sprintf("%.1f %%", 100*part/whole)
}

// grouped prints a whole number with commas between thousands.
func grouped(v float64) string {
	s := strconv.FormatFloat(math.Abs(v), 'f', 0, 64)
	for i := len(s) - 3; i > 0; i -= 3 {
		s = s[:i] + "," + s[i:]
	}
	if v <= -0.5 {
		s = "-" + s
	}
	return s
}
