package program

import (
	"math"
	"reflect"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"
)

// amounts are the totals of a plan by step, in SI.
func amounts(p *Plan) map[string]float64 {
	sums := make(map[string]float64)
	for _, s := range p.Steps {
		for _, t := range s.Totals {
			sums[s.Step.ID+" "+t.Material] += t.Amount.Size
		}
	}
	return sums
}

func alike(a, b float64) bool { return math.Abs(a-b) <= 1e-9*max(1, math.Abs(a)) }

// Dividing a zone changes no total, no purchase and no step's status; scaling
// all zones scales the totals.
func TestAmountsAddUpAndScale(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, _ := BuiltIn(rapid.SampledFrom([]string{"cool", "warm"}).Draw(t, "program"))
		at := Occasion{Year: 2026}
		if rapid.Bool().Draw(t, "dated") {
			at = Occasion{Today: date(2026, time.Month(rapid.IntRange(1, 12).Draw(t, "month")), 10)}
		}
		whole := yard()
		i := rapid.IntRange(0, len(whole.Zones)-1).Draw(t, "zone")
		part := rapid.Float64Range(0.01, 0.99).Draw(t, "part")
		divided := yard()
		one, other := divided.Zones[i], divided.Zones[i]
		one.AreaM2, other.AreaM2, other.ID = part*one.AreaM2, (1-part)*one.AreaM2, one.ID+"-2"
		divided.Zones[i] = one
		divided.Zones = append(divided.Zones, other)
		factor := rapid.Float64Range(0.1, 50).Draw(t, "factor")
		scaled := yard()
		for j := range scaled.Zones {
			scaled.Zones[j].AreaM2 *= factor
		}
		plan := func(on Property) *Plan {
			made, err := p.Plan(on, at)
			if err != nil {
				t.Fatal(err)
			}
			return made
		}
		a, b, c := plan(whole), plan(divided), plan(scaled)
		sums, sumsB, sumsC := amounts(a), amounts(b), amounts(c)
		if len(sums) != len(sumsB) || len(sums) != len(sumsC) {
			t.Fatalf("%v\n%v\n%v", sums, sumsB, sumsC)
		}
		for name, sum := range sums {
			if !alike(sum, sumsB[name]) || !alike(factor*sum, sumsC[name]) {
				t.Errorf("%s: %g, divided %g, scaled by %g %g", name, sum, sumsB[name], factor, sumsC[name])
			}
		}
		for j := range a.Steps {
			if a.Steps[j].Status != b.Steps[j].Status || !a.Steps[j].From.Equal(b.Steps[j].From) {
				t.Errorf("%s: %s, divided %s", a.Steps[j].Step.ID, a.Steps[j].Status, b.Steps[j].Status)
			}
		}
		for j := range a.Purchases {
			if !alike(a.Purchases[j].Bought.Size, b.Purchases[j].Bought.Size) {
				t.Errorf("%+v, divided %+v", a.Purchases[j], b.Purchases[j])
			}
		}
	})
}

// Nothing is put down where nothing may be applied, and no purchase falls short.
func TestKeepoutsGetNothing(t *testing.T) {
	for name := range builtIns {
		p, _ := BuiltIn(name)
		plan := lay(t, p, yard(), Occasion{})
		drawn := 0
		for _, s := range plan.Steps {
			for _, z := range s.Zones {
				if z.Draw != nil {
					drawn++
				}
				if !z.Apply && (z.Draw != nil || s.Step.Does.lays()) {
					t.Errorf("%s: step %s puts something on %s", name, s.Step.ID, z.Name)
				}
			}
		}
		for _, b := range plan.Purchases {
			if b.Bought.Size < b.Needed.Size*(1+float64(p.Carry))*(1-1e-9) {
				t.Errorf("%s: %+v falls short", name, b)
			}
		}
		if drawn == 0 || len(plan.Purchases) == 0 {
			t.Errorf("%s: %d draws, %d purchases", name, drawn, len(plan.Purchases))
		}
	}
}

// A plan is the same each time.
func TestPlanIsTheSameEachTime(t *testing.T) {
	p, _ := BuiltIn("cool")
	a, b := lay(t, p, yard(), Occasion{}), lay(t, p, yard(), Occasion{})
	if !reflect.DeepEqual(a.Document(), b.Document()) || !reflect.DeepEqual(a.Tasks(), b.Tasks()) {
		t.Error("two plans differ")
	}
}

