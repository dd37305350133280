package track

import (
	"math"
	"testing"

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
	errors []geo.XY // of each tick
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
	o.ticks, o.errors = append(o.ticks, k), append(o.errors, err)
	o.seen = append(o.seen, sighting{time: k.time, dir: across, off: err.Dot(across), side: side, along: (at-starts[side])/half - 1})
}

// covered returns how often each piece of the ring of about half a metre was
// seen: its middle lies between two fixes one after the other.
func (o *observer) covered() func(way float64) float64 {
	length := ringLength(o.ring)
	pieces := int(2 * length)
	step := length / float64(pieces)
	count := make([]float64, pieces)
	for i := 1; i < len(o.ticks); i++ {
		from, to := o.ticks[i-1].way, o.ticks[i].way
		for k := int(math.Ceil(from/step - 0.5)); to-from < unseenWay && (float64(k)+0.5)*step < to; k++ {
			count[k%pieces]++
		}
	}
	return func(way float64) float64 { return count[int(way/step)%pieces] }
}

// unseenWay is how far apart two fixes are between which some were lost, m.
const unseenWay = 5

// gradient is that of its area: of each piece of the edge it takes the mean of
// the laps on which that was seen, and what none saw is joined straight.
func (o *observer) gradient() gradient {
	n := len(o.ticks)
	covered := o.covered()
	length := ringLength(o.ring)
	edge := make([]geo.XY, n) // from each tick to the next, by its share
	for i, from := range o.ticks {
		to := o.ticks[(i+1)%n]
		way := math.Mod(to.way-from.way+float64(o.laps+1)*length, length)
		switch {
		case i+1 < n && to.way-from.way < unseenWay:
			edge[i] = to.at.Minus(from.at).Times(1 / max(1, covered(from.way+way/2)))
		case unseen(from.way, way, covered):
			edge[i] = to.at.Minus(from.at)
		}
	}
	var g gradient
	for i, k := range o.ticks {
		g.by = append(g.by, turnedRight(edge[i].Plus(edge[(i+n-1)%n])).Times(0.5))
		g.time = append(g.time, k.time)
	}
	return g
}

// unseen reports whether no lap saw most of a stretch.
func unseen(from, length float64, covered func(float64) float64) bool {
	const pieces = 40
	none := 0
	for k := range pieces {
		if covered(from+length*(float64(k)+0.5)/pieces) == 0 {
			none++
		}
	}
	return 2*none > pieces
}

// interval returns half of its 95 % interval of the area, and by how much its
// area errs, to first order.
func (o *observer) interval() (half, off float64) {
	if len(o.seen) < fewestSightings/2 {
		return 0, 0
	}
	g := o.gradient()
	for i, d := range g.by {
		off += d.Dot(o.errors[i])
	}
	bins := g.binned()
	var m mixture
	for _, c := range observedLaws() {
		f := c.law.fitted(o.seen, len(o.starts())-1)
		m.add(c, f, f.variance*bins.variance(c.law), c.weight+f.restricted+o.belief.log(f.variance))
	}
	return m.estimate(o.seen[len(o.seen)-1].time - o.seen[0].time).ci95, off
}

// TestObserverOfALostMinute: whatever was seen how often, all of the edge counts
// once: an area grows with the square of its edge.
func TestObserverOfALostMinute(t *testing.T) {
	ring := rectangle(40, 30)
	for _, tt := range []struct {
		name     string
		laps     float64
		from, to float64 // way lost, m
	}{
		{"one lap", 1, 0, 0},
		{"two laps", 2, 0, 0},
		{"half of the second lost", 2, 150, 220},
		{"the end of the first and the start of the second lost", 2, 100, 180},
		{"stops early", 1.99, 0, 0},
		{"goes on for a while", 2.05, 0, 0},
	} {
		o := observer{ring: ring, laps: int(math.Ceil(tt.laps - 0.1))}
		for way := 0.0; way < tt.laps*140; way += 1.1 {
			if way <= tt.from || way >= tt.to {
				o.see(tick{at: placeOn(ring, way), way: way, time: way}, geo.XY{})
			}
		}
		var twice float64
		for i, d := range o.gradient().by {
			twice += d.Dot(o.ticks[i].at)
		}
		if math.Abs(twice/2-1200) > 0.02*1200 {
			t.Errorf("%s: %.1f m2, want 1200 within 2 %%", tt.name, twice/2)
		}
	}
}
