package render

import "math"

// bands answers whether points lie in a polygon, quickly for polygons of many
// edges: edges are sorted into horizontal bands, and only those of the point's
// band are looked at.
type bands struct {
	bottom, height float64
	edges          [][]edge
}

type edge struct{ a, b Point } // a is not above b

func bandsOf(p polygon) bands {
	var n int
	for _, ring := range p {
		n += len(ring)
	}
	bounds := p.bounds()
	count := 1 + n/4
	s := bands{bottom: bounds.min.Y, height: bounds.height() / float64(count), edges: make([][]edge, count)}
	p.edges(func(a, b Point) {
		if a.Y > b.Y {
			a, b = b, a
		}
		for k := s.band(a.Y); k <= s.band(b.Y); k++ {
			s.edges[k] = append(s.edges[k], edge{a, b})
		}
	})
	return s
}

func (s bands) band(y float64) int {
	if s.height <= 0 {
		return 0
	}
	return min(len(s.edges)-1, max(0, int(math.Floor((y-s.bottom)/s.height))))
}

// holds reports whether q lies in the polygon, by counting the edges to the
// right of it.
func (s bands) holds(q Point) bool {
	in := false
	for _, e := range s.edges[s.band(q.Y)] {
		if e.a.Y <= q.Y && q.Y < e.b.Y && q.X < e.a.X+(e.b.X-e.a.X)*(q.Y-e.a.Y)/(e.b.Y-e.a.Y) {
			in = !in
		}
	}
	return in
}
