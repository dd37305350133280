package program

import (
	"errors"
	"math"
	"strings"
	"testing"
)

// A series is done every so often: a day notes one visit, and the next falls due
// so long after the last.
func TestSeriesUnderWay(t *testing.T) {
	for _, tt := range []struct {
		name, every, window, done, on string
		status                        Status
		from, to, why                 string
		visits                        int
		left                          float64 // visits that are bought for
	}{
		{"none done", "6 weeks", "03-01..06-30", "", "2026-03-02", Ready, "2026-03-01", "2026-06-30", "until", 3, 3},
		{"one", "6 weeks", "03-01..06-30", "2026-03-20", "2026-04-10", Waiting, "2026-05-01", "2026-06-30", "until 2026-05-01", 3, 2},
		{"one, and the next is due", "6 weeks", "03-01..06-30", "2026-03-20", "2026-05-10", Ready, "2026-05-01", "2026-06-30", "until 2026-06-30", 3, 2},
		{"two", "6 weeks", "03-01..06-30", "[2026-05-02, 2026-03-20]", "2026-05-10", Waiting, "2026-06-13", "2026-06-30", "until 2026-06-13", 3, 1},
		{"all", "6 weeks", "03-01..06-30", "[2026-03-20, 2026-05-02, 2026-06-13]", "2026-06-20", Skipped, "2026-06-13", "2026-06-13", "done 3 times, last on 2026-06-13; the next visit would fall due on 2026-07-25", 3, 0},
		{"its dates are over", "6 weeks", "03-01..06-30", "2026-03-20", "2026-07-02", Skipped, "2026-03-20", "2026-03-20", "done on 2026-03-20; its dates ended on 2026-06-30", 1, 0},
		{"last season", "6 weeks", "03-01..06-30", "2025-06-20", "2026-03-02", Ready, "2026-03-01", "2026-06-30", "until", 3, 3},
		{"mowing", "7 d", "04-01..10-31", "2026-04-10", "2026-05-10", Ready, "2026-04-17", "2026-10-31", "until", 26, 25},
		{"half weeks", "3.5 d", "04-01..04-30", "2026-04-10", "2026-04-11", Waiting, "2026-04-13", "2026-04-30", "until 2026-04-13", 6, 5},
		{"last season, its dates over", "6 weeks", "03-01..06-30", "2025-06-20", "2026-07-02", Skipped, "2026-03-01", "2026-06-30", "its dates ended on 2026-06-30", 3, 0},
		{"no series, last season", "", "03-01..06-30", "2025-06-20", "2026-03-02", Ready, "2026-03-01", "2026-06-30", "until", 1, 1},
		{"no series, over the new year", "", "11-15..02-15", "2026-02-20", "2026-12-01", Ready, "2026-11-15", "2027-02-15", "until", 1, 1},
		{"no series, last season, its dates over", "", "03-01..06-30", "2025-06-20", "2026-07-02", Skipped, "2026-03-01", "2026-06-30", "its dates ended on 2026-06-30", 1, 0},
		{"no series", "", "03-01..06-30", "2026-03-20", "2026-05-10", Skipped, "2026-03-20", "2026-03-20", "done on 2026-03-20", 1, 0},
	} {
		t.Run(tt.name, func(t *testing.T) {
			text := "program: p\nsteps:\n  - {id: a, does: spread, material: feed, rate: 0.1 lb N / 1000 ft2, product: {grade: 25-0-10}, where: {zone: front}, when: {window: " + tt.window + "}"
			if tt.every != "" {
				text += ", every: " + tt.every
			}
			if tt.done != "" {
				text += ", done: " + tt.done
			}
			plan := lay(t, read(t, text+"}\n"), yard(), Occasion{Today: day(t, tt.on)})
			s := stepOf(t, plan, "a")
			if s.Status != tt.status || isoDay(s.From) != tt.from || isoDay(s.To) != tt.to || !strings.HasPrefix(s.Why, tt.why) {
				t.Errorf("%s %s, from %s to %s", s.Status, s.Why, isoDay(s.From), isoDay(s.To))
			}
			if s.Visits() != tt.visits {
				t.Errorf("%d visits, want %d", s.Visits(), tt.visits)
			}
			// 0.4 lb of 25-0-10 / 1000 ft2 a visit, on 250 m2 = 2,691 ft2: 1.076 lb = 0.4882 kg
			const visit = 0.4 * 0.45359237 * 250 / 92.90304
			near := func(got, visits float64) bool { return math.Abs(got-visits*visit) < 1e-9 }
			laid := 0.0 // visits of which something is, or was, laid in the season
			if len(s.Totals) > 0 {
				laid = float64(tt.visits)
				if got := s.OfVisit(s.Totals[0].Amount).Size; !near(got, 1) {
					t.Errorf("%.4f kg a visit, want %.4f", got, visit)
				}
				if got := s.Totals[0].Amount.Size; !near(got, laid) {
					t.Errorf("%.4f kg in the season, want %d times %.4f", got, tt.visits, visit)
				}
			}
			if over := strings.HasPrefix(tt.why, "its dates ended"); over == (laid > 0) {
				t.Errorf("%g visits are laid", laid)
			}
			bought := 0.0
			for _, b := range plan.Purchases {
				bought += b.Needed.Size
			}
			if !near(bought, tt.left) {
				t.Errorf("%.4f kg to buy, want %g times %.4f", bought, tt.left, visit)
			}
			perVisit := 0.1 * 0.45359237 / 92.90304
			for _, f := range plan.Feeds {
				if want := laid * perVisit; f.ID == "zone/front" && math.Abs(f.N-want) > 1e-12 {
					t.Errorf("%g kg N / m2, want %g", f.N, want)
				}
			}
		})
	}
}

