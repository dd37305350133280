package track

import (
	"math"

	"example.org/turfplat/geo"
)

// A ring of laps: the mean of all, and where on it each station lies.
type meanRing struct {
	at    []geo.XY    // equally spaced along the first lap
	phase [][]float64 // of each station of each lap: index in at, with fraction
}

// meanOf lays laps on each other and takes their mean: every lap is matched
// with the first so that the squared distances of the matched places, in the
// order walked, are least; all laps then start at one place (dynamic time
// warping; Sakoe & Chiba 1978, IEEE Trans. ASSP 26:43-49).
func meanOf(laps []lap) meanRing {
	n := ringSamples(laps)
	first := resampled(laps[0].at, n)
	r := meanRing{at: make([]geo.XY, n)}
	for i, l := range laps {
		if i > 0 {
			l = l.turnedTo(first[0])
			laps[i] = l
		}
		to := identity(n) // for each sample of the lap, the samples of the first lap
		samples := resampled(l.at, n)
		if i > 0 {
			to = matched(samples, first)
		}
		r.add(samples, to, 1/float64(len(laps)))
		r.phase = append(r.phase, phases(l.at, to, n))
	}
	return r
}

// ringSamples is how many places a ring is drawn with: one every half metre,
// up to 2,000 for one lap, 400 for several and fewer for many.
func ringSamples(laps []lap) int {
	const work = 1e8 // cells of all warping tables
	most := 2000.0
	if len(laps) > 1 {
		most = min(400, math.Sqrt(work/float64(len(laps))))
	}
	return int(max(32, min(most, 2*ringLength(laps[0].at))))
}

// A match is a range of samples that belong to one.
type match struct{ from, to int }

func identity(n int) []match {
	m := make([]match, n)
	for i := range m {
		m[i] = match{i, i}
	}
	return m
}

// matched returns, for each sample of a ring, those of another that it is
// matched with; both start at the same place.
func matched(ring, other []geo.XY) []match {
	n := len(ring)
	band := max(8, n/4)
	cost := make([]float64, n*n)
	at := func(i, j int) float64 {
		if i < 0 || j < 0 || i-j > band || j-i > band {
			return math.Inf(1)
		}
		return cost[i*n+j]
	}
	for i := range n {
		for j := max(0, i-band); j <= min(n-1, i+band); j++ {
			d := ring[i].Minus(other[j])
			least := min(at(i-1, j-1), at(i-1, j), at(i, j-1))
			if i == 0 && j == 0 {
				least = 0
			}
			cost[i*n+j] = least + d.Dot(d)
		}
	}
	to := make([]match, n)
	for i := range to {
		to[i] = match{n, -1}
	}
	for i, j := n-1, n-1; i >= 0 && j >= 0; {
		to[i].from, to[i].to = min(to[i].from, j), max(to[i].to, j)
		switch least := min(at(i-1, j-1), at(i-1, j), at(i, j-1)); {
		case i == 0 && j == 0:
			i--
		case at(i-1, j-1) == least:
			i, j = i-1, j-1
		case at(i-1, j) == least:
			i--
		default:
			j--
		}
	}
	return to
}

// add puts a share of a lap's samples on the ring.
func (r meanRing) add(samples []geo.XY, to []match, share float64) {
	sum, count := make([]geo.XY, len(samples)), make([]float64, len(samples))
	for i, m := range to {
		for j := m.from; j <= m.to; j++ {
			sum[j] = sum[j].Plus(samples[i])
			count[j]++
		}
	}
	for j := range sum {
		r.at[j] = r.at[j].Plus(sum[j].Times(share / count[j]))
	}
}

// phases returns where on the ring each place of a lap lies.
func phases(lap []geo.XY, to []match, n int) []float64 {
	out := make([]float64, len(lap))
	step := ringLength(lap) / float64(n)
	var way float64
	for i, p := range lap {
		sample := min(way/step, float64(n-1))
		k := int(sample)
		m := to[k]
		out[i] = float64(m.from+m.to)/2 + (sample - float64(k))
		way += p.Distance(lap[(i+1)%len(lap)])
	}
	return out
}
