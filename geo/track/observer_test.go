package track

import (
	"math"

	"example.org/turfplat/geo"
)

// An observer sees the fixes of a simulated walk as nobody can: it is told
// where each fix was taken, the shape of the lawn, where its corners are, which
// fixes belong to which lap, and from which family receivers are drawn. Like
// everybody it is not told which of them this one is, nor where the edge lies:
// what a fix errs along with all others of its side it cannot see. Its interval
// is the one to be compared with: laws weighed by how well they explain what is
// seen (restricted likelihood), times how often they are drawn. No track gives
// away as much, so that no interval made of a track alone can be expected to be
// narrower and as honest.
type observer struct {
	ring   []geo.XY // as walked
	belief belief
	laps   int
	seen   []sighting
	ticks  []tick
}

// Of receivers that tell nothing the observer knows the mean and the spread, by
// logarithm, of those that are drawn: 0.5, 1, 2 and 3 m.
const observedSigma, observedFactor = 1.32, 1.96

// observedLaws are those of the receivers that are drawn, one in five of them
// white; of the others it is told that they reach from 5 to 120 s.
func observedLaws() []candidate {
	all := []candidate{{white, math.Log(0.2)}}
	reaches := spread(5, 120, 9)
	for _, l := range each(reaches, func(reach float64) law { return rough(reach, 0.3) }) {
		all = append(all, candidate{l, math.Log(0.8 / float64(len(reaches)))})
	}
	return all
}

// curvePieces are how many sides a curve is seen as.
const curvePieces = 12

// starts returns where along the ring its sides begin, and its length last.
func (o *observer) starts() []float64 {
	n := len(o.ring)
	every := 1
	if n > 20 {
		every = n / curvePieces
	}
	var starts []float64
	var way float64
	for i, p := range o.ring {
		if i%every == 0 {
			starts = append(starts, way)
		}
		way += p.Distance(o.ring[(i+1)%n])
	}
	return append(starts, way)
}

// see takes in a fix that was not lost, and by how much it errs.
func (o *observer) see(k tick, err geo.XY) {
	if k.lap < 0 || k.standing {
		return
	}
	starts := o.starts()
	last := len(starts) - 2
	at := math.Mod(k.way, starts[last+1])
	side := 0
	for side < last && at >= starts[side+1] {
		side++
	}
	edge := placeOn(o.ring, at+0.01).Minus(placeOn(o.ring, at))
	across := turnedRight(edge).Times(1 / edge.Norm())
	half := (starts[side+1] - starts[side]) / 2
	o.ticks = append(o.ticks, k)
	o.seen = append(o.seen, sighting{time: k.time, dir: across, off: err.Dot(across), side: side, along: (at-starts[side])/half - 1})
}

// interval returns half of its 95 % interval of the area.
func (o *observer) interval() float64 {
	if len(o.seen) < fewestSightings/2 {
		return 0
	}
	var g gradient
	for lap := range o.laps {
		var of []tick
		for _, k := range o.ticks {
			if k.lap == lap {
				of = append(of, k)
			}
		}
		n := len(of)
		for i, k := range of {
			g.by = append(g.by, turnedRight(of[(i+1)%n].at.Minus(of[(i+n-1)%n].at)).Times(0.5/float64(o.laps)))
			g.time = append(g.time, k.time)
		}
	}
	bins := g.binned()
	var m mixture
	for _, c := range observedLaws() {
		f := c.law.fitted(o.seen, len(o.starts())-1)
		m.add(c, f, f.variance*bins.variance(c.law), c.weight+f.restricted+o.belief.log(f.variance))
	}
	return m.estimate(o.seen[len(o.seen)-1].time - o.seen[0].time).ci95
}
