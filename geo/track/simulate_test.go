package track

import (
	"math"
	"math/rand/v2"
	"time"

	"github.com/paulmach/orb"

	"example.org/turfplat/geo"
	"example.org/turfplat/geo/ingest"
)

// A lawn is ground of known shape to walk round.
type lawn struct {
	name  string
	strip bool
	ring  []geo.XY
}

func rectangle(long, short float64) []geo.XY {
	return []geo.XY{{}, {X: long}, {X: long, Y: short}, {Y: short}}
}

// oval returns an ellipse, or a kidney if it is dented.
func oval(a, b, dent float64) []geo.XY {
	ring := make([]geo.XY, 180)
	for i := range ring {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(len(ring)))
		r := 1 - dent*math.Exp(-8*(1-sin))
		ring[i] = geo.XY{X: a * r * cos, Y: b * r * sin}
	}
	return ring
}

func elbow(long, arm float64) []geo.XY {
	return []geo.XY{{}, {X: long}, {X: long, Y: arm}, {X: arm, Y: arm}, {X: arm, Y: long}, {Y: long}}
}

var lawns = []lawn{
	{"8 x 15 m", false, rectangle(15, 8)},
	{"16 x 22 m", false, rectangle(22, 16)},
	{"20 x 30 m", false, rectangle(30, 20)},
	{"L, 600 m2", false, elbow(30, 12.6795)},
	{"oval, 600 m2", false, oval(17, 600/math.Pi/17, 0)},
	{"kidney, 1,200 m2", false, oval(26, 17, 0.35)},
	{"U, 1,500 m2", false, []geo.XY{{}, {X: 50}, {X: 50, Y: 40}, {X: 35, Y: 40}, {X: 35, Y: 15}, {X: 15, Y: 15}, {X: 15, Y: 40}, {Y: 40}}},
	{"40 x 60 m", false, rectangle(60, 40)},
	{"five corners, 5,000 m2", false, []geo.XY{{}, {X: 70, Y: -10}, {X: 95, Y: 30}, {X: 60, Y: 65}, {X: 5, Y: 60}}},
	{"1 ha", false, rectangle(100, 100)},
	{"strip 6 x 50 m", true, rectangle(50, 6)},
	{"strip 5 x 30 m", true, rectangle(30, 5)},
	{"strip 3 x 40 m", true, rectangle(40, 3)},
	{"strip 2 x 60 m", true, rectangle(60, 2)},
}

// A receiver errs by sigma on each axis, by a law, and tells what it tells.
type receiver struct {
	sigma float64
	law   law
	tells string // nothing, HDOP, its error
}

// toldSpread is by how much, by logarithm, a receiver errs about its error.
const toldSpread = 0.25

// A walker goes round a lawn with a receiver.
type walker struct {
	lawn     lawn
	laps     int
	receiver receiver
	leadIn   bool // comes from the truck and goes back to it
	pauses   bool // stands at corners and before the start
	spikes   bool
	lost     bool // no fixes for a minute
}

// A trip is a walk that was walked: its fixes and the truth.
type trip struct {
	fixes    []ingest.Fix
	area     float64 // of the lawn
	linear   float64 // area error to first order, from the errors made
	sigma    float64 // its standard deviation, for whoever knows the receiver's law
	observer float64 // half of the 95 % interval of the observer; 0 if no fixes are left
	observed float64 // by how much the observer's area errs, to first order
}

// A step in time of a trip.
type tick struct {
	at       geo.XY
	time     float64
	lap      int     // -1 on the way there and away
	way      float64 // along the ring as walked
	standing bool
}

func placeOn(ring []geo.XY, way float64) geo.XY {
	way = math.Mod(way, ringLength(ring))
	for i, p := range ring {
		q := ring[(i+1)%len(ring)]
		d := p.Distance(q)
		if way <= d {
			return p.Plus(q.Minus(p).Times(way / d))
		}
		way -= d
	}
	return ring[0]
}

// ticks walks the lawn: one tick a second. It returns the ring in the order
// walked as well.
func (w walker) ticks(rng *rand.Rand) (ticks []tick, ring []geo.XY) {
	now := 0.0
	add := func(p geo.XY, lap int, way float64, standing bool) {
		ticks = append(ticks, tick{p, now, lap, way, standing})
		now++
	}
	ring = w.lawn.ring
	length := ringLength(ring)
	if rng.IntN(2) == 0 {
		ring = reversed(ring)
	}
	start, speed := rng.Float64()*length, 0.9+0.5*rng.Float64()
	pace := func() float64 { return speed * (1 + 0.1*rng.NormFloat64()) }
	stand := func(p geo.XY, lap, most int) {
		for range rng.IntN(most) + 3 {
			add(p, lap, 0, true)
		}
	}
	edge := placeOn(ring, start)
	truck := w.lawn.outside(rng, edge)
	go1 := func(from, to geo.XY) {
		d := from.Distance(to)
		for way := 0.0; way < d; way += pace() {
			add(from.Plus(to.Minus(from).Times(way/d)), -1, 0, false)
		}
	}
	if w.leadIn {
		if w.pauses {
			stand(truck, -1, 30)
		}
		go1(truck, edge)
	}
	total := length*float64(w.laps) + 4*rng.Float64() - 1
	for way := 0.0; way < total; {
		lap := int(way / length)
		add(placeOn(ring, start+way), lap, start+way, false)
		step := pace()
		if w.pauses && corner(ring, start+way, step) && rng.IntN(3) == 0 {
			stand(placeOn(ring, start+way), lap, 8)
		}
		way += step
	}
	if w.leadIn && rng.IntN(2) == 0 {
		go1(placeOn(ring, start+total), truck)
	}
	return ticks, ring
}