// A season in the south runs half a year later: the same months from its
// beginning.
func TestSouthShiftsByHalfAYear(t *testing.T) {
	for name := range builtIns {
		p, _ := BuiltIn(name)
		south := yard()
		south.Latitude = -south.Latitude
		n, s := lay(t, p, yard(), Occasion{}), lay(t, p, south, Occasion{})
		for i := range n.Steps {
			a, b := n.Steps[i], s.Steps[i]
			if !a.Step.Does.lays() && a.Step.When.Window == nil {
				continue
			}
			gotFrom, gotTo := b.timing.span.from.Sub(date(2026, 7, 1)), b.timing.span.to.Sub(date(2026, 7, 1))
			wantFrom, wantTo := a.timing.span.from.Sub(date(2026, 1, 1)), a.timing.span.to.Sub(date(2026, 1, 1))
			const lengths = 4 * 24 * time.Hour // by which half years differ
			if (gotFrom-wantFrom).Abs() > lengths || (gotTo-wantTo).Abs() > lengths {
				t.Errorf("%s: %s to %s in the north, %s to %s in the south", a.Step.ID, isoDay(a.From), isoDay(a.To), isoDay(b.From), isoDay(b.To))
			}
		}
	}
}

func TestSeasonDays(t *testing.T) {
	for _, tt := range []struct {
		s        season
		window   string
		from, to string
	}{
		{season{2026, false}, "03-01..04-15", "2026-03-01", "2026-04-15"},
		{season{2026, true}, "03-01..04-15", "2026-09-01", "2026-10-15"},
		{season{2026, true}, "08-31..09-30", "2027-02-28", "2027-03-30"}, // February has no 31st
		{season{2027, true}, "08-31..09-30", "2028-02-29", "2028-03-30"},
		{season{2026, false}, "11-15..03-01", "2026-11-15", "2027-03-01"}, // over the year's end
		{season{2026, true}, "05-15..08-01", "2026-11-15", "2027-02-01"},
	} {
		w, err := asWindow(tt.window)
		if err != nil {
			t.Fatal(err)
		}
		if got := tt.s.span(*w); isoDay(got.from) != tt.from || isoDay(got.to) != tt.to {
			t.Errorf("%v %s: %s to %s, want %s to %s", tt.s, tt.window, isoDay(got.from), isoDay(got.to), tt.from, tt.to)
		}
	}
	if s := seasonOf(date(2027, 3, 1), South); s.year != 2026 {
		t.Errorf("March 2027 in the south is in season %d", s.year)
	}
}

// Each way of being skipped, waiting, blocked and ready.
func TestStatuses(t *testing.T) {
	const core = "  - {id: core, does: core, when: {window: 04-01..04-20}}\n"
	for _, tt := range []struct{ name, steps, on, step, status, why string }{
		{"no day", core, "", "core", "waiting", "its dates begin on 2026-04-01"},
		{"too early", core, "2026-03-01", "core", "waiting", "until 2026-04-01"},
		{"first day", core, "2026-04-01", "core", "ready", "until 2026-04-20"},
		{"last day", core, "2026-04-20", "core", "ready", "until 2026-04-20"},
		{"too late", core, "2026-04-21", "core", "skipped", "its dates ended on 2026-04-20"},
		{"done", strings.Replace(core, "core,", "core, done: 2026-04-02,", 1), "2026-04-05", "core", "skipped", "done on 2026-04-02"},
		{"nowhere", core + "  - {id: a, does: mow, where: {species: zoysia}}\n", "2026-04-05", "a", "skipped", "no zone is zoysia"},
		{"follower of what is ready", core + "  - {id: a, does: topdress, when: {after: {step: core, days: 0..3}}}\n", "2026-04-05", "a", "ready", "right after core"},
		{"follower too early", core + "  - {id: a, does: topdress, when: {after: {step: core, days: 2..3}}}\n", "2026-04-05", "a", "waiting", "for core to be done"},
		{"follower of what is done", strings.Replace(core, "core,", "core, done: 2026-04-02,", 1) + "  - {id: a, does: topdress, when: {after: {step: core, days: 2..3}}}\n", "2026-04-04", "a", "ready", "until 2026-04-05"},
		{"follower of what is nowhere", strings.Replace(core, "core,", "core, where: {species: zoysia},", 1) + "  - {id: a, does: mow, when: {after: {step: core}}}\n", "2026-04-05", "a", "skipped", "it follows core, which is skipped"},
		{"before what is done", "  - {id: a, does: rake, when: {window: 04-01..04-20, before: core}}\n" + strings.Replace(core, "core,", "core, done: 2026-04-02,", 1), "2026-04-05", "a", "skipped", "it had to come before core, which was done on 2026-04-02"},
		{"in order", core + "  - {id: a, does: scout}\n", "2026-03-05", "a", "waiting", "until 2026-04-01"},
		{"mowings", "  - {id: m, does: mow, every: 3 d, when: {window: 04-01..06-01}}\n  - {id: a, does: scout, when: {mowings: 3}}\n", "2026-04-09", "a", "waiting", "until 2026-04-10"},
		{"soil, no log", "  - {id: a, does: core, when: {soil: {at_least: 50 F}}}\n", "2026-04-05", "a", "waiting", "for soil at 2 in warmed to 50 F (5-day mean)"},
		{"blocked until", "  - {id: p, does: spread, use: pre_emergent, blocks_seed: 4 weeks, done: 2026-04-01}\n  - {id: s, does: seed, when: {window: 04-10..05-20}}\n", "2026-04-15", "s", "blocked", "until 2026-04-29: no seed for 4 weeks after p (done on 2026-04-01)"},
		{"blocked no more", "  - {id: p, does: spread, use: pre_emergent, blocks_seed: 4 weeks, done: 2026-04-01}\n  - {id: s, does: seed, when: {window: 04-10..05-20}}\n", "2026-04-29", "s", "ready", "until 2026-05-20"},
		{"overridden", "  - {id: p, does: spread, use: pre_emergent, blocks_seed: 4 weeks, done: 2026-04-01}\n  - {id: s, does: seed, when: {window: 04-10..05-20}, override: {rule: preemergent_seed, reason: label allows}}\n", "2026-04-15", "s", "ready", "until 2026-05-20"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			s := stepOf(t, lay(t, read(t, head+tt.steps), yard(), Occasion{Today: day(t, tt.on)}), tt.step)
			if string(s.Status) != tt.status || s.Why != tt.why {
				t.Errorf("%s %q, want %s %q", s.Status, s.Why, tt.status, tt.why)
			}
		})
	}
}

