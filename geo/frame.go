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
// Areas in it are areas on the ellipsoid. Edges are straight in it: within 5
// km of the centre, an edge of 100 m lies within a micrometre of the geodesic
// between the same two places, one of 1 km within a tenth of a millimetre,
// one of 10 km within a centimetre.
//
// Make one with NewFrame: the zero Frame lies nowhere, so that positions in it,
// and areas of what is laid into it, are NaN, and lengths infinite.
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

// XY returns the position of a place, snapped to 2^-23 m.
func (f Frame) XY(p orb.Point) XY { return f.project(p).snapped() }

func (f Frame) project(p orb.Point) XY {
	sinB := f.on.q(math.Sin(p.Lat()*degree)) / f.qPole
	cosB := math.Sqrt(max(0, 1-sinB*sinB))
	eastward := p.Lon() - f.center.Lon()
	if math.Abs(eastward) > 180 { // the other way round is shorter
		eastward = math.Remainder(eastward, 360)
	}
	sinL, cosL := math.Sincos(eastward * degree)
	b := f.rq * math.Sqrt(2/(1+f.sinB1*sinB+f.cosB1*cosB*cosL))
	return XY{
		X: b * f.d * cosB * sinL,
		Y: b / f.d * (f.cosB1*sinB - f.sinB1*cosB*cosL),
	}
}

// Place returns the place at a position, longitude in -180..180. It is right
// to 1e-8 m up to 70 degrees of latitude and to 2e-7 m up to 89, where doubles
// leave no more of the distance from the pole.
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

// Bend returns how far, in metres, the middle of a parallel of a length lies off
// the straight edge between its ends, at the centre of the frame: to some
// hundredths up to 10 km and 80 degrees of latitude.
func (f Frame) Bend(length float64) float64 {
	return length * length / (8 * f.rq) * math.Abs(math.Tan(f.center.Lat()*degree))
}

// trueLength returns the length on the ellipsoid of the straight edge from a
// to b. An equal-area plane shrinks lengths along the radius and stretches
// them across it, by 1 in 13 million at 5 km from the centre. The drift of the
// stretch towards the north and, equal to it in the first power of the
// flattening, the turning of the meridians to either side are ten times as
// much there. Both are taken out at the middle of the edge.
func (f Frame) trueLength(a, b XY) float64 {
	way, middle := b.Minus(a), a.Toward(b, 0.5)
	length := way.Norm()
	if length == 0 {
		return 0
	}
	dx, dy := way.X/length, way.Y/length
	along, across := middle.Dot(XY{dx, dy}), middle.Cross(XY{dx, dy})
	radial := (along*along + length*length/12 - across*across) / (8 * f.rq * f.rq)
	drifted := f.drift * (middle.Y*(dx*dx-dy*dy) - 2*middle.X*dx*dy)
	return length * (1 + radial + drifted)
}
