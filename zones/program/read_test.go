package program

import (
	"fmt"
	"os"
	"slices"
	"strings"
	"testing"
	"time"

	"example.org/turfplat/zones/material"
)

// head is a right beginning of a program; what follows it begins on line 3.
const head = "program: p\nsteps:\n"

func TestFaults(t *testing.T) {
	for _, tt := range []struct{ name, text, want string }{
		{"empty", "", `p.yaml: is empty`},
		{"no mapping", "- a\n- b\n", `p.yaml: line 1, column 1: the program must hold keys, such as program: ...`},
		{"no steps", "program: p\n", `p.yaml: line 1, column 1: there is no key steps`},
		{"empty steps", "program: p\nsteps: []\n", `p.yaml: there are no steps`},
		{"not YAML", "program: p\nsteps: [a\n", `p.yaml: line 2: is not YAML: did not find expected ',' or ']'`},
		{"two documents", head + "  - {id: a, does: mow}\n---\nprogram: q\n", `p.yaml: holds more than one document`},
		{"alias", "program: &a p\nsteps:\n  - {id: *a, does: mow}\n", `p.yaml: line 1, column 10: anchors and aliases are not read`},
		{"unknown key", head + "  - id: a\n    does: mow\n    passess: 2\n", `p.yaml: line 5, column 5: "a": a step has no key "passess" (did you mean passes?)`},
		{"comma in braces", head + "  - id: a\n    does: spray\n    product: {active: 2,4-D}\n", `p.yaml: line 5, column 25: "a": product has no key "4-D" (in braces a comma ends a value: quote what holds one, as in "2,4-D")`},
		{"far key", head + "  - {id: a, does: mow, wobble_quickly: 2}\n", `p.yaml: line 3, column 24: "a": a step has no key "wobble_quickly" (its keys are id, title, does, `},
		{"key twice", head + "  - id: a\n    does: mow\n    does: core\n", `p.yaml: line 5, column 5: "a": key does stands twice in a step`},
		{"no value", head + "  - id: a\n    does:\n", `p.yaml: line 4, column 5: "a": does has no value`},
		{"no id", head + "  - does: mow\n", `p.yaml: line 3, column 5: the step has no id`},
		{"unknown job", head + "  - id: a\n    does: mows\n", `p.yaml: line 4, column 11: "a": does: "mows" is not known (did you mean mow?)`},
		{"id twice", head + "  - {id: a, does: mow}\n  - {id: a, does: mow}\n", `p.yaml: line 4, column 10: "a": id a stands twice`},
		{"no unit", head + "  - {id: a, does: spread, material: m, rate: 3}\n", `p.yaml: line 3, column 46: "a": rate: "3" has a number without a unit`},
		{"wrong kind of unit", head + "  - {id: a, does: spread, material: m, rate: 3 lb}\n", `p.yaml: line 3, column 46: "a": rate: "3 lb" is a weight, not a rate`},
		{"nothing", head + "  - {id: a, does: spread, material: m, rate: 0 lb / acre}\n", `"a": rate: "0 lb / acre" is a rate of nothing`},
		{"no material", head + "  - {id: a, does: spread, rate: 3 lb / 1000 ft2}\n", `p.yaml: line 3, column 33: "a": a rate needs its material`},
		{"rate of a mowing", head + "  - {id: a, does: mow, rate: 3 lb / 1000 ft2}\n", `p.yaml: line 3, column 30: "a": a step that does mow puts nothing down and has no rate`},
		{"no grade", head + "  - {id: a, does: spread, material: m, rate: 1 lb N / 1000 ft2}\n", `"m": there is no N in it (state the grade, such as 24-0-6, or choose another product)`},
		{"weight of a liquid", head + "  - {id: a, does: spray, material: m, rate: 3 oz / 1000 ft2, product: {pack: 1 gal}}\n", `"m": weights and volumes of one product cannot be mixed without its density`},
		{"grade", head + "  - {id: a, does: spread, product: {grade: 24-0}}\n", `grade: grade "24-0" is not understood`},
		{"window", head + "  - {id: a, does: mow, when: {window: 03-01}}\n", `window: "03-01" is no window such as 03-01..04-15`},
		{"window day", head + "  - {id: a, does: mow, when: {window: 02-30..04-15}}\n", `window: "02-30" is no day of the year`},
		{"days backwards", head + "  - {id: a, does: mow}\n  - {id: b, does: mow, when: {after: {step: a, days: 3..0}}}\n", `days: "3..0" runs backwards`},
		{"soil without a temperature", head + "  - {id: a, does: mow, when: {soil: {depth: 2 in}}}\n", `p.yaml: line 3, column 37: "a": soil needs one of at_least and at_most`},
		{"soil closed", head + "  - {id: a, does: mow, when: {soil: {at_least: 55 F, closes: 12 C}}}\n", `soil closes before it opens`},
		{"soil in inches", head + "  - {id: a, does: mow, when: {soil: {at_least: 2 in}}}\n", `at_least: "2 in" is a length, not a temperature`},
		{"degree days", head + "  - {id: a, does: mow, when: {degree_days: {base: 50 F}}}\n", `degree_days needs base and at_least`},
		{"after nothing", head + "  - {id: a, does: mow, when: {after: {days: 3}}}\n", `after needs the step that it comes after`},
		{"after a stranger", head + "  - {id: core, does: core}\n  - {id: b, does: mow, when: {after: {step: cor}}}\n", `p.yaml: line 4, column 30: "b": there is no other step cor (did you mean core?)`},
		{"before itself", head + "  - {id: b, does: mow, when: {before: b}}\n", `there is no other step b`},
		{"circle", head + "  - {id: a, does: mow, when: {after: {step: b}}}\n  - {id: b, does: mow, when: {after: {step: a}}}\n", `step a waits for itself by way of others`},
		{"height of a core", head + "  - {id: a, does: core, height: top}\n", `only a step that does mow has a height of cut`},
		{"tank without carrier", head + "  - {id: a, does: spray, tank: 4 gal}\n", `a tank needs the carrier that it holds`},
		{"product beyond its mix", head + "  - {id: a, does: spray, material: m, rate: 10 gal / 1000 ft2,\n     carrier: 2 gal / 1000 ft2}\n", `p.yaml: line 3, column 45: "a": there is more of the product than of the mix that holds it: 5 times the carrier (carrier is the finished mix, product included: check both for a slip of figure or unit)`},
		{"carrier by weight", head + "  - {id: a, does: spray, carrier: 4 lb / acre}\n", `a carrier is a liquid on an area`},
		{"override without reason", head + "  - {id: a, does: mow, override: {rule: n_once}}\n", `an override needs a rule and a reason`},
		{"unknown job, and what only some jobs have", head + "  - {id: a, does: spred, rate: 0.5 in, height: 3 in}\n", `p.yaml: line 3, column 19: "a": does: "spred" is not known (did you mean spread?)`},
		{"unknown rule", head + "  - {id: a, does: mow, override: {rule: n_one, reason: r}}\n", `rule: "n_one" is not known (did you mean n_once?)`},
		{"region", "program: p\nregion: Atlantis\nsteps:\n  - {id: a, does: mow}\n", `p.yaml: line 2, column 9: region: "Atlantis" has no law of fertilizers here (there are those of Maryland, New Jersey,`},
		{"day", head + "  - {id: a, does: mow, done: 04-15}\n", `done: "04-15" is no day such as 2026-04-15`},
		{"list for a value", head + "  - {id: a, does: [mow, core]}\n", `does must be one value, not a list or keys`},
		{"share", "program: p\ncarry: 150 %\nsteps:\n  - {id: a, does: mow}\n", `carry: "150 %" is more than the whole`},
	} {
		t.Run(tt.name, func(t *testing.T) {
			p, problems := Read(strings.NewReader(tt.text), "p.yaml")
			if p != nil {
				t.Fatal("is read")
			}
			var told []string
			for _, problem := range problems {
				text := problem.String()
				if problem.Hint != "" {
					text += " (" + problem.Hint + ")"
				}
				told = append(told, text)
			}
			if !strings.Contains(strings.Join(told, "\n"), tt.want) {
				t.Errorf("got  %s\nwant %s", strings.Join(told, "\n"), tt.want)
			}
		})
	}
}

