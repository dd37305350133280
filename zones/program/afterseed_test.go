package program

import "testing"

// The wait that a label states after seed holds whatever the step is for; a
// broadleaf spray that also keeps seed off is judged once.
func TestLabelsStateTheWaitAfterSeed(t *testing.T) {
	const seed = head + "  - {id: seed, does: seed, material: tall fescue, done: 2026-05-01}\n"
	for _, tt := range []struct {
		step, rule, until string
		severity          Severity
	}{
		{"does: spray, use: insecticide, material: i, checked: flowers_mown, after_seed: 3 weeks", "seed_broadleaf", "2026-05-22", Block},
		{"does: spray, use: insecticide, material: i, checked: flowers_mown", "", "", ""},
		{"does: spray, use: broadleaf, material: h, blocks_seed: 4 weeks", "seed_broadleaf", "2026-05-29", Warn},
		{"does: spray, use: broadleaf, material: h, blocks_seed: 4 weeks, after_seed: 6 weeks", "seed_broadleaf", "2026-06-12", Block},
		{"does: spread, use: pre_emergent, material: g, product: {active: mesotrione}", "", "", ""},
		{"does: spread, use: pre_emergent, material: g, product: {active: mesotrione}, after_seed: 4 weeks", "seed_preemergent", "2026-05-29", Block},
	} {
		s := stepOf(t, lay(t, read(t, seed+"  - {id: a, "+tt.step+"}\n"), yard(), Occasion{Today: date(2026, 5, 2)}), "a")
		var found []Verdict
		for _, v := range s.Reasons {
			if v.Rule == "seed_broadleaf" || v.Rule == "seed_preemergent" {
				found = append(found, v)
			}
		}
		switch {
		case tt.rule == "" && len(found) > 0:
			t.Errorf("%s: %+v", tt.step, found)
		case tt.rule != "" && (len(found) != 1 || found[0].Rule != tt.rule || found[0].Severity != tt.severity || isoDay(found[0].Until) != tt.until):
			t.Errorf("%s: %+v", tt.step, found)
		}
	}
}
