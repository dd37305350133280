package lanes

import (
	"math"

	"example.org/turfplat/geo"
)

func unit(p geo.XY) geo.XY { return p.Times(1 / p.Norm()) }

// length is the length of a line, m.
func length(l geo.Line) float64 {
	var sum float64
	for i := 1; i < len(l); i++ {
		sum += l[i-1].Distance(l[i])
	}
	return sum
}

// sightOf returns where, as shares of the two ways, the line from a to b
// crosses that from c to d. False if they run alike.
func sightOf(a, b, c, d geo.XY) (t, s float64, ok bool) {
	way, edge := b.Minus(a), d.Minus(c)
	turn := way.Cross(edge)
	if turn == 0 {
		return 0, 0, false
	}
	from := c.Minus(a)
	return from.Cross(edge) / turn, from.Cross(way) / turn, true
}

// edgesOf calls visit for each edge of a region; the region lies to the left.
func edgesOf(r geo.Region, visit func(a, b geo.XY)) {
	for _, p := range r.Polygons() {
		for _, ring := range p.Rings() {
			for i, a := range ring {
				visit(a, ring[(i+1)%len(ring)])
			}
		}
	}
}

// bends is the sum of the angles by which a line turns, in radians, that from
// its end to its start included if it is closed.
func bends(l geo.Line) float64 {
	n := len(l) - 1
	var sum float64
	for i := 1; i <= n; i++ {
		next := i + 1
		if i == n {
			if l[0] != l[n] {
				break
			}
			next = 1
		}
		in, out := l[i].Minus(l[i-1]), l[next].Minus(l[i])
		sum += math.Abs(math.Atan2(in.Cross(out), in.Dot(out)))
	}
	return sum
}

// distanceToLine is the way from p to a line.
func distanceToLine(p geo.XY, l geo.Line) float64 {
	nearest := math.Inf(1)
	for i := 1; i < len(l); i++ {
		nearest = min(nearest, p.DistanceToEdge(l[i-1], l[i]))
	}
	return nearest
}
