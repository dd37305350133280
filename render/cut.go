package render

// cutTo returns paths as far as they lie in a rectangle; texts stay as they
// are.
func cutTo(r rect, elements []Element) []Element {
	var cut []Element
	for _, e := range elements {
		switch e := e.(type) {
		case Group:
			e.Elements = cutTo(r, e.Elements)
			cut = append(cut, e)
		case Path:
			cut = append(cut, r.cut(e)...)
		default:
			cut = append(cut, e)
		}
	}
	return cut
}

// cut parts a path that leaves the rectangle into its fill and its stroke.
func (r rect) cut(p Path) []Element {
	if r.holdsAll(p.Lines) {
		return []Element{p}
	}
	fill, stroke := p, p
	fill.Lines, fill.Stroke, stroke.Lines, stroke.Fill = nil, Ink{}, nil, Ink{}
	for _, l := range p.Lines {
		if area := r.cutArea(l.Points); len(area) > 2 && !p.Fill.none() {
			fill.Lines = append(fill.Lines, Line{area, true})
		}
		if !p.Stroke.none() {
			stroke.Lines = append(stroke.Lines, r.cutLine(l)...)
		}
	}
	var cut []Element
	for _, part := range []Path{fill, stroke} {
		if len(part.Lines) > 0 {
			cut = append(cut, part)
		}
	}
	return cut
}

func (r rect) holdsAll(lines []Line) bool {
	for _, l := range lines {
		for _, p := range l.Points {
			if !r.holds(p) {
				return false
			}
		}
	}
	return true
}

// halfPlanes tell how far inside each side of the rectangle a point lies.
func (r rect) halfPlanes() [4]func(Point) float64 {
	return [4]func(Point) float64{
		func(p Point) float64 { return p.X - r.min.X },
		func(p Point) float64 { return r.max.X - p.X },
		func(p Point) float64 { return p.Y - r.min.Y },
		func(p Point) float64 { return r.max.Y - p.Y },
	}
}

// cutArea cuts a closed chain side by side (Sutherland and Hodgman 1974).
func (r rect) cutArea(ring []Point) []Point {
	for _, depth := range r.halfPlanes() {
		var kept []Point
		for i, b := range ring {
			a := ring[(i+len(ring)-1)%len(ring)]
			from, to := depth(a), depth(b)
			if (from < 0) != (to < 0) {
				kept = append(kept, between(a, b, from/(from-to)))
			}
			if to >= 0 {
				kept = append(kept, b)
			}
		}
		ring = kept
	}
	return ring
}

// cutLine returns the parts of a line in the rectangle, piece by piece.
func (r rect) cutLine(l Line) []Line {
	points := l.Points
	if l.Closed && len(points) > 0 {
		points = append(points[:len(points):len(points)], points[0])
	}
	window := plate{r.min, {r.max.X, r.min.Y}, r.max, {r.min.X, r.max.Y}}
	var parts []Line
	for i := 1; i < len(points); i++ {
		a, b := points[i-1], points[i]
		shown, some := window.under(a, b)
		if !some {
			continue
		}
		from, to := between(a, b, shown.from), between(a, b, shown.to)
		if n := len(parts); n > 0 && shown.from == 0 && parts[n-1].Points[len(parts[n-1].Points)-1] == from {
			parts[n-1].Points = append(parts[n-1].Points, to)
			continue
		}
		parts = append(parts, Line{Points: []Point{from, to}})
	}
	return parts
}

// between is the point a share of the way from one to another.
func between(a, b Point, share float64) Point {
	switch share {
	case 0:
		return a
	case 1:
		return b
	}
	return Point{a.X + (b.X-a.X)*share, a.Y + (b.Y-a.Y)*share}
}
