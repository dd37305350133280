package sun

import (
	"math"

	"example.org/turfplat/geo"
)

// CrownForm is the form of a tree's crown.
type CrownForm int

// Forms of crowns.
const (
	Ellipsoid CrownForm = iota // broadleaved trees, palms
	Cone                       // needleleaved trees: point up, level base
)

// A Crown is that of a tree on a clear trunk. The trunk's own shade is not
// counted.
type Crown struct {
	At        geo.XY
	Radius    float64 // m
	Base, Top float64
	Form      CrownForm
}

func (c Crown) bodies() []body {
	base, top := aboveSample(c.Base), aboveSample(c.Top)
	if !(c.Radius > 0 && top > base) {
		return nil
	}
	if c.Form == Cone {
		return []body{cone{c.At, c.Radius, base, top}}
	}
	return []body{ellipsoid{c.At, c.Radius, (base + top) / 2, (top - base) / 2}}
}

// An ellipsoid is round in plan; middle is its centre's height above the
// sample, half its height from there up.
type ellipsoid struct {
	at                   geo.XY
	radius, middle, half float64
}

// cast shades an ellipse: as wide as the ellipsoid across the sun, longer
// along it. In each row it is cut by solving its quadratic.
func (e ellipsoid) cast(r *raster, reach geo.XY) {
	center := r.cells(shadowOf(e.at, e.middle, reach))
	a, h := e.radius/r.grid.Step, e.half/r.grid.Step
	along := geo.XY{X: h * reach.X, Y: h * reach.Y}
	wide, high := math.Hypot(a, along.X), math.Hypot(a, along.Y)
	b := geo.Bounds{Min: geo.XY{X: center.X - wide, Y: center.Y - high}, Max: geo.XY{X: center.X + wide, Y: center.Y + high}}
	if !r.begin(b) {
		return
	}
	// With f = a2 + along2, the inside is d.d - (d.along)2/f <= a2.
	f := a*a + along.X*along.X + along.Y*along.Y
	xx, xy, yy := 1-along.X*along.X/f, -along.X*along.Y/f, 1-along.Y*along.Y/f
	for row := r.low; row < r.high; row++ {
		dy := float64(row) - center.Y
		middle := -xy * dy / xx
		if square := middle*middle - (yy*dy*dy-a*a)/xx; square >= 0 {
			root := math.Sqrt(square)
			r.add(row, center.X+middle-root, center.X+middle+root)
		}
	}
}

// A cone stands on a level disc, point up; heights above the sample.
type cone struct {
	at                geo.XY
	radius, base, top float64
}

// cast shades the disc and, where the point's shadow falls outside it, the
// triangle between that and its tangents to the disc.
func (c cone) cast(r *raster, reach geo.XY) {
	center, tip := r.cells(shadowOf(c.at, c.base, reach)), r.cells(shadowOf(c.at, c.top, reach))
	a := c.radius / r.grid.Step
	disc := geo.Bounds{Min: geo.XY{X: center.X - a, Y: center.Y - a}, Max: geo.XY{X: center.X + a, Y: center.Y + a}}
	if !r.begin(disc.With(tip)) {
		return
	}
	r.disc(center, a)
	if away := math.Hypot(tip.X-center.X, tip.Y-center.Y); away > a {
		bearing, open := math.Atan2(tip.Y-center.Y, tip.X-center.X), math.Acos(a/away)
		left, right := onCircle(center, a, bearing+open), onCircle(center, a, bearing-open)
		r.side(tip, left)
		r.side(tip, right)
	}
	r.end()
}

// disc makes a disc part of the outline at work.
func (r *raster) disc(center geo.XY, radius float64) {
	first := max(r.low, int(math.Ceil(center.Y-radius)))
	last := min(r.high-1, int(math.Floor(center.Y+radius)))
	for row := first; row <= last; row++ {
		dy := float64(row) - center.Y
		root := math.Sqrt(max(0, radius*radius-dy*dy))
		r.left[row] = min(r.left[row], center.X-root)
		r.right[row] = max(r.right[row], center.X+root)
	}
}

func onCircle(center geo.XY, radius, angle float64) geo.XY {
	sin, cos := math.Sincos(angle)
	return geo.XY{X: center.X + radius*cos, Y: center.Y + radius*sin}
}
