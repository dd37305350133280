package program

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"
)

// spoils are the pairs of steps of which one spoils the other on one day.
var spoils = []struct {
	what       string
	one, other func(*Step) bool
}{
	{"seed and a pre-emergent", isSeed, isPreEmergent},
	{"seed and a broadleaf spray", isSeed, using(Broadleaf)},
	{"a fungicide and what lives", using(Fungicide), using(Microbial)},
	{"what stays dry and what is watered", isFoliar, isWatered},
}

// jobsApart are steps such as meet in a season, of which some spoil others.
var jobsApart = []string{
	"does: seed, material: seed",
	"does: spread, use: pre_emergent, material: granules",
	"does: spray, use: broadleaf, material: herbicide, keep_dry: 24 h",
	"does: spray, use: fungicide, material: fungicide",
	"does: spray, use: microbial, material: mycorrhiza, water_in: {depth: 0.1 in, within: 1 d}",
	"does: spread, material: feed, rate: 0.5 lb N / 1000 ft2, product: {grade: 25-0-0}, water_in: {depth: 0.25 in, within: 1 d}",
	"does: water, rate: 0.25 in",
}

// drawApart draws a program of which nothing was done after today.
func drawApart(t *rapid.T, today time.Time) string {
	var text strings.Builder
	text.WriteString(head)
	for i := range rapid.IntRange(2, 4).Draw(t, "steps") {
		from := date(2026, 4, 1).AddDate(0, 0, rapid.IntRange(0, 60).Draw(t, "from"))
		to := from.AddDate(0, 0, rapid.IntRange(0, 60).Draw(t, "days"))
		fmt.Fprintf(&text, "  - {id: s%d, %s, where: {zone: [%s]}, when: {window: %s..%s}", i, rapid.SampledFrom(jobsApart).Draw(t, "job"),
			rapid.SampledFrom([]string{"front", "back", "front, back"}).Draw(t, "zones"), from.Format("01-02"), to.Format("01-02"))
		if rapid.IntRange(0, 3).Draw(t, "done") == 0 {
			fmt.Fprintf(&text, ", done: %s", isoDay(earlier(from.AddDate(0, 0, rapid.IntRange(0, 20).Draw(t, "late")), today)))
		}
		text.WriteString("}\n")
	}
	return text.String()
}

// No two steps are ready on one zone and one day of which one spoils the other.
func TestReadyStepsSpoilNoOther(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		today := date(2026, time.Month(rapid.IntRange(4, 7).Draw(t, "month")), rapid.IntRange(1, 30).Draw(t, "day"))
		text := drawApart(t, today)
		p, problems := Read(strings.NewReader(text), "season.yaml")
		if len(problems) > 0 {
			t.Fatal(problems)
		}
		plan, err := p.Plan(yard(), Occasion{Today: today})
		if err != nil {
			t.Fatal(err)
		}
		for i := range plan.Steps {
			for j := range plan.Steps {
				a, b := &plan.Steps[i], &plan.Steps[j]
				if i == j || a.Status != Ready || b.Status != Ready {
					continue
				}
				for _, pair := range spoils {
					if pair.one(a.Step) && pair.other(b.Step) && meetNow(plan, a, b) {
						t.Fatalf("%s are both ready on %s: %s and %s\n%s", pair.what, isoDay(today), a.Step.ID, b.Step.ID, text)
					}
				}
			}
		}
	})
}

// meetNow reports whether two steps that are ready can be worked on one zone.
func meetNow(p *Plan, a, b *StepPlan) bool {
	return slices.ContainsFunc(p.Now(a), func(z ZonePlan) bool {
		return slices.ContainsFunc(p.Now(b), func(o ZonePlan) bool { return o.ID == z.ID })
	})
}
