package material

import (
	"math"
	"regexp"
	"strings"
)

// Prose gives a text of published advice to those who read metric units: each
// figure in units of the US is converted and rounded to what advice bears, a
// whole degree, two figures of a rate, half a centimetre. US readers get the
// text as it is.
func (f Figures) Prose(text string) string {
	if !f.metric() {
		return text
	}
	for _, a := range advised {
		text = a.stated.ReplaceAllStringFunc(text, a.converted)
	}
	return text
}

// An advisedUnit is a unit of the US as advice states figures in it, and what
// metric readers get in its place.
type advisedUnit struct {
	stated *regexp.Regexp // number, joint and second number if there is one, what is weighed if anything
	metric func(largest float64) (unit string, of func(float64) float64)
}

// aNumber is a number as in 1,000 or 0.5 or 1/2.
const aNumber = `(\d{1,9}(?:,\d{3})*(?:\.\d{1,9})?(?:/[1-9]\d{0,8})?)`

func unitOfAdvice(pattern string, metric func(float64) (string, func(float64) float64)) advisedUnit {
	return advisedUnit{regexp.MustCompile(`\b` + aNumber + `(?:(-| to | and )` + aNumber + `)? ` + pattern + `\b`), metric}
}

// someInches is a number of inches; of three digits and more it is none, as in
// "811 in the US".
const someInches = `(\d{1,2}(?:\.\d{1,9})?(?:/[1-9]\d?)?)`

// by is a metric unit of which the US unit is so many.
func by(unit string, size float64, digits int) func(float64) (string, func(float64) float64) {
	return func(float64) (string, func(float64) float64) {
		return unit, func(v float64) float64 { return figures(v*size, digits) }
	}
}

var advised = []advisedUnit{
	unitOfAdvice(`lb( N| P2O5| K2O)? / 1000 ft2`, by("g$ / m2", 1/poundsPer1000, 2)),
	unitOfAdvice(`ft3() / 1000 ft2`, by("L / m2", 0.3048, 1)),
	unitOfAdvice(`cubic yards()`, by("cubic metres", 0.764554857984, 2)),
	unitOfAdvice(`ft2()`, by("m2", 0.09290304, 2)),
	unitOfAdvice(`holes a square foot()`, by("holes a square metre", 1/0.09290304, 2)),
	unitOfAdvice(`mph()`, by("km/h", 1.609344, 2)),
	unitOfAdvice(`F()`, func(float64) (string, func(float64) float64) {
		return "C", func(v float64) float64 { return math.Round((v - 32) / 1.8) }
	}),
	{regexp.MustCompile(`\b` + someInches + `(?:(-| to | and )` + someInches + `)? in()\b`), func(largest float64) (string, func(float64) float64) {
		const small = 2.0 // in: below it millimetres are told
		if largest < small {
			return "mm", func(v float64) float64 { return math.Round(v * 25.4) }
		}
		return "cm", func(v float64) float64 { return math.Round(v*5.08) / 2 }
	}},
}

// converted writes what was stated in the metric unit.
func (a advisedUnit) converted(stated string) string {
	m := a.stated.FindStringSubmatch(stated)
	first, second := numberIn(m[1]), numberIn(m[3])
	unit, of := a.metric(max(first, second))
	text := number(of(first))
	if m[3] != "" {
		text += m[2] + number(of(second))
	}
	return text + " " + strings.Replace(unit, "$", m[4], 1)
}

// numberIn is a number as advice writes it; 0 if there is none.
func numberIn(text string) float64 {
	if text == "" {
		return 0
	}
	return mustRatio(strings.ReplaceAll(text, ",", ""))
}