// A window over the turn of the year is doubted if it leaves hardly a season.
func TestLongWindows(t *testing.T) {
	for _, tt := range []struct {
		window string
		days   string // "" = nothing is told
	}{
		{"05-31..05-01", "336 days"},
		{"05-31..02-28", ""}, // nine months
		{"05-31..03-01", "275 days"},
		{"12-01..02-28", ""},
		{"02-01..12-15", ""},
		{"01-01..12-31", ""},
	} {
		p, problems := Read(strings.NewReader(head+"  - {id: a, does: mow, when: {window: "+tt.window+"}}\n"), "p.yaml")
		switch {
		case p == nil, (len(problems) > 0) != (tt.days != ""):
			t.Errorf("%s: %v", tt.window, problems)
		case tt.days != "" && (!strings.Contains(problems[0].Text, tt.days) || problems[0].Place.Line != 3):
			t.Errorf("%s: %+v", tt.window, problems[0])
		}
	}
}

// All that is wrong is told at once.
func TestAllFaultsAreTold(t *testing.T) {
	_, problems := Read(strings.NewReader(head+"  - {id: a, dose: mow}\n  - {id: b, does: spread, rate: 3, passes: 0}\n"), "p.yaml")
	if len(problems) != 4 { // dose; no does; rate; passes
		t.Error(problems)
	}
}

