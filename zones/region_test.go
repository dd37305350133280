package zones

import (
	"slices"
	"testing"
)

// Every region is found by what people write, and lies in regions that are in
// the table themselves.
func TestRegionsAreFound(t *testing.T) {
	for _, r := range regions {
		for _, written := range []string{r.name, " " + r.name + " ", r.code} {
			if found, known := FindRegion(written); written != "" && (!known || found != r.name) {
				t.Errorf("%q is %q", written, found)
			}
		}
		if r.within != "" && len(RegionsAround(r.name)) < 2 {
			t.Errorf("%s lies in %s, which is not in the table", r.name, r.within)
		}
	}
	if around := RegionsAround("Collier County"); !slices.Equal(around, []string{"Collier County", "Florida"}) {
		t.Errorf("around Collier County: %v", around)
	}
	if around := RegionsAround("Atlantis"); around != nil {
		t.Errorf("around Atlantis: %v", around)
	}
}

// A county without a rule of its own keeps that of its state.
func TestCountiesKeepTheRulesOfTheirState(t *testing.T) {
	defer func(rules []shoreRule) { setbackRules = rules }(setbackRules)
	setbackRules = []shoreRule{{near: "water", setback: 1}, {region: "Florida", near: "water", setback: 2}}
	if r := ruleOf("Collier County", "water"); r.setback != 2 {
		t.Errorf("the rule is %v m", r.setback)
	}
	if r := ruleOf("Maryland", "water"); r.setback != 1 {
		t.Errorf("without one it is %v m", r.setback)
	}
}
