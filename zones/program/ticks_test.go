package program

import (
	"slices"
	"strings"
	"testing"
)

// No log tells of rain to come or of soaked ground, so whoever feeds is told to
// look, and ticks that off.
func TestFeedsAskForTheWeather(t *testing.T) {
	for _, tt := range []struct {
		step string
		asks bool
	}{
		{"does: spread, use: fertilizer, material: feed, rate: 0.5 lb N / 1000 ft2, product: {grade: 25-0-0}", true},
		{"does: spray, use: fertilizer, material: feed", true},
		{"does: spray, use: broadleaf, material: herbicide", false},
		{"does: mow", false},
	} {
		s := &read(t, head+"  - {id: a, "+tt.step+"}\n").Steps[0]
		ticked := slices.ContainsFunc(s.Ticks(), func(text string) bool { return strings.Contains(text, "heavy rain") })
		told := slices.ContainsFunc(s.Minding(), func(text string) bool { return strings.Contains(text, "soaked ground, nor with heavy rain") })
		if ticked != tt.asks || told != tt.asks {
			t.Errorf("%s: to tick %v, told %v, want %v", tt.step, ticked, told, tt.asks)
		}
	}
}
