package material

import (
	_ "embed"
	"math"
	"slices"

	"example.org/turfplat/zones"
	"example.org/turfplat/zones/tables"
)

// roundingCSV holds a row a range of a kind of figure: the unit in which
// people read it, and the step to which they can measure it out.
//
//go:embed rounding.csv
var roundingCSV string

// A roundingStep holds from a size on, in SI units.
type roundingStep struct {
	from float64
	unit Unit
	step float64
}

type roundingKind struct {
	units  zones.Units
	figure string // such as weight, or mix rate
}

// roundingSteps are the steps of each kind of figure, from small to large.
var roundingSteps = mustReadRounding(roundingCSV)

func mustReadRounding(table string) map[roundingKind][]roundingStep {
	steps := make(map[roundingKind][]roundingStep)
	for _, row := range tables.BuiltIn("material: rounding.csv", table, "units", "figure", "from", "unit", "step", "source") {
		kind := roundingKind{zones.Units(row[0]), row[1]}
		step := roundingStep{mustParse(row[2]).SI(), mustParse("1 " + row[3]).Unit, mustRatio(row[4])}
		steps[kind] = append(steps[kind], step)
	}
	return steps
}

// coarsest is the largest step that a figure bears, as a part of itself: it is
// then off by at most half of that, which a calibrated spreader is too.
const coarsest = 0.1

// mostSteps in a unit are shown, whatever is smaller still.
const mostSteps = 1e12

// rounded rounds a figure of a kind, up and down or only down, to a step that
// people can measure out. A step too coarse for a small figure is divided by
// tens.
func rounded(kind roundingKind, si float64, round func(float64) float64) Figure {
	steps := roundingSteps[kind]
	const rounding = 1e-9 // of the arithmetic
	last := slices.IndexFunc(steps, func(s roundingStep) bool { return s.from > si*(1+rounding) })
	if last < 0 {
		last = len(steps)
	}
	s := steps[max(0, last-1)]
	value := s.unit.fromSI(si)
	per := math.Round(1 / s.step) // steps in a unit, if it is divided
	if s.step >= 1 {
		per = 1 / s.step
	}
	for value > 0 && 1/per > coarsest*value*(1+rounding) && per < mostSteps {
		per *= 10
	}
	return Figure{Value: round(value*per) / per, Unit: s.unit, decimals: decimalsOf(per)}
}

// decimalsOf returns the fewest decimals that show so many steps in a unit.
func decimalsOf(per float64) int {
	n := 0
	for scale := 1.0; n < 12 && scale/per != math.Floor(scale/per); scale *= 10 {
		n++
	}
	return n
}