// Where a verdict is about one zone only, the step goes on in the others, and
// nothing is bought for ground that no day is left for.
func TestBlockedZoneGetsNoSeed(t *testing.T) {
	const steps = head + `
  - {id: p, does: spread, use: pre_emergent, blocks_seed: 14 weeks, where: {zone: front}, when: {window: 04-01..04-10}}
  - {id: s, does: seed, material: seed, rate: 4 lb / 1000 ft2, where: {zone: [front, back]}, when: {window: 05-01..06-01}}
`
	s := stepOf(t, lay(t, read(t, steps), yard(), Occasion{Today: date(2026, 5, 5)}), "s")
	if s.Status != Ready || s.Zones[0].Draw != nil || !s.Zones[0].Closed() || s.Zones[1].Draw == nil {
		t.Errorf("%s: %+v", s.Status, s.Zones)
	}
	const want = 4 * 0.45359237 / 92.90304 * 400 // kg, on the back alone
	if got := s.Totals[0].Amount.Size; !alike(got, want) {
		t.Errorf("%g kg of seed, want %g", got, want)
	}
}

// Nutrients are those of the grade: 0.75 lb N / 1000 ft2 of 25-0-10 is 3 lb of
// product, with 0.30 lb K2O (University of Massachusetts Amherst, Rotary
// Spreader Calibration Procedures, for the rate).
func TestNutrientsOfAFeed(t *testing.T) {
	on := yard()
	on.Zones = on.Zones[:1]
	d := lay(t, read(t, head+"  - {id: a, does: spread, material: feed, rate: 0.75 lb N / 1000 ft2, product: {grade: 25-0-10, pack: 50 lb}}\n"), on, Occasion{}).Document()
	n := d.Nutrients[0]
	if !alike(n.N, 0.75) || !alike(n.K2O, 0.3) || n.P2O5 != 0 || !alike(n.Limit, 3.5) { // Virginia DCR: 2-3.5 for Kentucky bluegrass
		t.Errorf("%+v", n)
	}
	ft2 := 250 / 0.09290304
	if got := d.Steps[0].Totals[0]; got.Unit != "lb" || !alike(got.Amount, 3*ft2/1000) || !alike(got.AmountSI, got.Amount*0.45359237) || got.UnitSI != "kg" {
		t.Errorf("%+v", got)
	}
	if b := d.Purchases[0]; !alike(b.ToLoad, 1.05*b.Needed) || b.Pack != 50 || b.Packs != 1 || !alike(b.LeftOver, 50-b.ToLoad) {
		t.Errorf("%+v", b)
	}
}
