package geo

import "math"

// An ellipsoid of revolution.
type ellipsoid struct {
	a  float64 // equatorial radius, m
	e2 float64 // first eccentricity squared
}

// wgs84 is the ellipsoid of GNSS receivers and of RFC 7946 (EPSG 7030).
var wgs84 = flattened(6378137, 298.257223563)

// flattened returns the ellipsoid of equatorial radius a, in metres, and
// inverse flattening invF.
func flattened(a, invF float64) ellipsoid {
	f := 1 / invF
	return ellipsoid{a: a, e2: f * (2 - f)}
}

// q is Snyder's authalic q of a latitude given by its sine (1987, USGS PP
// 1395, eq. 3-12): twice the area between equator and parallel on an
// ellipsoid of unit a, per radian of longitude.
func (l ellipsoid) q(sin float64) float64 {
	e := math.Sqrt(l.e2)
	return (1 - l.e2) * (sin/(1-l.e2*sin*sin) + math.Atanh(e*sin)/e)
}

// authalicRadius is the radius of the sphere of equal surface (eq. 3-13).
func (l ellipsoid) authalicRadius() float64 { return l.a * math.Sqrt(l.q(1)/2) }

// stretch is the factor by which the authalic sphere lengthens parallels, and
// shortens meridians, at the latitude lat in radians (Snyder's D, eq. 24-20).
func (l ellipsoid) stretch(lat float64) float64 {
	sin, cos := math.Sincos(lat)
	if cos < 1e-7 { // a pole, where the quotient below tends to 1
		return 1
	}
	sinB := l.q(sin) / l.q(1)
	m := cos / math.Sqrt(1-l.e2*sin*sin)
	return l.a * m / (l.authalicRadius() * math.Sqrt(1-sinB*sinB))
}
