package track

import "example.org/turfplat/geo"

// A smoother replaces each station by the value there of the parabola in time
// that fits those around best. Such a filter has no second moment, and so
// takes nothing off corners: rounding a corner of turn a by a filter of second
// moment m takes m sin(a)/4 off the area (own derivation: the traverse sum of
// the smoothed path, smoothed once more).
type smoother struct {
	path  path
	half  float64   // s; 0 = none
	clock []float64 // time spent walking up to each station, s
	lost  []bool    // the edge before each station is unobserved
}

func newSmoother(p path, half float64) smoother {
	s := smoother{path: p, half: half, clock: make([]float64, len(p.stations)), lost: make([]bool, len(p.stations))}
	for i := 1; i < len(p.stations); i++ {
		s.clock[i] = s.clock[i-1] + p.stations[i].time - p.stations[i-1].until
		s.lost[i] = p.lost(i)
	}
	return s
}

// window returns the run of stations that station i is smoothed with.
func (s smoother) window(i int) (lo, hi int) {
	lo, hi = i, i
	for lo > 0 && !s.lost[lo] && s.clock[i]-s.clock[lo-1] <= s.half {
		lo--
	}
	for hi+1 < len(s.clock) && !s.lost[hi+1] && s.clock[hi+1]-s.clock[i] <= s.half {
		hi++
	}
	return lo, hi
}

// weights calls visit with the weight of each station in the smoothed place of
// station i. They sum to 1.
func (s smoother) weights(i int, visit func(j int, w float64)) {
	lo, hi := s.window(i)
	if s.half == 0 || hi-lo < 3 {
		visit(i, 1)
		return
	}
	st := s.path.stations
	var m [5]float64
	for j := lo; j <= hi; j++ {
		u, w := (s.clock[j]-s.clock[i])/s.half, st[j].weight
		for k := range m {
			m[k] += w
			w *= u
		}
	}
	c0, c1, c2 := m[2]*m[4]-m[3]*m[3], m[2]*m[3]-m[1]*m[4], m[1]*m[3]-m[2]*m[2]
	det := m[0]*c0 + m[1]*c1 + m[2]*c2
	if det < 1e-9*m[0]*m[0]*m[0] {
		visit(i, 1)
		return
	}
	for j := lo; j <= hi; j++ {
		u := (s.clock[j] - s.clock[i]) / s.half
		visit(j, st[j].weight*(c0+u*c1+u*u*c2)/det)
	}
}

// smoothed returns the places of all stations.
func (s smoother) smoothed() []geo.XY {
	out := make([]geo.XY, len(s.path.stations))
	for i := range out {
		s.weights(i, func(j int, w float64) { out[i] = out[i].Plus(s.path.stations[j].at.Times(w)) })
	}
	return out
}
