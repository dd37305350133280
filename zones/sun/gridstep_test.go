package sun

import (
	"testing"

	"example.org/turfplat/geo"
)

func TestStepFor(t *testing.T) {
	for area, want := range map[geo.Area]float64{0: 0.25, 199: 0.25, 200: 0.5, 9999: 0.5, 10000: 1, 1e8: 1} {
		if got := StepFor(area); got != want {
			t.Errorf("%v m2: %v m, want %v", area, got, want)
		}
	}
}
