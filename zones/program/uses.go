package program

import (
	_ "embed"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"example.org/turfplat/zones/material"
)

var (
	// activesCSV holds what active ingredients of pesticides are for, by their common
	// names.
	//
	//go:embed actives.csv
	activesCSV string

	actives = mustRows("actives.csv", activesCSV, "active", "use", "source")
)

// usesOfActives are what the active ingredients are for that a step's product or the
// material itself names. A feed with a weed killer in it is for both.
func usesOfActives(s *Step) []Use {
	var all []Use
	for _, row := range actives {
		u := Use(row[1])
		if !slices.Contains(all, u) && (namesActive(s.Product.Active, row[0]) || namesActive(s.Material, row[0])) {
			all = append(all, u)
		}
	}
	return all
}

// isFor reports whether a step's material is for a use: the one that is stated, or
// one of an active ingredient that it names.
func (s *Step) isFor(u Use) bool { return s.Use == u || slices.Contains(s.ofActives, u) }

// Labelled reports whether the step's material is a pesticide, whose label sets
// limits that nothing may be rounded above. One whose active ingredient is stated,
// and no use, is taken for one.
func (s *Step) Labelled() bool {
	return s.Use.pesticide() || slices.ContainsFunc(s.ofActives, Use.pesticide) || s.forUnknown()
}

// forUnknown reports whether the file states an active ingredient and nothing tells
// what it is for.
func (s *Step) forUnknown() bool { return s.Use == "" && len(s.ofActives) == 0 && s.statesActive() }

// statesActive reports whether the file speaks of an active ingredient: by name, by
// its strength or in the rate.
func (s *Step) statesActive() bool {
	return s.Product.Active != "" || s.Product.Strength != (material.Strength{}) ||
		s.Rate != nil && (s.Rate.Of == material.Active || s.Rate.Of == material.AcidEquivalent)
}

// namesActive reports whether a text names an active ingredient, alone or among
// others, in whatever form: "2,4-D amine + dicamba" names two, and not 2,4-DP.
func namesActive(text, active string) bool {
	text, active = strings.ToLower(text), strings.ToLower(active)
	for at := 0; ; {
		i := strings.Index(text[at:], active)
		if i < 0 {
			return false
		}
		before, _ := utf8.DecodeLastRuneInString(text[:at+i])
		after, _ := utf8.DecodeRuneInString(text[at+i+len(active):])
		if !inWord(before) && !inWord(after) {
			return true
		}
		at += i + len(active)
	}
}

func inWord(r rune) bool { return unicode.IsLetter(r) || unicode.IsDigit(r) }
