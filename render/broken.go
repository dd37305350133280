package render

// broken returns the parts of lines that lie on none of the plates, so that
// what stands on these can be read.
func (b *board) broken(lines []Line) []Line {
	var shown []Line
	for _, line := range lines {
		var run []Point
		end := func() {
			if len(run) > 1 {
				shown = append(shown, Line{Points: run})
			}
			run = nil
		}
		for i := 1; i < len(line.Points); i++ {
			p, q := line.Points[i-1], line.Points[i]
			clear := b.clearOf(p, q)
			if len(clear) == 0 {
				end()
			}
			for _, part := range clear {
				from, to := between(p, q, part.from), between(p, q, part.to)
				if part.from > 0 || run == nil {
					end()
					run = []Point{from}
				}
				run = append(run, to)
				if part.to < 1 {
					end()
				}
			}
		}
		end()
	}
	return shown
}

// A stretch is a part of an edge, in shares of its length.
type stretch struct{ from, to float64 }

// clearOf returns the parts of an edge on none of the plates, in order.
func (b *board) clearOf(p, q Point) []stretch {
	parts := []stretch{{0, 1}}
	around := boundsOf(p, q)
	for _, t := range b.taken {
		if !t.box.meets(around) {
			continue
		}
		under, crossed := t.under(p, q)
		if !crossed {
			continue
		}
		var left []stretch
		for _, part := range parts {
			if part.from < under.from {
				left = append(left, stretch{part.from, min(part.to, under.from)})
			}
			if part.to > under.to {
				left = append(left, stretch{max(part.from, under.to), part.to})
			}
		}
		parts = left
	}
	return parts
}

// under returns the part of an edge that a plate covers (Cyrus and Beck 1978,
// Computers & Graphics 3:23).
func (p plate) under(a, b Point) (stretch, bool) {
	part := stretch{0, 1}
	for i, corner := range p {
		next := p[(i+1)%len(p)]
		inside := func(q Point) float64 {
			return (next.X-corner.X)*(q.Y-corner.Y) - (next.Y-corner.Y)*(q.X-corner.X)
		}
		at, change := inside(a), inside(b)-inside(a)
		switch cross := -at / change; {
		case change > 0:
			part.from = max(part.from, cross)
		case change < 0:
			part.to = min(part.to, cross)
		case at < 0:
			return stretch{}, false
		}
	}
	return part, part.from < part.to
}

// boundsOf is the rectangle round points.
func boundsOf(points ...Point) rect {
	r := rect{points[0], points[0]}
	for _, p := range points[1:] {
		r.min = Point{min(r.min.X, p.X), min(r.min.Y, p.Y)}
		r.max = Point{max(r.max.X, p.X), max(r.max.Y, p.Y)}
	}
	return r
}

// meets reports whether two rectangles share a point.
func (r rect) meets(o rect) bool {
	return r.min.X <= o.max.X && o.min.X <= r.max.X && r.min.Y <= o.max.Y && o.min.Y <= r.max.Y
}
