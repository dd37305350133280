package material

import "slices"

// A Substance is what of a material a rate speaks of.
type Substance string

// The substances. Grades and laws of fertilizers give phosphorus and potassium
// as oxides; an active ingredient given as acid equivalent is never taken for
// the whole of it.
const (
	Itself         Substance = "" // the product as it is weighed or poured
	Nitrogen       Substance = "N"
	Phosphate      Substance = "P2O5"
	Potash         Substance = "K2O"
	Phosphorus     Substance = "P"
	Potassium      Substance = "K"
	Active         Substance = "ai"
	AcidEquivalent Substance = "ae"
	PureLiveSeed   Substance = "PLS"
)

var substances = []Substance{Nitrogen, Phosphate, Potash, Phosphorus, Potassium, Active, AcidEquivalent, PureLiveSeed}

func isSubstance(word string) bool { return slices.Contains(substances, Substance(word)) }

var substanceNames = map[Substance]string{
	Itself: "the product itself", Active: "active ingredient", AcidEquivalent: "acid equivalent", PureLiveSeed: "pure live seed",
}

// name is the substance in words.
func (s Substance) name() string {
	if name, named := substanceNames[s]; named {
		return name
	}
	return string(s)
}
