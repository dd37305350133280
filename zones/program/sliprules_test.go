package program

import (
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
