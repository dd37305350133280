package sun

import (
	"math"

	"example.org/turfplat/geo"
)

// A ray leaves a spot towards the sun: after t it is at x+dx t, y+dy t, z+dz t.
type ray struct{ x, y, z, dx, dy, dz float64 }

// A rayForm is a form in space that rays meet or miss.
type rayForm interface{ meets(ray) bool }

// A stretch is the part of a ray still in question.
type stretch struct{ from, to float64 }

func wholeRay() stretch { return stretch{0, math.Inf(1)} }

// below cuts a stretch to where a + b t <= limit.
func (s stretch) below(a, b, limit float64) stretch {
	switch {
	case b > 0:
		s.to = min(s.to, (limit-a)/b)
	case b < 0:
		s.from = max(s.from, (limit-a)/b)
	case a > limit:
		s.to = math.Inf(-1)
	}
	return s
}

func (s stretch) above(a, b, limit float64) stretch { return s.below(-a, -b, -limit) }

// between cuts a stretch to where a + b t lies between two limits.
func (s stretch) between(a, b, low, high float64) stretch {
	return s.above(a, b, low).below(a, b, high)
}

func (s stretch) some() bool { return s.from <= s.to }

// An along is a ray in the axes of an oblong.
type along struct{ u, v, du, dv float64 }

func (o oblong) along(r ray) along {
	sin, cos := math.Sincos(o.turn)
	x, y := r.x-o.at.X, r.y-o.at.Y
	return along{x*cos + y*sin, y*cos - x*sin, r.dx*cos + r.dy*sin, r.dy*cos - r.dx*sin}
}

type rayBox struct {
	oblong
	base, top float64
}

func (b rayBox) stretch(r ray) stretch {
	a := b.along(r)
	return wholeRay().between(r.z, r.dz, b.base, b.top).between(a.u, a.du, -b.long, b.long).between(a.v, a.dv, -b.wide, b.wide)
}

func (b rayBox) meets(r ray) bool { return b.stretch(r).some() }

type rayEither []rayBox

func (e rayEither) meets(r ray) bool {
	for _, b := range e {
		if b.meets(r) {
			return true
		}
	}
	return false
}

// rayRoof is a box less what lies above the slopes of its roof. The slopes at
// the ends, if any, start at ends along the long side.
type rayRoof struct {
	rayBox
	roof Roof
	ends float64
}

func (r rayRoof) meets(q ray) bool {
	s, a := r.stretch(q), r.along(q)
	if r.long < r.wide { // the ridge runs along the longer side
		a.u, a.v, a.du, a.dv = a.v, a.u, a.dv, a.du
	}
	half := min(r.long, r.wide)
	pitch := (r.roof.Ridge - r.roof.Eave) / half
	for _, side := range []float64{-1, 1} {
		s = s.below(q.z+side*pitch*a.v, q.dz+side*pitch*a.dv, r.roof.Ridge)
		if !math.IsInf(r.ends, 1) {
			s = s.below(q.z+side*pitch*a.u, q.dz+side*pitch*a.du, r.roof.Eave+pitch*max(r.long, r.wide))
		}
	}
	return s.some()
}

type raySlant struct {
	rayBox
	roof Roof
}

func (r raySlant) meets(q ray) bool {
	a := r.along(q)
	pitch := (r.roof.Ridge - r.roof.Eave) / (2 * r.long)
	return r.stretch(q).below(q.z+pitch*a.u, q.dz+pitch*a.du, (r.roof.Eave+r.roof.Ridge)/2).some()
}

type rayCrown Crown

func (c rayCrown) meets(r ray) bool {
	s := wholeRay().between(r.z, r.dz, c.Base, c.Top)
	if !s.some() {
		return false
	}
	if c.Form == Cone {
		return c.coneGap(r, s) <= 0
	}
	return c.ellipsoidGap(r, s) <= 0
}

// ellipsoidGap is the least of ((x, y)/radius)2 + (z/half)2 - 1 on a stretch.
func (c rayCrown) ellipsoidGap(r ray, s stretch) float64 {
	half, middle := (c.Top-c.Base)/2, (c.Top+c.Base)/2
	x, y, z := (r.x-c.At.X)/c.Radius, (r.y-c.At.Y)/c.Radius, (r.z-middle)/half
	dx, dy, dz := r.dx/c.Radius, r.dy/c.Radius, r.dz/half
	return leastOf(s, dx*dx+dy*dy+dz*dz, x*dx+y*dy+z*dz, x*x+y*y+z*z-1)
}

// coneGap is the least of (x, y)2 less the square of the cone's radius.
func (c rayCrown) coneGap(r ray, s stretch) float64 {
	narrowing := c.Radius / (c.Top - c.Base)
	x, y, w, dw := r.x-c.At.X, r.y-c.At.Y, narrowing*(c.Top-r.z), -narrowing*r.dz
	return leastOf(s, r.dx*r.dx+r.dy*r.dy-dw*dw, x*r.dx+y*r.dy-w*dw, x*x+y*y-w*w)
}

// leastOf is the least of a t2 + 2 b t + c on a stretch.
func leastOf(s stretch, a, b, c float64) float64 {
	at := func(t float64) float64 { return (a*t+2*b)*t + c }
	least := min(at(s.from), at(s.to))
	if t := -b / a; a > 0 && s.from < t && t < s.to {
		least = min(least, at(t))
	}
	return least
}

// rayTo returns the ray from a spot 5 cm above level ground to the sun.
func rayTo(spot geo.XY, p Position) ray {
	sinE, cosE := math.Sincos(float64(p.Elevation) * math.Pi / 180)
	sinA, cosA := math.Sincos(float64(p.Azimuth) * math.Pi / 180)
	return ray{spot.X, spot.Y, 0.05, cosE * sinA, cosE * cosA, sinE}
}

// over returns the ray with heights above ground of a slope, which the slopes
// of an aspect fall towards.
func (r ray) over(ground Slope) ray {
	sinA, cosA := math.Sincos(float64(ground.Aspect) * math.Pi / 180)
	r.dz += ground.Rise * (r.dx*sinA + r.dy*cosA)
	return r
}
