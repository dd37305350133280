package lanes

import (
	"math"

	"example.org/turfplat/geo"
)

func plus(p, q geo.XY) geo.XY              { return geo.XY{X: p.X + q.X, Y: p.Y + q.Y} }
func minus(p, q geo.XY) geo.XY             { return geo.XY{X: p.X - q.X, Y: p.Y - q.Y} }
func times(p geo.XY, k float64) geo.XY     { return geo.XY{X: p.X * k, Y: p.Y * k} }
func dot(p, q geo.XY) float64              { return p.X*q.X + p.Y*q.Y }
func cross(p, q geo.XY) float64            { return p.X*q.Y - p.Y*q.X }
func norm(p geo.XY) float64                { return math.Hypot(p.X, p.Y) }
func distance(p, q geo.XY) float64         { return norm(minus(p, q)) }
func unit(p geo.XY) geo.XY                 { return times(p, 1/norm(p)) }
func toward(p, q geo.XY, t float64) geo.XY { return plus(p, times(minus(q, p), t)) }

// length is the length of a line, m.
func length(l geo.Line) float64 {
	var sum float64
	for i := 1; i < len(l); i++ {
		sum += distance(l[i-1], l[i])
	}
	return sum
}

// sightOf returns where, as shares of the two ways, the line from a to b
// crosses that from c to d. False if they run alike.
func sightOf(a, b, c, d geo.XY) (t, s float64, ok bool) {
	way, edge := minus(b, a), minus(d, c)
	turn := cross(way, edge)
	if turn == 0 {
		return 0, 0, false
	}
	from := minus(c, a)
	return cross(from, edge) / turn, cross(from, way) / turn, true
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
		in, out := minus(l[i], l[i-1]), minus(l[next], l[i])
		sum += math.Abs(math.Atan2(cross(in, out), dot(in, out)))
	}
	return sum
}

// distanceToLine is the way from p to a line.
func distanceToLine(p geo.XY, l geo.Line) float64 {
	nearest := math.Inf(1)
	for i := 1; i < len(l); i++ {
		nearest = min(nearest, distanceToEdge(p, l[i-1], l[i]))
	}
	return nearest
}
