package program

import (
	"slices"
	"strings"
	"testing"
)

// A rate is told as a step's own are written.
func TestSlipsTellTheRate(t *testing.T) {
	for _, tt := range []struct{ step, want string }{
		{"does: water, rate: 25 in", "25 in of water at one time is 25 times the most that is published, 1 in:"},
		{"does: topdress, material: compost, rate: 25 in", "25.00 in of compost at one time is 50 times the most that is published, 0.50 in:"},
		{"does: spray, material: h, carrier: 100 gal / 1000 ft2", "100.00 gal / 1000 ft2 of mix at one time is 20 times the most that is published, 5.00 gal / 1000 ft2:"},
		{"does: spread, material: lime, rate: 500 lb / 1000 ft2", "500.00 lb / 1000 ft2 of lime at one time is 5 times the most that is published, 100.00 lb / 1000 ft2:"},
	} {
		plan := lay(t, read(t, head+"  - {id: a, "+tt.step+"}\n"), yard(), Occasion{Today: date(2026, 5, 2)})
		s := stepOf(t, plan, "a")
		if s.Status != Blocked || !strings.HasPrefix(s.Why, tt.want) || len(plan.Purchases) > 0 || len(s.Totals) > 0 {
			t.Errorf("%s: %s %s, %v", tt.step, s.Status, s.Why, plan.Purchases)
		}
	}
}

// A rate beyond what is published, and not so far that it must be a slip, is
// told with the figure and who has the last word.
func TestHighRatesAreTold(t *testing.T) {
	for _, tt := range []struct{ step, want, source string }{
		{"does: spray, use: broadleaf, material: h, carrier: 1 gal / 1000 ft2, rate: 10 fl oz / 1000 ft2",
			"10.00 fl oz / 1000 ft2 of h at one time is more than the most that is published, 8.00 fl oz / 1000 ft2: go by the label", "no source"},
		{"does: spread, use: pre_emergent, material: g, rate: 12 lb / 1000 ft2",
			"12.00 lb / 1000 ft2 of g at one time is more than the most that is published, 11.50 lb / 1000 ft2: go by the label", "label"},
		{"does: spray, use: pre_emergent, material: g, rate: 1 lb ai / acre, product: {active: Dithiopyr, ai: 2 lb / gal}",
			"1 lb ai / acre of Dithiopyr at one time is more than the most that is published, 0.5 lb ai / acre: go by the label", "label"},
		{"does: spread, material: superphosphate, rate: 40 lb / 1000 ft2, product: {grade: 0-46-0}",
			"18.40 lb / 1000 ft2 of phosphate (P2O5) at one time is more than the most that is published, 5.00 lb / 1000 ft2: go by the supplier's sheet", "from memory"},
		{"does: seed, material: seed, rate: 8 lb / 1000 ft2, where: {zone: front}",
			"8.00 lb / 1000 ft2 of seed is more than new turf of Kentucky bluegrass takes, 3 lb / 1000 ft2; name the grass of the seed if it is another one", "K-State"},
	} {
		plan := lay(t, read(t, head+"  - {id: a, "+tt.step+"}\n"), yard(), Occasion{Today: date(2026, 5, 2)})
		s := stepOf(t, plan, "a")
		high := slices.DeleteFunc(slices.Clone(s.Reasons), func(v Verdict) bool { return v.Rule != "rate_high" })
		if s.Status != Ready || len(high) != 1 || high[0].Severity != Warn || high[0].Text != tt.want || !strings.Contains(high[0].Source, tt.source) {
			t.Errorf("%s: %s %s, %d reasons", tt.step, s.Status, s.Why, len(high))
			for _, v := range high {
				t.Error(v.Text, v.Source)
			}
		}
	}
}
