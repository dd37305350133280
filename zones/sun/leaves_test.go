package sun

import (
	"testing"
	"time"
)

// The dates are those of leaves.csv: at 40 degrees out from 15 April on, in 21
// days, four days later a degree; falling from 10 October on.
func TestFullLeaf(t *testing.T) {
	for _, tt := range []struct {
		lat      float64
		from, to Date
	}{
		{40, Date{time.May, 6}, Date{time.October, 10}},
		{45, Date{time.May, 26}, Date{time.October, 10}},
		{10, Date{time.March, 27}, Date{time.October, 10}},  // as at 30
		{-40, Date{time.November, 6}, Date{time.April, 10}}, // six months on
	} {
		from, to := FullLeaf(tt.lat)
		if from != tt.from || to != tt.to {
			t.Errorf("at %g: %v to %v, want %v to %v", tt.lat, from, to, tt.from, tt.to)
		}
		for _, d := range []Date{from, to} {
			if share := leaves.inLeaf(d, tt.lat); share < 1 {
				t.Errorf("at %g, %v: %g of the leaves are out", tt.lat, d, share)
			}
		}
	}
}
