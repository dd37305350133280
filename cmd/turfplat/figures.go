package main

import (
	"fmt"

	"example.org/turfplat/zones"
)

// figures print measures on a terminal.
type figures struct{ zones.Figures }

func figuresIn(units zones.Units) figures { return figures{zones.Figures{Units: units}} }

func (f figures) areaUnit() string {
	if f.Metric() {
		return "m2"
	}
	return "ft2"
}

// length prints a length with its unit.
func (f figures) length(m float64) string {
	if f.Metric() {
		return f.Length(m) + " m"
	}
	return f.Length(m) + " ft"
}

// shortLength prints a length of which less than the unit matters.
func (f figures) shortLength(m float64) string {
	if f.Metric() {
		return fmt.Sprintf("%.2f m", m)
	}
	return fmt.Sprintf("%.1f ft", f.InLengthUnit(m))
}

func share(part, whole float64) string {
	if whole == 0 {
		return ""
	}
	return fmt.Sprintf("%.1f %%", 100*part/whole)
}
