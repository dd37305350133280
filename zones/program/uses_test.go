package program

import (
	"slices"
	"strings"
	"testing"

	"example.org/turfplat/geo/ingest"
)

// A material is for the use that is stated, and for those of the active ingredients
// that it names; what states one and no use is a pesticide.
func TestUses(t *testing.T) {
	for _, tt := range []struct {
		step     string
		uses     []Use // of active ingredients
		labelled bool
		asked    bool // what it is for
	}{
		{`use: broadleaf, material: w`, nil, true, false},
		{`material: w, product: {active: "2,4-D"}`, []Use{Broadleaf}, true, false},
		{`material: w, product: {active: "Dicamba + 2,4-d amine"}`, []Use{Broadleaf}, true, false},
		{`material: prodiamine 65 WDG`, []Use{PreEmergent}, true, false},
		{`material: w, product: {active: "prodiamine, imidacloprid"}`, []Use{PreEmergent, Insecticide}, true, false},
		{`use: fertilizer, material: weed and feed, product: {active: "2,4-D", grade: 28-0-3}`, []Use{Broadleaf}, true, false},
		{`material: w, product: {active: "2,4-DX"}`, nil, true, true},
		{`material: w, product: {ai: 65 %}`, nil, true, true},
		{`material: w, rate: 0.5 lb ai / acre, product: {ai: 4 lb / gal}`, nil, true, true},
		{`use: wetting_agent, material: w, product: {ai: 65 %}`, nil, false, false},
		{`use: fertilizer, material: w, product: {active: iron}`, nil, false, false},
		{`material: lime, rate: 10 lb / 1000 ft2`, nil, false, false},
	} {
		p, problems := Read(strings.NewReader("program: p\nsteps:\n  - {id: a, does: spray, "+tt.step+"}\n"), "p.yaml")
		if p == nil {
			t.Errorf("%s: %v", tt.step, problems)
			continue
		}
		s := &p.Steps[0]
		if !slices.Equal(s.ofActives, tt.uses) || s.Labelled() != tt.labelled {
			t.Errorf("%s: for %v, labelled %v", tt.step, s.ofActives, s.Labelled())
		}
		if asked := len(problems) == 1 && problems[0].Severity == ingest.Note; asked != tt.asked || !asked && len(problems) > 0 {
			t.Errorf("%s: %v", tt.step, problems)
		}
	}
}

// Of a pesticide that only its active ingredient tells, the cautions of the label
// hold, and nothing is rounded above its rate.
func TestActiveIngredientAlone(t *testing.T) {
	const steps = "program: p\nsteps:\n  - {id: a, does: spray, USE material: w, rate: 2 lb ai / acre, product: {active: \"2,4-D\", ai: 4 lb / gal}, when: {window: 05-01..05-30}}\n"
	stated := lay(t, read(t, strings.Replace(steps, "USE", "use: broadleaf,", 1)), yard(), Occasion{Today: day(t, "2026-05-05")})
	told := lay(t, read(t, strings.Replace(steps, "USE ", "", 1)), yard(), Occasion{Today: day(t, "2026-05-05")})
	a, b := stepOf(t, stated, "a"), stepOf(t, told, "a")
	if !slices.Equal(a.Step.Minding(), b.Step.Minding()) || !slices.Equal(a.Step.Ticks(), b.Step.Ticks()) {
		t.Errorf("with use %q %q, without %q %q", a.Step.Minding(), a.Step.Ticks(), b.Step.Minding(), b.Step.Ticks())
	}
	f := told.figures()
	if x, y := a.Step.Measured(f, a.Totals[0].Amount), b.Step.Measured(f, b.Totals[0].Amount); x != y {
		t.Errorf("%s with use, %s without", x, y)
	}
	if a.Step.authority() != "the label" || b.Step.authority() != "the label" {
		t.Errorf("go by %s, %s", a.Step.authority(), b.Step.authority())
	}
}
