package program

import (
	"strings"
	"testing"
)

// What a rule says alike of several zones stands once, with their names.
func TestReasonsAreToldOnce(t *testing.T) {
	p := read(t, `program: season
steps:
  - id: feed
    does: spread
    material: feed 25-0-0
    rate: 3 lb N / 1000 ft2
    product: {grade: 25-0-0}
    where: {zone: [bank, back, front]}
`)
	s := stepOf(t, lay(t, p, yard(), Occasion{}), "feed")
	told := make(map[string][]string)
	for _, v := range s.Reasons {
		told[v.Rule] = append(told[v.Rule], labels(v.Zones)+": "+v.Text)
	}
	if salt := told["salt"]; len(salt) != 1 || !strings.HasPrefix(salt[0], "front; back; bank: 3 lb") {
		t.Errorf("salt: %q", salt)
	}
	for rule, texts := range told {
		for i, text := range texts {
			for _, other := range texts[:i] {
				if _, a, _ := strings.Cut(text, ": "); strings.HasSuffix(other, ": "+a) {
					t.Errorf("%s says twice %q", rule, a)
				}
			}
		}
	}
}
