package track

import (
	"math"

	"example.org/turfplat/geo"
)

// A gradient tells how an area grows when a station moves.
type gradient struct {
	first int       // station
	by    []geo.XY  // m2/m, of the first station and those after
	time  []float64 // of each
}

// lapArea returns the mean area of laps and its gradient by the stations as
// they were before smoothing.
func (t traverse) lapArea(laps []lap) (float64, gradient) {
	first, last := laps[0].stations[0], 0
	for _, l := range laps {
		for _, s := range l.stations {
			first, last = min(first, s), max(last, s)
		}
	}
	// The smoother reaches a few stations farther.
	first, _ = t.smooth.window(first)
	_, last = t.smooth.window(last)
	g := gradient{first: first, by: make([]geo.XY, last-first+1), time: make([]float64, last-first+1)}
	for i := range g.time {
		s := t.path.stations[first+i]
		g.time[i] = (s.time + s.until) / 2
	}
	share := 1 / float64(len(laps))
	spread := 1 // to which neighbours the edge is taken
	if t.smooth.half > 0 {
		spread = 2 // or the errors of the edge itself count twice
	}
	var area float64
	for _, l := range laps {
		area += share * signedArea(l.at)
		n := len(l.at)
		for k, s := range l.stations {
			across := turnedRight(l.at[(k+spread)%n].Minus(l.at[(k+n-spread)%n])).Times(share / float64(2*spread))
			t.smooth.weights(s, func(j int, weight float64) {
				g.by[j-first] = g.by[j-first].Plus(across.Times(weight))
			})
		}
	}
	return area, g
}

// binned is a gradient summed over spells of time, which errors that fade
// slowly do not tell apart.
type binned struct {
	gradient
	white float64 // sum of the squares before
}

// binned returns the gradient in at most a few thousand bins.
func (g gradient) binned() binned {
	const most = 4000
	b := binned{gradient: gradient{}}
	every := 1 + len(g.by)/most
	for i := 0; i < len(g.by); i += every {
		var sum geo.XY
		for _, d := range g.by[i:min(i+every, len(g.by))] {
			sum = sum.Plus(d)
			b.white += d.Dot(d)
		}
		b.by = append(b.by, sum)
		b.time = append(b.time, g.time[i])
	}
	return b
}

// variance returns g'Cg: the variance of the area, m4, for errors of unit
// variance on each axis that follow a law (Bogaert, Delince & Kay 2005, Meas.
// Sci. Technol. 16:1170-1178; from memory). The gradient is taken at the
// places as walked, errors included, which covers the term of second order.
func (b binned) variance(l law) float64 {
	sum := l.white * b.white
	for _, p := range l.parts {
		sum += p.share * b.partVariance(p)
	}
	return sum
}

// partVariance is variance for one part of a law, of unit share. It runs up
// sums over what came before, faded; for a smooth part also with their age.
func (b binned) partVariance(p part) float64 {
	var own, pairs float64
	var sum, aged geo.XY
	for i, d := range b.by {
		if i > 0 {
			u := (b.time[i] - b.time[i-1]) / p.reach
			fade := math.Exp(-u)
			sum = sum.Plus(b.by[i-1])
			aged = aged.Plus(sum.Times(u)).Times(fade)
			sum = sum.Times(fade)
		}
		own += d.Dot(d)
		pairs += d.Dot(sum)
		if p.smooth {
			pairs += d.Dot(aged)
		}
	}
	return own + 2*pairs
}
