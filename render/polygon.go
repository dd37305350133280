package render

import "math"

// ring is a closed chain of straight edges; the first point is not repeated.
type ring []Point

// polygon is an area of a sheet: rings wound counter-clockwise round it and
// clockwise round its holes. It may be in several pieces. Rings must not cross.
type polygon []ring

// lines returns the rings as closed lines, ready for a [Path].
func (p polygon) lines() []Line {
	lines := make([]Line, len(p))
	for i, ring := range p {
		lines[i] = Line{ring, true}
	}
	return lines
}

// area returns the area in square millimetres.
func (p polygon) area() float64 {
	var double float64
	for _, ring := range p {
		for i, a := range ring {
			b := ring.next(i)
			double += (a.X-ring[0].X)*(b.Y-ring[0].Y) - (a.Y-ring[0].Y)*(b.X-ring[0].X)
		}
	}
	return double / 2
}

// edges calls visit for each edge of the polygon.
func (p polygon) edges(visit func(a, b Point)) {
	for _, ring := range p {
		for i, a := range ring {
			visit(a, ring.next(i))
		}
	}
}

func (r ring) next(i int) Point {
	if i++; i == len(r) {
		i = 0
	}
	return r[i]
}

// rect is an upright rectangle.
type rect struct{ min, max Point }

// bounds returns the rectangle round the polygon; that of an empty polygon is
// the zero value.
func (p polygon) bounds() rect {
	bounds := rect{Point{math.Inf(1), math.Inf(1)}, Point{math.Inf(-1), math.Inf(-1)}}
	p.edges(func(a, _ Point) {
		bounds.min = Point{min(bounds.min.X, a.X), min(bounds.min.Y, a.Y)}
		bounds.max = Point{max(bounds.max.X, a.X), max(bounds.max.Y, a.Y)}
	})
	if bounds.min.X > bounds.max.X {
		return rect{}
	}
	return bounds
}

// width returns the extent across.
func (r rect) width() float64 { return r.max.X - r.min.X }

// height returns the extent upwards.
func (r rect) height() float64 { return r.max.Y - r.min.Y }

// polygon returns the rectangle as an area.
func (r rect) polygon() polygon {
	return polygon{{r.min, {r.max.X, r.min.Y}, r.max, {r.min.X, r.max.Y}}}
}

// disc returns a circle as a polygon whose edges lie within 5 micrometres of
// it, finer than any printer's dot. It touches the square round the circle.
func disc(center Point, radius float64) polygon {
	const sagitta, least = 0.005, 12
	n := least
	if radius > sagitta {
		quarter := math.Ceil(math.Pi / math.Acos(1-sagitta/radius) / 4)
		n = max(least, 4*int(quarter))
	}
	ring := make(ring, n)
	for i := range ring {
		ring[i] = center.polar(radius, 2*math.Pi*float64(i)/float64(n))
	}
	return polygon{ring}
}

// polar returns the point at a distance and a direction, in radians
// counter-clockwise from the right.
func (p Point) polar(distance, direction float64) Point {
	sin, cos := math.Sincos(direction)
	return Point{p.X + distance*cos, p.Y + distance*sin}
}

func (p Point) plus(dx, dy float64) Point { return Point{p.X + dx, p.Y + dy} }

// rotated returns the point turned about the origin.
func (p Point) rotated(sin, cos float64) Point {
	return Point{p.X*cos - p.Y*sin, p.X*sin + p.Y*cos}
}

// turned returns the point turned about the origin by degrees
// counter-clockwise.
func (p Point) turned(degrees float64) Point {
	if degrees == 0 {
		return p
	}
	sin, cos := math.Sincos(degrees * math.Pi / 180)
	return p.rotated(sin, cos)
}
