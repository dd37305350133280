package material

import (
	"regexp"
	"strconv"

	"example.org/turfplat/geo/ingest"
)

// A Grade is the guaranteed analysis of a fertilizer, by weight: nitrogen,
// phosphate and potash.
type Grade struct{ N, P2O5, K2O Share }

var gradeForm = regexp.MustCompile(`^ *(\d{1,2}(?:\.\d{1,3})?) *- *(\d{1,2}(?:\.\d{1,3})?) *- *(\d{1,2}(?:\.\d{1,3})?) *$`)

// ParseGrade reads a grade as a bag shows it, such as 24-0-6.
func ParseGrade(text string) (Grade, error) {
	const hint = "write percents of N, P2O5 and K2O, such as 24-0-6"
	m := gradeForm.FindStringSubmatch(text)
	if m == nil {
		return Grade{}, inputErrorf(hint, "grade %s is not understood", ingest.Quoted(text))
	}
	var parts [3]Share
	for i := range parts {
		percent, _ := strconv.ParseFloat(m[i+1], 64) // the form holds only such
		parts[i] = Share(percent / 100)
	}
	g := Grade{parts[0], parts[1], parts[2]}
	if g.N+g.P2O5+g.K2O > 1 {
		return Grade{}, inputErrorf(hint, "grade %s adds up to more than all of it", ingest.Quoted(text))
	}
	return g, nil
}

// String writes the grade as a bag shows it.
func (g Grade) String() string {
	percent := func(s Share) string { return number(100 * float64(s)) }
	return percent(g.N) + "-" + percent(g.P2O5) + "-" + percent(g.K2O)
}

// Standard atomic weights, abridged (IUPAC, 2021).
const (
	atomP = 30.973762
	atomK = 39.0983
	atomO = 15.999
)

// What part of its oxide a nutrient is.
const (
	PhosphorusInPhosphate = 2 * atomP / (2*atomP + 5*atomO)
	PotassiumInPotash     = 2 * atomK / (2*atomK + atomO)
)

// Of returns what part of the fertilizer a nutrient is.
func (g Grade) Of(s Substance) Share {
	switch s {
	case Nitrogen:
		return g.N
	case Phosphate:
		return g.P2O5
	case Phosphorus:
		return g.P2O5 * PhosphorusInPhosphate
	case Potash:
		return g.K2O
	case Potassium:
		return g.K2O * PotassiumInPotash
	}
	return 0
}
