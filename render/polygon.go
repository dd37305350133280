package render

import "math"

// Ring is a closed chain of straight edges; the first point is not repeated.
type Ring []Point

// Polygon is an area of a sheet: rings wound counter-clockwise round it and
// clockwise round its holes. It may be in several pieces. Rings must not cross.
type Polygon []Ring

// Lines returns the rings as closed lines, ready for a [Path].
func (p Polygon) Lines() []Line {
	lines := make([]Line, len(p))
	for i, ring := range p {
		lines[i] = Line{ring, true}
	}
	return lines
}

// Area returns the area in square millimetres.
func (p Polygon) Area() float64 {
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
func (p Polygon) edges(visit func(a, b Point)) {
	for _, ring := range p {
		for i, a := range ring {
			visit(a, ring.next(i))
		}
	}
}

func (r Ring) next(i int) Point {
	if i++; i == len(r) {
		i = 0
	}
	return r[i]
}

// Rect is an upright rectangle.
type Rect struct{ Min, Max Point }

// Bounds returns the rectangle round the polygon; that of an empty polygon is
// the zero value.
func (p Polygon) Bounds() Rect {
	bounds := Rect{Point{math.Inf(1), math.Inf(1)}, Point{math.Inf(-1), math.Inf(-1)}}
	p.edges(func(a, _ Point) {
		bounds.Min = Point{min(bounds.Min.X, a.X), min(bounds.Min.Y, a.Y)}
		bounds.Max = Point{max(bounds.Max.X, a.X), max(bounds.Max.Y, a.Y)}
	})
	if bounds.Min.X > bounds.Max.X {
		return Rect{}
	}
	return bounds
}

// Width returns the extent across.
func (r Rect) Width() float64 { return r.Max.X - r.Min.X }

// Height returns the extent upwards.
func (r Rect) Height() float64 { return r.Max.Y - r.Min.Y }

// Polygon returns the rectangle as an area.
func (r Rect) Polygon() Polygon {
	return Polygon{{r.Min, {r.Max.X, r.Min.Y}, r.Max, {r.Min.X, r.Max.Y}}}
}

// Disc returns a circle as a polygon whose edges lie within 5 micrometres of
// it, finer than any printer's dot. It touches the square round the circle.
func Disc(center Point, radius float64) Polygon {
	const sagitta, least = 0.005, 12
	n := least
	if radius > sagitta {
		quarter := math.Ceil(math.Pi / math.Acos(1-sagitta/radius) / 4)
		n = max(least, 4*int(quarter))
	}
	ring := make(Ring, n)
	for i := range ring {
		ring[i] = center.polar(radius, 2*math.Pi*float64(i)/float64(n))
	}
	return Polygon{ring}
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
