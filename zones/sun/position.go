package sun

import "time"

// Degrees is an angle in degrees of arc.
type Degrees float64

// A Position is where the centre of the sun stands in the sky of a place.
type Position struct {
	Elevation   Degrees // above the horizon, refraction included
	Geometric   Degrees // above the horizon, were there no air
	Azimuth     Degrees // clockwise from true north, 0 to 360
	Declination Degrees // north of the celestial equator, seen from the earth's centre
}

// At returns where the sun stands over a place, longitude and latitude in
// degrees.
func At(lon, lat float64, t time.Time) Position { return Position{} }
