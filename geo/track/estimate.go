package track

import (
	"cmp"
	"math"
	"slices"

	"example.org/turfplat/geo"
)

// An estimate is what the fixes of a ring tell of its error.
type estimate struct {
	sigma, ci95 float64 // of the area, m2: 1 sigma, and half of the 95 % interval
	noise       Noise
	sides       int
	assumed     bool // too few fixes to tell; the bound for the believed error stands
}

// fewestSightings are needed to tell a receiver's noise.
const fewestSightings = 16

// estimated weighs the laws by how well they explain the sightings about the
// sides of the ring, and mixes the errors of the area that follow from each.
// So it does with divisions into sides: what one takes for a bend of the edge
// another takes for the receiver's wandering.
func (t traverse) estimated(laps []lap, ring meanRing, g gradient, b belief) estimate {
	m := mixture{sway: sway.Value * sway.Value * 2 * swayReach.Value * ringLength(ring.at) / float64(len(laps))}
	bins := g.binned()
	var likeliest division
	var span float64
	for _, d := range t.divisions(laps, ring, b) {
		seen := t.sightings(laps, ring, d.sides, true)
		if len(seen) < fewestSightings || !m.addLaws(seen, d, bins, b) {
			continue
		}
		if likeliest.line == nil || d.weight > likeliest.weight {
			likeliest, span = d, seen[len(seen)-1].time-seen[0].time
		}
	}
	if likeliest.line == nil {
		return assumed(laps, b)
	}
	e := m.estimate(span)
	e.sides = len(likeliest.line)
	return e
}

// addLaws adds all laws on one division of the ring, weighing as much as it
// does; false if it leaves too little to tell a law by.
func (m *mixture) addLaws(seen []sighting, d division, bins binned, b belief) bool {
	var one mixture
	for _, c := range candidates() {
		f := c.law.fitted(seen, len(d.line))
		if f.freedom < fewestSightings/2 {
			return false
		}
		one.add(c, f, f.variance*bins.variance(c.law), c.weight+f.restricted+b.log(f.variance))
	}
	whole := logSum(one.weight)
	for i := range one.weight {
		one.weight[i] += divisionPower*d.weight - whole
	}
	m.laws, m.fits = append(m.laws, one.laws...), append(m.fits, one.fits...)
	m.area, m.weight = append(m.area, one.area...), append(m.weight, one.weight...)
	return true
}

// assumed bounds the error by what is believed of the receiver.
func assumed(laps []lap, b belief) estimate {
	sigma := walkBound.Value * b.sigma * ringLength(laps[0].at) / math.Sqrt(float64(len(laps)))
	return estimate{sigma: sigma, ci95: normal95 * sigma, noise: Noise{Sigma: geo.Length(b.sigma)}, assumed: true}
}

// A division is the sides of a ring, and the log of how likely they are.
type division struct {
	sides
	weight float64
}

// divisions divides the ring into sides in the ways that the sightings bear
// out: each side takes an offset, a slant and a corner (Schwarz 1978, Ann.
// Statist. 6:461-464).
func (t traverse) divisions(laps []lap, ring meanRing, b belief) []division {
	const worseInRow = 6
	best, worse := math.Inf(-1), 0
	var all []division
	for _, s := range ring.divisions() {
		seen := t.sightings(laps, ring, s, false)
		if len(seen) <= 3*len(s.line) || worse >= worseInRow {
			break
		}
		var logs []float64
		for _, l := range trials() {
			f := l.fitted(seen, len(s.line))
			logs = append(logs, f.full+b.log(f.variance))
		}
		d := division{s, logSum(logs) - s.parameters()/2*math.Log(float64(len(seen)))}
		worse++
		if d.weight > best {
			best, worse = d.weight, 0
		}
		all = append(all, d)
	}
	return slices.DeleteFunc(all, func(d division) bool { return d.weight < best-leastLikely })
}

const (
	// divisionPower is how far the likelihood of a division is trusted: fixes that
	// hang together are fewer than they look, and none of the trial laws is the
	// receiver's (power likelihood: Holmes & Walker 2017, Biometrika 104:497-503;
	// the power is from own trials).
	divisionPower = 0.67
	// leastLikely is the log of how much less likely than another a division may
	// be that is looked at.
	leastLikely = 10
)

// parameters counts what the sides take: each an offset, a slant and a corner,
// an arc also its bow. A piece of a curve goes on from the one before, and
// takes its bow and its length.
func (s sides) parameters() float64 {
	n := 0
	for _, l := range s.line {
		switch {
		case l.joins:
			n += 2
		case l.arc:
			n += 4
		default:
			n += 3
		}
	}
	return float64(n)
}