func TestLargeFile(t *testing.T) {
	text := head + strings.Repeat("# nothing but remarks\n", mostBytes/20)
	if p, problems := Read(strings.NewReader(text), "p.yaml"); p != nil || len(problems) != 1 || problems[0].Code != "program_large" {
		t.Error(problems)
	}
}

func TestReadStep(t *testing.T) {
	p := read(t, `
program: trial
hemisphere: south
season: warm
carry: 10 %
steps:
  - id: feed
    does: spread
    material: 24-0-6
    rate: 0.75 lb N / 1000 ft2
    passes: 2
    every: 3.5 d
    product: {grade: 24-0-6, pack: [50 lb, 10 lb], slow: 50 %}
    water_in: {depth: 1/4 in, within: 2 d}
    keep_dry: 24 h
    blocks_seed: 14 weeks
    where: {season: warm, exposure: [full, part], zone: front, irrigated: true}
    when:
      window: 11-15..03-01
      soil: {at_most: 70 F, depth: 4 in, days: 3, statistic: min, closes: 60 F}
    done: 2026-04-03
`)
	s := p.Steps[0]
	if p.Hemisphere != South || p.Season != "warm" || p.Carry != 0.1 || s.Passes != 2 || s.Every != 84*time.Hour || len(s.Product.Packs) != 2 || s.Product.Slow != 0.5 {
		t.Errorf("%+v %+v", p, s)
	}
	if s.WaterIn.Within != 48*time.Hour || s.WaterIn.Depth != 0.0254/4 || s.KeepDry != 24*time.Hour || s.BlocksSeed != 14*7*24*time.Hour {
		t.Errorf("%+v", s)
	}
	if s.Rate.Of != material.Nitrogen || !*s.Where.Irrigated || s.Where.Zones[0] != "front" || isoDay(s.lastDone()) != "2026-04-03" {
		t.Errorf("%+v", s)
	}
	soil := s.When.Soil
	if *s.When.Window != (Window{MonthDay{11, 15}, MonthDay{3, 1}}) || soil.Days != 3 || !soil.Lowest || soil.AtLeast != nil || soil.AtMost.String() != "70 F" {
		t.Errorf("%+v %+v", s.When, soil)
	}
}

// Built-in programs hold no rate of a pesticide.
func TestBuiltInsHoldNoPesticideRate(t *testing.T) {
	for name := range builtIns {
		p, _ := BuiltIn(name)
		pesticides := 0
		for _, s := range p.Steps {
			if s.Use.pesticide() {
				pesticides++
				if s.Rate != nil || s.Product.Strength != (material.Strength{}) {
					t.Errorf("%s: step %s has a rate", name, s.ID)
				}
			}
		}
		if pesticides < 4 {
			t.Errorf("%s: only %d pesticides", name, pesticides)
		}
	}
	if p, ok := BuiltIn("lukewarm"); ok || p != nil {
		t.Error("there is a program lukewarm")
	}
}

func FuzzRead(f *testing.F) {
	for _, text := range builtIns {
		f.Add([]byte(text))
	}
	f.Add([]byte("program: &a p\nsteps: [*a, *a]\n"))
	f.Add([]byte(head + "  - {id: a, does: water, rate: 1/4 in, when: {after: {step: a, days: 0..3}}}\n"))
	f.Add([]byte("? [a, b]\n: !!binary x\n---\n"))
	f.Fuzz(func(t *testing.T, text []byte) {
		p, problems := Read(strings.NewReader(string(text)), "fuzz.yaml")
		if refused := slices.ContainsFunc(problems, isRefusal); (p == nil) != refused {
			t.Fatalf("program %v, problems %v", p, problems)
		}
		if p == nil {
			return
		}
		for _, at := range []Occasion{{Year: 2026}, {Today: date(2026, 5, 1)}} {
			if _, err := p.Plan(yard(), at); err != nil {
				t.Fatal(err)
			}
		}
	})
}

func ExampleRead() {
	f, err := os.Open("../../samples/alder-lane-season.yaml")
	if err != nil {
		fmt.Println(err)
		return
	}
	defer f.Close()
	p, problems := Read(f, "alder-lane-season.yaml")
	fmt.Println(p.Name, len(p.Steps) > 5, len(problems))
	// Output: alder-lane-season true 0
}
