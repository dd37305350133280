package program

import (
	"flag"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"

	"example.org/turfplat/zones"
	"example.org/turfplat/zones/material"
)

var update = flag.Bool("update", false, "rewrite the expected texts")

// ownAdvice is all that turfplat's own tables and programs say.
func ownAdvice(t *testing.T) []string {
	t.Helper()
	var all []string
	for _, name := range []string{"cool", "warm"} {
		p, ok := BuiltIn(name)
		if !ok {
			t.Fatal(name)
		}
		for _, s := range p.Steps {
			all = append(append(all, s.Cautions...), s.Notes...)
		}
	}
	for _, row := range slices.Concat(cautions, footers) {
		all = append(all, row...)
	}
	for _, r := range rules {
		all = append(all, r.source)
	}
	slices.Sort(all)
	return slices.Compact(all)
}

// Readers of metric units get what is published in their own, and every other
// word of it as it is.
func TestAdviceInMetricUnits(t *testing.T) {
	american := regexp.MustCompile(`\d (F|in|ft|ft2|ft3|lb|oz|fl oz|gal|mph|yd3|cubic yards)\b|square foot`)
	f := material.Figures{Units: zones.Metric}
	var changed []string
	for _, text := range ownAdvice(t) {
		told := f.Prose(text)
		if left := american.FindString(told); left != "" && !strings.Contains(told, "(811 in the US)") {
			t.Errorf("%q still says %q", told, left)
		}
		if told != text {
			changed = append(changed, told)
		}
	}
	const file = "testdata/metric_advice.txt"
	text := strings.Join(changed, "\n") + "\n"
	if *update {
		if err := os.WriteFile(file, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if text != string(want) {
		t.Errorf("%s is not what is told now: look at the difference that go test ./zones/program -update makes", file)
	}
}