// What comes after a series counts from the last visit that was done, or that may
// still be.
func TestAfterASeries(t *testing.T) {
	const pre = "program: p\nsteps:\n  - {id: pre, does: spread, use: pre_emergent, material: pre, every: 6 weeks, when: {window: 03-01..05-15}, done: DONE}\n"
	const seed = "  - {id: next, does: seed, material: seed, when: {window: 06-01..11-30}}\n"
	const mow = "program: p\nsteps:\n  - {id: pre, does: mow, every: 7 d, when: {window: 04-01..10-31}, done: DONE}\n"
	for _, tt := range []struct {
		name, text, done, on string
		from                 string
	}{
		// 16 weeks after the second dose, which may come until 15 May
		{"seed, the second to come", pre + seed, "2026-03-10", "2026-04-20", "2026-09-04"},
		{"seed, both done", pre + seed, "[2026-03-10, 2026-04-21]", "2026-05-10", "2026-08-11"},
		{"seed, the second left out", pre + seed, "2026-03-10", "2026-05-20", "2026-06-30"},
		{"seed before the next dose", pre + "  - {id: next, does: seed, material: seed, when: {window: 03-15..07-15}}\n", "2026-03-10", "2026-05-20", "2026-06-30"},
		{"within days of the last", mow + "  - {id: next, does: rake, when: {after: {step: pre, days: 2..4}}}\n", "[2026-04-03, 2026-04-10]", "2026-04-11", "2026-04-12"},
		{"within days of the next", mow + "  - {id: next, does: rake, when: {after: {step: pre, days: 2..4}}}\n", "[2026-04-03, 2026-04-10]", "2026-04-16", "2026-04-19"},
		{"two mowings counted", mow + "  - {id: next, does: core, when: {window: 04-01..10-31, mowings: 2}}\n", "[2026-04-03, 2026-04-11]", "2026-04-12", "2026-04-11"},
		{"one of three mowings to come", mow + "  - {id: next, does: core, when: {window: 04-01..10-31, mowings: 3}}\n", "[2026-04-03, 2026-04-11]", "2026-04-12", "2026-04-25"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			plan := lay(t, read(t, strings.Replace(tt.text, "DONE", tt.done, 1)), yard(), Occasion{Today: day(t, tt.on)})
			s := stepOf(t, plan, "next")
			if got := isoDay(s.From); got != tt.from {
				t.Errorf("from %s, want %s: %s %s, %+v", got, tt.from, s.Status, s.Why, s.Reasons)
			}
			blocks := 0
			for _, v := range s.Reasons {
				if v.Rule == "preemergent_seed" {
					blocks++
				}
			}
			if blocks > 1 {
				t.Errorf("the wait for seed is told %d times", blocks)
			}
		})
	}
}

