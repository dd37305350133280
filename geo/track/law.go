package track

import "math"

// A law is how a receiver's errors on one axis hang together, for a variance
// of one: a share of white noise, new at each fix, and the rest in parts that
// fade.
type law struct {
	white float64
	parts []part
}

// A part fades with the time between fixes: rough as exp(-u), u being the time
// over its reach, which is the Gauss-Markov process of the first order; or
// smooth as (1+u) exp(-u), the critically damped one of the second order, for
// receivers that filter their fixes (Gelb 1974, Applied Optimal Estimation,
// 2.2; from memory).
type part struct {
	share, reach float64 // reach in s
	smooth       bool
}

// correlation is what two errors some time apart have in common, white noise
// aside.
func (l law) correlation(lag float64) float64 {
	var sum float64
	for _, p := range l.parts {
		u := lag / p.reach
		c := p.share * math.Exp(-u)
		if p.smooth {
			c *= 1 + u
		}
		sum += c
	}
	return sum
}

// scatter is the variance about their own mean that errors show within a span
// of time: twice the mean of 1 less the correlation, over all pairs of fixes,
// halved.
func (l law) scatter(span float64) float64 {
	const steps = 200
	var sum float64
	for k := range steps {
		x := (float64(k) + 0.5) / steps
		sum += 2 * (1 - x) / steps * (1 - l.white - l.correlation(x*span))
	}
	return l.white + sum
}

// reach is the mean reach of the parts, by logarithm; 0 for white noise.
func (l law) reach() float64 {
	var sum, all float64
	for _, p := range l.parts {
		sum, all = sum+p.share*math.Log(p.reach), all+p.share
	}
	if all == 0 {
		return 0
	}
	return math.Exp(sum / all)
}

// A candidate is a law with the log of its weight before the fixes are looked
// at.
type candidate struct {
	law
	weight float64
}

// white is the law of errors that are new at each fix.
var white = law{white: 1}

// rough is the law of an error that fades at first order, with white noise of
// a variance of ratio times what the error drifts within a second.
func rough(reach, ratio float64) law {
	w := ratio * 2 / reach
	return law{w / (1 + w), []part{{share: 1 / (1 + w), reach: reach}}}
}

// smooth is the law of a filtered error, with white noise of a variance of
// ratio times what the error changes within a second.
func smooth(reach, ratio float64) law {
	w := ratio / (reach * reach)
	return law{w / (1 + w), []part{{share: 1 / (1 + w), reach: reach, smooth: true}}}
}

// both is the law of a rough error and a smooth one that is the larger for
// fixes farther apart than cross.
func both(reach, cross float64) law {
	const fast = 40 // s; far above cross, so that only the drift per second counts
	r := 2 * reach * reach / (fast * cross)
	return law{0, []part{{share: 1 / (1 + r), reach: fast}, {share: r / (1 + r), reach: reach, smooth: true}}}
}

// candidates are the laws that are weighed: rough ones of reaches evenly
// spread by logarithm from a few seconds to far longer than a walk, with more
// and less white noise; white noise alone; and smooth ones, alone and over a
// rough one, as logs of receivers that stood still show them. Own choice.
func candidates() []candidate {
	var all []candidate
	add := func(weight float64, laws ...law) {
		for _, l := range laws {
			all = append(all, candidate{l, math.Log(weight / float64(len(laws)))})
		}
	}
	reaches := spread(2.5, 1000, 14)
	for _, w := range []struct{ ratio, weight float64 }{{0, 0.2}, {0.3, 0.15}, {1, 0.11}, {3, 0.04}} {
		add(w.weight, each(reaches, func(reach float64) law { return rough(reach, w.ratio) })...)
	}
	add(0.19, white)
	reaches = spread(4, 40, 5)
	add(0.08, each(reaches, func(reach float64) law { return smooth(reach, 0.1) })...)
	add(0.08, each(reaches, func(reach float64) law { return smooth(reach, 1) })...)
	for _, cross := range []float64{2, 6, 20} {
		add(0.05, each(spread(20, 120, 3), func(reach float64) law { return both(reach, cross) })...)
	}
	return all
}

// trials are a few laws apart, to compare divisions with.
func trials() []law {
	return []law{white, rough(4, 0), rough(16, 0), rough(63, 0), rough(4, 1), rough(16, 1), rough(63, 1)}
}

// spread returns n values from lo to hi in equal ratios.
func spread(lo, hi float64, n int) []float64 {
	out := make([]float64, n)
	for i := range out {
		out[i] = lo * math.Pow(hi/lo, float64(i)/float64(n-1))
	}
	return out
}

// each makes a law of each reach.
func each(reaches []float64, make func(reach float64) law) []law {
	var laws []law
	for _, r := range reaches {
		laws = append(laws, make(r))
	}
	return laws
}
