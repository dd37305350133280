package geo

import (
	"math"

	"github.com/paulmach/orb"
)

const (
	degree = math.Pi / 180
	grain  = 1.0 / (1 << 23) // m: snapped positions are whole multiples, which doubles hold exactly
)

// A Frame is a plane on the WGS 84 ellipsoid around one place: the ellipsoidal
// Lambert azimuthal equal-area projection (Snyder 1987, USGS PP 1395, eq.
// 24-17 to 24-24; also IOGP 373-7-2 method 9820).
//
// Areas in it are areas on the ellipsoid. Edges are straight in it: against
// the geodesic between the same two places an edge of 100 m lies within a
// nanometre, one of 10 km within a millimetre or two.
type Frame struct {
	center       orb.Point
	on           ellipsoid
	qPole, rq    float64
	sinB1, cosB1 float64
	d            float64 // stretch at the centre
	drift        float64 // relative change of the stretch per metre northwards
}

// NewFrame returns the frame centred on a place, longitude and latitude in
// degrees.
func NewFrame(center orb.Point) Frame { return newFrameOn(wgs84, center) }

func newFrameOn(l ellipsoid, center orb.Point) Frame {
	lat := center.Lat() * degree
	f := Frame{center: center, on: l, qPole: l.q(1), rq: l.authalicRadius(), d: l.stretch(lat)}
	f.sinB1 = l.q(math.Sin(lat)) / f.qPole
	f.cosB1 = math.Sqrt(max(0, 1-f.sinB1*f.sinB1))
	const step = 1e-4 // radians: some 600 m, far above rounding, far below curvature
	f.drift = (l.stretch(lat+step) - l.stretch(lat-step)) / (2 * step * f.d * f.rq)
	return f
}

// Center returns the place the frame is centred on.
func (f Frame) Center() orb.Point { return f.center }

// XY returns the position of a place, snapped to an eighth of a micrometre.
func (f Frame) XY(p orb.Point) XY { return f.project(p).snapped() }

func (f Frame) project(p orb.Point) XY {
	sinB := f.on.q(math.Sin(p.Lat()*degree)) / f.qPole
	cosB := math.Sqrt(max(0, 1-sinB*sinB))
	sinL, cosL := math.Sincos(math.Remainder(p.Lon()-f.center.Lon(), 360) * degree)
	b := f.rq * math.Sqrt(2/(1+f.sinB1*sinB+f.cosB1*cosB*cosL))
	return XY{
		X: b * f.d * cosB * sinL,
		Y: b / f.d * (f.cosB1*sinB - f.sinB1*cosB*cosL),
	}
}

// Place returns the place at a position, longitude in -180..180. It undoes
// XY to 1e-9 m.
func (f Frame) Place(p XY) orb.Point {
	x, y := p.X/f.d, p.Y*f.d
	rho := math.Hypot(x, y)
	if rho == 0 {
		return f.center
	}
	sinC, cosC := math.Sincos(2 * math.Asin(min(1, rho/(2*f.rq))))
	lat := f.latitude(f.qPole * (cosC*f.sinB1 + y*sinC*f.cosB1/rho))
	lon := f.center.Lon() + math.Atan2(x*sinC, rho*f.cosB1*cosC-y*f.sinB1*sinC)/degree
	if lon < -180 || lon > 180 {
		lon = math.Remainder(lon, 360)
	}
	return orb.Point{lon, lat / degree}
}

// latitude inverts the authalic q by Newton's method (Snyder eq. 3-16).
func (f Frame) latitude(q float64) float64 {
	const enough = 8 // two steps reach the last digit from the sphere's latitude
	lat := math.Asin(max(-1, min(1, q/f.qPole)))
	for range enough {
		sin, cos := math.Sincos(lat)
		if cos < 1e-9 {
			break
		}
		w := 1 - f.on.e2*sin*sin
		step := (q - f.on.q(sin)) * w * w / (2 * (1 - f.on.e2) * cos)
		lat += step
		if math.Abs(step) < 1e-15 {
			break
		}
	}
	return lat
}

// trueLength returns the length on the ellipsoid of the straight edge from a
// to b. An equal-area plane shrinks lengths along the radius and stretches
// them across it, by 1 in 13 million at 5 km from the centre, and the
// ellipsoid adds a drift from south to north; both are taken out here.
func (f Frame) trueLength(a, b XY) float64 {
	dx, dy := b.X-a.X, b.Y-a.Y
	y := (a.Y + b.Y) / 2
	dx, dy = dx*(1+f.drift*y), dy*(1-f.drift*y)
	length := math.Hypot(dx, dy)
	if length == 0 {
		return 0
	}
	x := (a.X + b.X) / 2
	along, across := (x*dx+y*dy)/length, (x*dy-y*dx)/length
	return length * (1 + (along*along+length*length/12-across*across)/(8*f.rq*f.rq))
}
