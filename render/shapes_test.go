package render

import (
	"math"

	"pgregory.net/rapid"
)

// starShaped draws a polygon of 3 to 40 vertices about a point, with a hole
// half its size where asked.
func starShaped(t *rapid.T) polygon {
	n := rapid.IntRange(3, 40).Draw(t, "vertices")
	center := Point{rapid.Float64Range(60, 150).Draw(t, "x"), rapid.Float64Range(60, 150).Draw(t, "y")}
	radius := rapid.Float64Range(5, 50).Draw(t, "radius")
	shell := make(ring, n)
	for i := range shell {
		r := radius * rapid.Float64Range(0.4, 1).Draw(t, "r")
		shell[i] = center.polar(r, 2*math.Pi*float64(i)/float64(n))
	}
	if !rapid.Bool().Draw(t, "hole") {
		return polygon{shell}
	}
	hole := make(ring, n)
	for i, p := range shell {
		hole[n-1-i] = Point{(p.X + center.X) / 2, (p.Y + center.Y) / 2}
	}
	return polygon{shell, hole}
}

// contains counts crossings over all edges, apart from the code under test.
func (p polygon) contains(q Point) bool {
	in := false
	p.edges(func(a, b Point) {
		if (a.Y > q.Y) != (b.Y > q.Y) && q.X < (b.X-a.X)*(q.Y-a.Y)/(b.Y-a.Y)+a.X {
			in = !in
		}
	})
	return in
}

func (p polygon) perimeter() (sum float64) {
	p.edges(func(a, b Point) { sum += math.Hypot(b.X-a.X, b.Y-a.Y) })
	return sum
}

// edgeDistance is the distance of q from the nearest edge.
func (p polygon) edgeDistance(q Point) float64 {
	nearest := math.Inf(1)
	p.edges(func(a, b Point) { nearest = min(nearest, math.Sqrt(squaredDistance(q, a, b))) })
	return nearest
}

// wobbly is a disc of n vertices with a rough edge.
func wobbly(n int, center Point, radius float64) polygon {
	ring := make(ring, n)
	for i := range ring {
		turn := 2 * math.Pi * float64(i) / float64(n)
		ring[i] = center.polar(radius*(1+0.08*math.Sin(17*turn)+0.02*math.Sin(91*turn)), turn)
	}
	return polygon{ring}
}

func box(x, y, side float64) polygon {
	return rect{Point{x, y}, Point{x + side, y + side}}.polygon()
}

func lengthOf(lines []Line) (sum float64) {
	for _, line := range lines {
		for i := 1; i < len(line.Points); i++ {
			a, b := line.Points[i-1], line.Points[i]
			sum += math.Hypot(b.X-a.X, b.Y-a.Y)
		}
	}
	return sum
}
