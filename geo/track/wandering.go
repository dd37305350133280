package track

import (
	"math"
)

// medianNorm is the median length of a vector whose two components err by one
// sigma: sqrt(2 ln 2), the median of a Rayleigh distribution.
const medianNorm = 1.17741

// jitter is the 1-sigma noise of a fix against its neighbours on one axis: the
// median third difference, which a steady walk hardly has, against that of
// white noise of one metre, the root of 20.
func (p path) jitter() float64 {
	third := make([]float64, 0, len(p.stations))
	for i := 3; i < len(p.stations); i++ {
		a, b, c, d := p.stations[i-3].at, p.stations[i-2].at, p.stations[i-1].at, p.stations[i].at
		third = append(third, d.Minus(a).Plus(b.Minus(c).Times(3)).Norm())
	}
	return median(third) / (medianNorm * math.Sqrt(20))
}

// wander is how fast the slow error of the receiver drifts: the growth of its
// variance on one axis, m2/s. It is what second differences over three fixes
// show beyond those over one, and beyond what chance may (one sigma); a steady
// walk has hardly any.
func (p path) wander() float64 {
	near, chanceNear := p.bend(1)
	far, chanceFar := p.bend(3)
	return max(0, far-near-math.Hypot(chanceNear, chanceFar)) / 4 / p.interval
}

// bend is the variance on one axis of second differences over a number of
// fixes, from their median, and by how much that may err by chance, one sigma.
func (p path) bend(lag int) (variance, chance float64) {
	const medianError = 2 // over the root of their number; 1.44 if they were independent
	second := make([]float64, 0, len(p.stations))
	for i := 2 * lag; i < len(p.stations); i++ {
		a, b, c := p.stations[i-2*lag].at, p.stations[i-lag].at, p.stations[i].at
		second = append(second, a.Plus(c).Minus(b.Times(2)).Norm())
	}
	m := median(second) / medianNorm
	return m * m, m * m * medianError / math.Sqrt(max(1, float64(len(second))))
}

// gate is how near the walk has to come back to close: three sigmas of what
// the receiver errs or may have drifted meanwhile, within reason.
func (p path) gate(b belief) float64 {
	const memory = 20 // s
	drift := math.Sqrt(memory * p.wander())
	return max(closeGate.Value, min(farthestGate.Value, 3*max(b.sigma, drift)))
}

// span is for how long before and after to smooth, so that what jitter remains
// moves the area little.
func span(jitter float64) float64 {
	switch {
	case jitter < 0.1:
		return 0
	case jitter < 0.5:
		return smoothSpan.Value / 2
	}
	return smoothSpan.Value
}