// outside is a place from which the edge can be reached without crossing it.
func (l lawn) outside(rng *rand.Rand, edge geo.XY) geo.XY {
	region, err := geo.RegionOf([]geo.Ring{l.ring})
	if err != nil {
		panic(err)
	}
	for far := 10 + 20*rng.Float64(); ; far *= 0.9 {
		sin, cos := math.Sincos(2 * math.Pi * rng.Float64())
		way := geo.XY{X: cos, Y: sin}
		clear := true
		for d := 0.5; d <= far; d += 0.5 {
			clear = clear && !region.Contains(edge.Plus(way.Times(d)))
		}
		if clear {
			return edge.Plus(way.Times(far))
		}
	}
}

func reversed(ring []geo.XY) []geo.XY {
	out := make([]geo.XY, len(ring))
	for i, p := range ring {
		out[len(ring)-1-i] = p
	}
	return out
}

// corner reports whether a ring of few corners has one within a step.
func corner(ring []geo.XY, way, step float64) bool {
	if len(ring) > 20 {
		return false
	}
	a, b, c := placeOn(ring, way), placeOn(ring, way+step/2), placeOn(ring, way+step)
	return a.Distance(c) < a.Distance(b)+b.Distance(c)-0.01
}

// trip walks once.
func (w walker) trip(rng *rand.Rand) trip {
	ticks, ring := w.ticks(rng)
	t := trip{area: math.Abs(signedArea(w.lawn.ring))}
	errors := w.receiver.errors(rng, len(ticks))
	t.linear, t.sigma = w.truth(ticks, errors)
	frame := geo.NewFrame(orb.Point{-93.1, 44.9})
	began := time.Date(2024, 5, 1, 12, 0, 0, 0, time.UTC)
	told := w.receiver.sigma * math.Exp(toldSpread*rng.NormFloat64())
	lostFrom, lostTo := -1, -1
	if w.lost && len(ticks) > 80 {
		lostFrom = 5 + rng.IntN(len(ticks)-70)
		lostTo = lostFrom + 60
	}
	o := observer{ring: ring, belief: belief{sigma: observedSigma, factor: observedFactor}, laps: w.laps}
	if w.receiver.tells == "its error" {
		o.belief = belief{sigma: told, factor: math.Exp(toldSpread)}
	}
	for i, k := range ticks {
		at := k.at.Plus(errors[i])
		if w.spikes && rng.IntN(60) == 0 {
			sin, cos := math.Sincos(2 * math.Pi * rng.Float64())
			at = at.Plus(geo.XY{X: cos, Y: sin}.Times(12 + 30*rng.Float64()))
		}
		if i > lostFrom && i < lostTo {
			continue
		}
		o.see(k, errors[i])
		f := ingest.Fix{At: frame.Place(at), Time: began.Add(time.Duration(k.time) * time.Second), Quality: -1}
		switch w.receiver.tells {
		case "HDOP":
			f.HDOP, f.Quality, f.Satellites = 0.8+0.4*rng.Float64(), 1, 9
		case "its error":
			f.Sigma = told * (1 + 0.05*rng.NormFloat64())
		}
		t.fixes = append(t.fixes, f)
	}
	t.observer, t.observed = o.interval()
	return t
}

// errors returns a receiver's errors at seconds in a row.
func (r receiver) errors(rng *rand.Rand, n int) []geo.XY {
	slow, white := r.sigma*math.Sqrt(1-r.law.white), r.sigma*math.Sqrt(r.law.white)
	rho := 0.0
	if reach := r.law.reach(); reach > 0 {
		rho = math.Exp(-1 / reach)
	}
	fresh := math.Sqrt(1 - rho*rho)
	draw := func() geo.XY { return geo.XY{X: rng.NormFloat64(), Y: rng.NormFloat64()} }
	e := draw()
	out := make([]geo.XY, n)
	for i := range out {
		out[i] = e.Times(slow).Plus(draw().Times(white))
		e = e.Times(rho).Plus(draw().Times(fresh))
	}
	return out
}

// truth returns the area error to first order, and its standard deviation:
// from the true ring and the true law.
func (w walker) truth(ticks []tick, errors []geo.XY) (linear, sigma float64) {
	var g gradient
	winding := 1.0
	var kept []int
	for i, k := range ticks {
		if k.lap >= 0 && k.lap < w.laps && !k.standing {
			kept = append(kept, i)
		}
	}
	for lap := range w.laps {
		var at []geo.XY
		var index []int
		for _, i := range kept {
			if ticks[i].lap == lap {
				at, index = append(at, ticks[i].at), append(index, i)
			}
		}
		if signedArea(at) < 0 {
			winding = -1
		}
		for k, i := range index {
			n := len(at)
			d := turnedRight(at[(k+1)%n].Minus(at[(k+n-1)%n])).Times(winding / 2 / float64(w.laps))
			g.by, g.time = append(g.by, d), append(g.time, ticks[i].time)
			linear += d.Dot(errors[i])
		}
	}
	return linear, w.receiver.sigma * math.Sqrt(g.binned().variance(w.receiver.law))
}

func (t trip) tracks() *ingest.Tracks {
	return &ingest.Tracks{Source: "simulated", Tracks: []ingest.Track{{Segments: [][]ingest.Fix{t.fixes}, Place: ingest.Place{Source: "simulated", Feature: -1}}}}
}
