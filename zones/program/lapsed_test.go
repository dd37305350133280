package program

import (
	"fmt"
	"strings"
	"testing"
)

// What a rule said holds until its day and is not told from then on.
func TestLapsedReasonsGo(t *testing.T) {
	const season = `program: p
steps:
  - {id: pre, does: spread, use: pre_emergent, material: pre, when: {window: 05-15..05-15}}
  - {id: weeds, does: spray, use: broadleaf, material: weeds, keep_dry: 24 h, where: {zone: front}, when: {window: 05-15..06-14}}
  - {id: mow, does: mow, every: 7 d, when: {window: 04-01..10-31}}
  - {id: core, does: core, when: {window: 08-20..09-25}}
  - {id: seed, does: seed, material: seed, when: {window: 08-15..09-30}}
`
	for _, tt := range []struct {
		on, step, rule string
		told           bool
	}{
		{"2026-09-03", "seed", "preemergent_seed", true},
		{"2026-09-04", "seed", "preemergent_seed", false}, // 16 weeks after 15 May
		{"2026-09-03", "core", "preemergent_disturbed", true},
		{"2026-09-04", "core", "preemergent_disturbed", false},
		{"2026-06-16", "mow", "mow_foliar", true}, // two days after its last one
		{"2026-06-17", "mow", "mow_foliar", false},
		{"2026-04-20", "mow", "mow_foliar", true},
	} {
		s := stepOf(t, lay(t, read(t, season), yard(), Occasion{Today: day(t, tt.on)}), tt.step)
		told := false
		for _, v := range s.Reasons {
			told = told || v.Rule == tt.rule
		}
		if told != tt.told {
			t.Errorf("%s on %s: %s is told: %v, want %v: %+v", tt.step, tt.on, tt.rule, told, tt.told, s.Reasons)
		}
	}
}

// A window that the soil will not open before its dates end says so, and when they
// are over, keeps them.
func TestSoilComesTooLate(t *testing.T) {
	p := read(t, `program: p
steps:
  - {id: pre, does: spread, use: pre_emergent, material: pre, when: {window: 03-01..05-15, soil: {at_least: 55 F, depth: 2 in, days: 5, closes: 65 F}}}
`)
	// Made up: 47 F on 1 May, half a degree warmer each day from 1 April to 31 July.
	var log strings.Builder
	log.WriteString("time,soil_2in_f\n")
	for d := day(t, "2026-04-01"); !d.After(day(t, "2026-07-31")); d = d.AddDate(0, 0, 1) {
		fmt.Fprintf(&log, "%s,%.2f\n", isoDay(d), 47+0.5*d.Sub(day(t, "2026-05-01")).Hours()/24)
	}
	for _, tt := range []struct {
		on, why string
		status  Status
	}{
		{"2026-05-14", "not likely to open before its dates end on 2026-05-15", Waiting},
		{"2026-05-17", "its dates ended on 2026-05-15", Skipped},
		{"2026-05-20", "its dates ended on 2026-05-15, and it opened on 2026-05-19", Skipped}, // 55 F on 17 May, the mean of 5 days 2 days later
		{"2026-07-31", "its dates ended on 2026-05-15, and it opened on 2026-05-19", Skipped}, // and closed
	} {
		at := Occasion{Today: day(t, tt.on), Soil: station(t, []byte(log.String()))}
		s := stepOf(t, lay(t, p, yard(), at), "pre")
		if s.Status != tt.status || !strings.Contains(s.Why, tt.why) {
			t.Errorf("%s: %s %s, want %s %s", tt.on, s.Status, s.Why, tt.status, tt.why)
		}
		if from, to := isoDay(s.From), isoDay(s.To); from != "2026-03-01" || to != "2026-05-15" {
			t.Errorf("%s: from %s to %s", tt.on, from, to)
		}
	}
}

// What is loaded for a visit is for the zones that can be worked on the day.
func TestVisitIsForZonesThatCanBeWorked(t *testing.T) {
	p := read(t, `program: p
steps:
  - {id: pre, does: spread, use: pre_emergent, material: pre, where: {zone: front}, when: {window: 03-01..05-15}}
  - {id: seed, does: seed, material: seed, where: {zone: [front, back]}, rate: 2 lb / 1000 ft2, when: {window: 04-15..05-20}}
  - {id: lime, does: spread, material: lime, where: {zone: [front, back]}, rate: 10 lb / 1000 ft2, every: 4 weeks, when: {window: 05-01..06-30}}
`)
	plan := lay(t, p, yard(), Occasion{Today: day(t, "2026-05-01")})
	if now := plan.Now(stepOf(t, plan, "seed")); len(now) != 1 || now[0].ID != "zone/back" {
		t.Errorf("seed can be laid on %+v", now)
	}
	// on back, 400 m2: 2 lb / 1000 ft2 of seed; on both, 650 m2: 10 lb of lime, one of three visits
	want := map[string]float64{"seed": 2 * 0.45359237 * 400 / 92.90304, "lime": 10 * 0.45359237 * 650 / 92.90304}
	got := make(map[string]float64)
	for _, d := range plan.Visit {
		got[d.Product] += d.Amount.Size
	}
	for product, size := range want {
		if diff := got[product] - size; diff > 1e-9 || diff < -1e-9 {
			t.Errorf("%s: %g kg, want %g", product, got[product], size)
		}
	}
}