// sightings returns the stations of all laps as seen across their sides, in
// order of time, those near corners only if not clear. Of many stations some
// do; and of those of a quiet receiver, whose fixes within a second or two show
// the walker's gait and the receiver's filter rather than its error.
func (t traverse) sightings(laps []lap, ring meanRing, s sides, clear bool) []sighting {
	const most = 600
	count := 0
	for _, l := range laps {
		count += len(l.stations)
	}
	every := 1 + count/most
	if t.jitter < quietJitter.Value {
		apart := int(math.Round(quietTime.Value / t.path.interval))
		every = max(every, min(apart, count/(2*fewestSightings)))
	}
	var all []sighting
	seen := make(map[int]bool, most)
	for k, l := range laps {
		for i := 0; i < len(l.stations); i += every {
			at := int(ring.phase[k][i]) % len(s.of)
			if seen[l.stations[i]] || clear && s.corner[at] {
				continue
			}
			seen[l.stations[i]] = true
			all = append(all, s.line[s.of[at]].sighting(t.path.stations[l.stations[i]], s.of[at]))
		}
	}
	slices.SortStableFunc(all, func(a, b sighting) int { return cmp.Compare(a.time, b.time) })
	return all
}

// sighting sees a station across a side.
func (s side) sighting(st station, number int) sighting {
	off, across := st.at.Minus(s.middle), turnedRight(s.along)
	seen := sighting{
		time: (st.time + st.until) / 2, dir: across, side: number,
		off: off.Dot(across), along: off.Dot(s.along) / s.half,
	}
	if s.arc {
		seen.bow = 1 - seen.along*seen.along
	}
	return seen
}

// A mixture is the error of the area under each law, and how the laws weigh.
type mixture struct {
	laws   []law
	fits   []fit
	area   []float64 // variance, m4
	weight []float64 // log
	sway   float64   // variance of the area from the walker's own deviations, m4
}

func (m *mixture) add(c candidate, f fit, area, weight float64) {
	m.laws, m.fits = append(m.laws, c.law), append(m.fits, f)
	m.area, m.weight = append(m.area, area), append(m.weight, weight)
}

// normal95 holds 95 % of a normal distribution, in sigmas.
const normal95 = 1.959964

// estimate mixes what follows from each law. The noise is that within a span
// of time: what fades more slowly moves all fixes alike.
func (m *mixture) estimate(span float64) estimate {
	share := normalised(m.weight)
	var area, scatter, white, slow, reach float64
	for i, s := range share {
		l, v := m.laws[i], m.fits[i].variance
		area += s * (m.area[i] + m.sway)
		white += s * v * l.white
		scatter += s * v * l.scatter(span)
		if r := l.reach(); r > 0 {
			slow, reach = slow+s, reach+s*math.Log(r)
		}
	}
	e := estimate{sigma: math.Sqrt(area), noise: Noise{Sigma: geo.Length(math.Sqrt(scatter)), White: min(1, white/scatter)}}
	if slow > 1e-3 {
		e.noise.Reach = math.Exp(reach / slow)
	}
	e.ci95 = m.halfWidth(share, e.sigma)
	return e
}

// halfWidth returns half of the central 95 % interval of a mixture of normal
// distributions, widened as Student's is for the freedom left (expansion of
// its quantile, Abramowitz & Stegun 1964, 26.7.5).
func (m *mixture) halfWidth(share []float64, sigma float64) float64 {
	lo, hi := 0.0, 30*sigma
	for range 60 {
		mid := (lo + hi) / 2
		var outside float64
		for i, s := range share {
			student := 1 + (normal95*normal95+1)/(4*m.fits[i].freedom)
			outside += s * math.Erfc(mid/(student*math.Sqrt(2*(m.area[i]+m.sway))))
		}
		if outside > 0.05 {
			lo = mid
		} else {
			hi = mid
		}
	}
	return hi
}

// logSum is the log of the sum of numbers whose logs are given.
func logSum(logs []float64) float64 {
	top := slices.Max(logs)
	var sum float64
	for _, l := range logs {
		sum += math.Exp(l - top)
	}
	return top + math.Log(sum)
}

// normalised turns logs of weights into shares.
func normalised(logs []float64) []float64 {
	top := slices.Max(logs)
	share := make([]float64, len(logs))
	var sum float64
	for i, l := range logs {
		share[i] = math.Exp(l - top)
		sum += share[i]
	}
	for i := range share {
		share[i] /= sum
	}
	return share
}
