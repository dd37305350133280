package lanes

import (
	"math"
	"testing"
)

// The hopper never runs out nor over, no filling is nothing, and all fillings
// together are what the lanes take.
func TestFillings(t *testing.T) {
	var s sketch
	s.polygon(`"kind":"turf","id":"lawn"`, rectangle(-29, -14, 29, 14))
	s.polygon(`"kind":"bed"`, rectangle(-12, -5, -6, 3))
	y, _ := s.yard(t)
	for _, tt := range []struct {
		name    string
		filling float64
		first   float64 // 0 = what the lanes take
		onLanes bool
	}{
		{"hopper holds more than all", 5000, 0, false},
		{"topped up on the way", 700, 700, false},
		{"less than a lane takes", 31, 31, true},
	} {
		t.Run(tt.name, func(t *testing.T) {
			w := singleWork(3)
			w.Filling = tt.filling
			p := must[Plan](t)(Lay(y, w))
			checkFillings(t, p)
			first := tt.first
			if first == 0 {
				first = areaOf(p.Walked)
			}
			near(t, "first filling", p.Fills[0].Ground, first, 1e-9, 1e-9)
			onLanes := false
			for _, f := range p.Fills {
				onLanes = onLanes || f.On
			}
			if onLanes != tt.onLanes {
				t.Errorf("filled on lanes: %v", onLanes)
			}
		})
	}
}

func checkFillings(t failer, p Plan) {
	t.Helper()
	var left, filled, taken float64
	for _, l := range p.Lanes {
		if !l.Spreading {
			continue
		}
		rest := l.Ground
		for _, f := range p.Fills {
			if f.Lane != l.N {
				continue
			}
			if f.On {
				rest, left = rest-left, 0
			}
			if f.Ground <= 0 || f.Full > p.Work.Filling*(1+1e-9) {
				t.Errorf("lane %d: %v m2 put in, %v in a hopper for %v", f.Lane, f.Ground, f.Full, p.Work.Filling)
			}
			near(t, "in the hopper", left+f.Ground, f.Full, 1e-9, 1e-6)
			left, filled = f.Full, filled+f.Ground
		}
		left -= rest
		near(t, "what is left", l.Left, left, 1e-6, 1e-5)
		taken += l.Ground
	}
	near(t, "left at last", left, 0, 0, 1e-5)
	near(t, "put in, all", filled, taken, 1e-9, 1e-6)
	near(t, "taken", taken, areaOf(p.Walked), 1e-9, 1e-6)
}

func TestTooManyFillings(t *testing.T) {
	var s sketch
	s.polygon(`"kind":"turf","id":"lawn"`, rectangle(0, 0, 30, 30))
	y, _ := s.yard(t)
	w := singleWork(3)
	for _, filling := range []float64{1e-4, math.SmallestNonzeroFloat64} {
		w.Filling = filling
		if _, err := Lay(y, w); err == nil {
			t.Errorf("a filling for %g m2 is taken", filling)
		}
	}
}
