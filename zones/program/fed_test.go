package program

import (
	"slices"
	"strings"
	"testing"

	"example.org/turfplat/zones/material"
)

// Sums of nutrients say what they leave out: feeds without a rate, and those that no
// done notes though their dates ended.
func TestWhatFeedsLeaveOut(t *testing.T) {
	p := read(t, `program: p
steps:
  - {id: pre, does: spread, use: pre_emergent, material: pre, when: {window: 03-01..03-31}}
  - {id: first, does: spread, use: fertilizer, material: f, rate: 0.5 lb N / 1000 ft2, product: {grade: 20-0-0}, when: {window: 04-01..04-20}}
  - {id: bag, title: Bag, does: spread, use: fertilizer, material: b, product: {grade: 32-0-4}, where: {zone: front}, when: {window: 05-01..05-30}}
`)
	for _, tt := range []struct {
		on          string
		n, p2o5     string // marks behind the sums of front
		uncounted   string
		left, taken string
	}{
		{"2026-03-10", "+", "", "Bag, 32-0-4", "", ""},
		{"2026-05-10", "+", "", "Bag, 32-0-4", "spread f", "spread pre"},
		{"2026-06-10", "", "", "", "spread f; Bag", "spread pre"},
	} {
		plan := lay(t, p, yard(), Occasion{Today: day(t, tt.on)})
		for _, f := range plan.Feeds {
			n, p2o5 := f.More(material.Nitrogen), f.More(material.Phosphate)
			if f.ID == "zone/front" && (n != tt.n || p2o5 != tt.p2o5) || f.ID != "zone/front" && n != "" {
				t.Errorf("%s, %s: N %q, P2O5 %q", tt.on, f.ID, n, p2o5)
			}
		}
		if got := plan.Uncounted(); !strings.HasSuffix(got, tt.uncounted) || (got == "") != (tt.uncounted == "") {
			t.Errorf("%s: %q", tt.on, got)
		}
		lapses := plan.Lapses()
		for which, want := range map[string]string{"not counted": tt.left, "taken for laid": tt.taken} {
			i := slices.IndexFunc(lapses, func(told string) bool { return strings.HasPrefix(told, which) })
			if (i < 0) != (want == "") || i >= 0 && !strings.HasSuffix(lapses[i], ": "+want) {
				t.Errorf("%s: %q, want %s %q", tt.on, lapses, which, want)
			}
		}
	}
}
