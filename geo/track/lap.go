package track

import (
	"math"
	"slices"

	"example.org/turfplat/geo"
)

// A lap is a way once round something: stations in the order walked, and
// their places.
type lap struct {
	stations []int
	at       []geo.XY
}

// lapOf is a loop as it was walked.
func (t traverse) lapOf(l loop) lap { return lap{slices.Clone(l), t.places(l)} }

// reversed is a lap walked the other way round.
func (l lap) reversed() lap {
	stations, at := slices.Clone(l.stations), slices.Clone(l.at)
	slices.Reverse(stations)
	slices.Reverse(at)
	return lap{stations, at}
}

// area is what a lap goes round, either way.
func (l lap) area() float64 { return math.Abs(signedArea(l.at)) }

// width is that of a long strip of the lap's area and perimeter.
func (l lap) width() float64 { return 2 * l.area() / max(ringLength(l.at), 1e-9) }

// around reports whether a lap goes round a place.
func (l lap) around(p geo.XY) bool {
	within := false
	for i, a := range l.at {
		b := l.at[(i+1)%len(l.at)]
		if (a.Y > p.Y) != (b.Y > p.Y) && (p.X-a.X) < (b.X-a.X)*(p.Y-a.Y)/(b.Y-a.Y) {
			within = !within
		}
	}
	return within
}

// nearest returns the index of the place of a lap that is nearest to p.
func (l lap) nearest(p geo.XY) int {
	best, k := math.Inf(1), 0
	for i, q := range l.at {
		if d := p.Distance(q); d < best {
			best, k = d, i
		}
	}
	return k
}

// turnedTo starts a lap at its station nearest to a place.
func (l lap) turnedTo(p geo.XY) lap {
	k := l.nearest(p)
	return lap{slices.Concat(l.stations[k:], l.stations[:k]), slices.Concat(l.at[k:], l.at[:k])}
}

// bridged puts the stretch of another lap between place k and the next.
func (l lap) bridged(k int, other lap) lap {
	from, to := other.nearest(l.at[k]), other.nearest(l.at[(k+1)%len(l.at)])
	stations, at := slices.Clone(l.stations[:k+1]), slices.Clone(l.at[:k+1])
	for i := from; i != to; i = (i + 1) % len(other.at) {
		stations, at = append(stations, other.stations[i]), append(at, other.at[i])
	}
	return lap{append(stations, l.stations[k+1:]...), append(at, l.at[k+1:]...)}
}

// counterClockwise turns the laps of a ring so that together they go round it
// to the left. Errors may turn a lap of a narrow strip inside out; it is not
// reversed for that, or else strips would come out too wide.
func counterClockwise(laps []lap) []lap {
	var sum float64
	for _, l := range laps {
		sum += signedArea(l.at)
	}
	mean := sum / float64(len(laps))
	out := make([]lap, len(laps))
	for i, l := range laps {
		other := signedArea(l.at)*mean < 0 && l.area() > math.Abs(mean)/2
		if other != (mean < 0) {
			l = l.reversed()
		}
		out[i] = l
	}
	return out
}

// ringPlaces are enough of a ring to tell what runs along it.
const ringPlaces = 64

// sameRing reports whether two laps keep near each other all the way, or cross
// and go round the same ground for the most part: two lawns do not, nor does a
// bed cross the lawn around it.
func sameRing(a, b lap, gate float64) bool {
	if middle(a.at).Distance(middle(b.at)) > 2*gate {
		return false
	}
	within := min(gate, max(gate/2, math.Sqrt(max(a.area(), b.area()))/4))
	p, q := resampled(a.at, ringPlaces), resampled(b.at, ringPlaces)
	if apart(p, q) <= within && apart(q, p) <= within {
		return true
	}
	both, inA, inB := shared(p, q)
	smaller, all := min(inA, inB), inA+inB-both
	return both > sharedGround.Value*all && smaller-both > crossShare.Value*smaller
}

// middle is the mean of places.
func middle(places []geo.XY) geo.XY {
	var sum geo.XY
	for _, p := range places {
		sum = sum.Plus(p)
	}
	return sum.Times(1 / float64(len(places)))
}

// pieceOf reports whether most of a lap runs along a larger one.
func pieceOf(l, larger lap, gate float64) bool {
	if l.area() >= larger.area() {
		return false
	}
	beside := 0
	ring := resampled(larger.at, ringPlaces)
	for _, p := range resampled(l.at, ringPlaces) {
		if near(p, ring) <= gate/2 {
			beside++
		}
	}
	return float64(beside) > pieceShare.Value*ringPlaces
}

// apart is the mean distance of places from a ring.
func apart(places, ring []geo.XY) float64 {
	var sum float64
	for _, p := range places {
		sum += near(p, ring)
	}
	return sum / float64(len(places))
}

// near is the distance of a place from a ring.
func near(p geo.XY, ring []geo.XY) float64 {
	best := math.Inf(1)
	for i, a := range ring {
		d := fromEdge(p, a, ring[(i+1)%len(ring)])
		best = min(best, d.Dot(d))
	}
	return math.Sqrt(best)
}

// fromEdge is the way from the edge a-b to p.
func fromEdge(p, a, b geo.XY) geo.XY {
	u, v := b.Minus(a), p.Minus(a)
	s := v.Dot(u) / max(u.Dot(u), 1e-18)
	return v.Minus(u.Times(min(1, max(0, s))))
}

// resampled returns n places along a ring at equal steps from its first.
func resampled(ring []geo.XY, n int) []geo.XY {
	out := make([]geo.XY, 0, n)
	step := ringLength(ring) / float64(n)
	var before float64 // way to the start of edge i
	for i, a := range ring {
		b := ring[(i+1)%len(ring)]
		d := a.Distance(b)
		for len(out) < n && d > 0 && float64(len(out))*step <= before+d {
			out = append(out, a.Plus(b.Minus(a).Times((float64(len(out))*step-before)/d)))
		}
		before += d
	}
	for len(out) < n {
		out = append(out, ring[0])
	}
	return out
}