// What was done in a season before does not end this season's step, is not counted
// into its nutrients and lets nothing follow; what it keeps off waits for it all the
// same.
func TestDoneInAnotherSeason(t *testing.T) {
	const steps = `program: p
steps:
  - {id: pre, does: spread, use: pre_emergent, material: pre, blocks_seed: 16 weeks, DONE, when: {window: 11-01..11-30}}
  - {id: water, does: water, when: {after: {step: pre, days: 0..3}}}
  - {id: seed, does: seed, material: seed, when: {window: 02-01..03-31}}
`
	for _, tt := range []struct {
		name, done, on string
		pre, water     Status
		seed           string
	}{
		{"not done", "passes: 1", "2027-02-10", Waiting, Waiting, "2027-02-01"},
		{"last season", "done: 2026-11-20", "2027-02-10", Waiting, Waiting, "2027-03-12"}, // 16 weeks later
		{"the one before", "done: 2025-11-20", "2027-02-10", Waiting, Waiting, "2027-02-01"},
		{"this season", "done: 2027-11-05", "2027-11-06", Skipped, Ready, "2027-02-01"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			plan := lay(t, read(t, strings.Replace(steps, "DONE", tt.done, 1)), yard(), Occasion{Today: day(t, tt.on)})
			pre, water, seed := stepOf(t, plan, "pre"), stepOf(t, plan, "water"), stepOf(t, plan, "seed")
			if pre.Status != tt.pre || water.Status != tt.water || isoDay(seed.From) != tt.seed {
				t.Errorf("pre %s %s, water %s %s, seed from %s", pre.Status, pre.Why, water.Status, water.Why, isoDay(seed.From))
			}
		})
	}
}

// A window over the new year is open until it ends, on either hemisphere, and stands
// before the steps of the new season; a stated year has its own.
func TestWindowOverTheNewYear(t *testing.T) {
	const steps = `program: p
steps:
  - {id: pre, does: spread, use: pre_emergent, material: pre, blocks_seed: 16 weeks, when: {window: 02-01..04-30}}
  - {id: seed, does: seed, material: seed, when: {window: 11-15..02-15}DONE}
`
	for _, tt := range []struct {
		name, done, on string
		south          bool
		year           int
		status         Status
		from, to       string
	}{
		{"before the new year", "", "2026-12-01", false, 0, Ready, "2026-11-15", "2027-02-15"},
		{"after it", "", "2027-01-10", false, 0, Ready, "2026-11-15", "2027-02-15"},
		{"over", "", "2027-02-16", false, 0, Waiting, "2027-11-15", "2028-02-15"},
		{"done in it", ", done: 2026-12-20", "2027-01-10", false, 0, Skipped, "2026-12-20", "2026-12-20"},
		{"done a year before", ", done: 2025-12-20", "2027-01-10", false, 0, Ready, "2026-11-15", "2027-02-15"},
		{"done and over", ", done: 2027-01-20", "2027-02-16", false, 0, Waiting, "2027-11-15", "2028-02-15"},
		{"the year stated", "", "2027-01-10", false, 2027, Waiting, "2027-11-15", "2028-02-15"},
		{"in the south", "", "2026-07-10", true, 0, Ready, "2026-05-15", "2026-08-15"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			on := yard()
			if tt.south {
				on.Latitude = -on.Latitude
			}
			plan := lay(t, read(t, strings.Replace(steps, "DONE", tt.done, 1)), on, Occasion{Year: tt.year, Today: day(t, tt.on)})
			if s := stepOf(t, plan, "seed"); s.Status != tt.status || isoDay(s.From) != tt.from || isoDay(s.To) != tt.to {
				t.Errorf("%s %s, from %s to %s", s.Status, s.Why, isoDay(s.From), isoDay(s.To))
			}
		})
	}
}

// A day after that of the plan is a slip, and would lift what waits for the step.
func TestDoneAfterTheDay(t *testing.T) {
	p := read(t, "program: p\nsteps:\n  - {id: a, does: core, done: 2027-06-20}\n  - {id: b, does: mow, every: 7 d, done: [2026-08-01, 2026-08-06]}\n  - {id: c, does: rake, done: 2026-08-05}\n")
	_, err := p.Plan(yard(), Occasion{Today: day(t, "2026-08-05")})
	var refusal *Refusal
	if !errors.As(err, &refusal) || len(refusal.Problems) != 2 {
		t.Fatal(err)
	}
	if first := refusal.Problems[0]; first.Text != "done on 2027-06-20, after 2026-08-05, the day of the plan" || first.Place.Line != 3 {
		t.Errorf("%+v", first)
	}
	if _, err := p.Plan(yard(), Occasion{Today: day(t, "2027-06-20")}); err != nil {
		t.Error(err)
	}
}

func TestDoneRefused(t *testing.T) {
	for text, want := range map[string]string{
		"does: core, done: [2026-03-01, 2026-03-08]":                        "it was done 2 times, and has no every",
		"does: mow, every: 7 d, done: [2026-03-08, 2026-03-01, 2026-03-08]": "2026-03-08 stands twice",
		"does: mow, every: 7 d, done: [2026-03-08, soon]":                   `done: "soon" is no day such as 2026-04-15`,
	} {
		_, problems := Read(strings.NewReader("program: p\nsteps:\n  - {id: a, "+text+"}\n"), "p.yaml")
		if len(problems) != 1 || problems[0].Text != want {
			t.Errorf("%s: %v", text, problems)
		}
	}
}
