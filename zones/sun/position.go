package sun

import (
	"math"
	"time"
)

// Degrees is an angle in degrees of arc.
type Degrees float64

func (d Degrees) radians() float64 { return float64(d) * degree }

// A Position is where the centre of the sun stands in the sky of a place.
type Position struct {
	Elevation   Degrees // above the horizon, refraction included
	Geometric   Degrees // above the horizon, were there no air
	Azimuth     Degrees // clockwise from true north, 0 to 360
	Declination Degrees // north of the celestial equator, seen from the earth's centre
}

// At returns where the sun stands over a place, longitude and latitude in
// degrees, at sea level in air of 1010 hPa and 10 degrees Celsius. From 1950
// to 2100 it is right to 0.002 degrees; refraction within a degree of the
// horizon varies far more than that from day to day. Time is UTC as long as
// that keeps within a second of the earth's rotation: each second is worth
// 0.004 degrees.
func At(lon, lat float64, t time.Time) Position {
	sun := apparent(t)
	return sun.over(lat*degree, sun.hourAngle+lon*degree)
}

// over returns the position of the sun at a latitude and an hour angle, in
// radians.
func (s apparentSun) over(lat, hourAngle float64) Position {
	sinLat, cosLat := math.Sincos(lat)
	sinD, cosD := math.Sincos(s.declination)
	sinH, cosH := math.Sincos(hourAngle)
	elevation := math.Asin(max(-1, min(1, sinLat*sinD+cosLat*cosD*cosH)))
	const parallax = 8.794 / 3600 * degree
	geometric := Degrees((elevation - parallax*math.Cos(elevation)) / degree)
	azimuth := math.Atan2(-cosD*sinH, sinD*cosLat-cosD*sinLat*cosH) / degree
	if azimuth < 0 {
		azimuth += 360
	}
	return Position{
		Elevation:   geometric + refraction(geometric),
		Geometric:   geometric,
		Azimuth:     Degrees(azimuth),
		Declination: Degrees(s.declination / degree),
	}
}

// refraction returns how much air lifts a body whose elevation without air is
// given (Saemundsson 1986, Sky and Telescope 72:70; Meeus 16.4). The formula
// ends a degree below the horizon; from there it fades out, so that the sun
// sinks steadily.
func refraction(geometric Degrees) Degrees {
	h := max(float64(geometric), -1)
	lift := 1.02 / 60 / math.Tan((h+10.3/(h+5.11))*degree)
	if geometric < -1 {
		lift *= (90 + float64(geometric)) / 89
	}
	return Degrees(lift)
}

// withoutAir returns the elevation that air lifts to the one given.
func withoutAir(elevation Degrees) Degrees {
	geometric := elevation
	for range 20 { // each turn leaves less than a fifth of the error
		geometric = elevation - refraction(geometric)
	}
	return geometric
}
