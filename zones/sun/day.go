package sun

import (
	"math"
	"time"
)

// A course is the sun's way over a place on one day: from one midnight to the
// next by the sun.
type course struct {
	lon, lat float64   // degrees
	noon     time.Time // the sun stands in the meridian
}

// courseOf returns the sun's way on a day of a year. Whose day it is depends
// on the longitude alone.
func courseOf(lon, lat float64, year int, d Date) course {
	clock := time.Date(year, d.Month, d.Day, 12, 0, 0, 0, time.UTC).Add(-hours(lon / 15))
	c := course{lon, lat, clock}
	c.noon = c.when(0)
	return c
}

func hours(h float64) time.Duration { return time.Duration(h * float64(time.Hour)) }

// when returns the time at which the sun stands at an hour angle, in hours
// from noon, -12 to 12. It is right to a millisecond.
func (c course) when(solar float64) time.Time {
	t := c.noon.Add(hours(solar))
	for range 2 { // the sun's day differs from the clock's by half a minute at most
		turn := (apparent(t).hourAngle + c.lon*degree) / (15 * degree)
		t = t.Add(hours(math.Remainder(solar-turn, 24)))
	}
	return t
}

// above returns the hours of solar time, from noon, between which the sun
// stands at least so high, elevations with refraction. It is right to a
// second where the sun rises at more than a slant. A day without has rise =
// set = 0; a day on which it never sinks lower is the whole of it.
func (c course) above(least Degrees) (rise, set float64) {
	geometric := withoutAir(least)
	return c.passes(geometric, -1), c.passes(geometric, 1)
}

// passes returns the hour at which the sun passes a geometric elevation,
// before noon (-1) or after it (1).
func (c course) passes(geometric Degrees, side float64) float64 {
	sinLat, cosLat := math.Sincos(c.lat * degree)
	hour := 6 * side
	for range 4 { // the sun climbs by less than a degree a day
		sun := apparent(c.noon.Add(hours(hour)))
		const parallax = 8.794 / 3600 * degree
		sinE := math.Sin(geometric.radians() + parallax*math.Cos(geometric.radians()))
		sinD, cosD := math.Sincos(sun.declination)
		cosH := (sinE - sinLat*sinD) / (cosLat * cosD)
		hour = side * math.Acos(max(-1, min(1, cosH))) / (15 * degree)
	}
	return hour
}

// at returns where the sun stands at an hour from noon.
func (c course) at(hour float64) Position {
	return apparent(c.noon.Add(hours(hour))).over(c.lat*degree, hour*15*degree)
}
