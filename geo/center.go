package geo

import (
	"iter"
	"math"

	"github.com/paulmach/orb"
)

// Center returns the middle of the rectangle of longitude and latitude that
// holds the places, across the antimeridian too, whatever their order. The
// places must span less than half the globe; without any it is 0, 0.
func Center(places iter.Seq[orb.Point]) orb.Point {
	inf := math.Inf(1)
	lat, lon, eastern := [2]float64{inf, -inf}, [2]float64{inf, -inf}, [2]float64{inf, -inf}
	stretch := func(to *[2]float64, v float64) { *to = [2]float64{min(to[0], v), max(to[1], v)} }
	for p := range places {
		stretch(&lat, p.Lat())
		stretch(&lon, p.Lon())
		stretch(&eastern, math.Mod(p.Lon()+360, 360)) // counted from 0 to 360
	}
	if lat[0] > lat[1] {
		return orb.Point{}
	}
	if lon[1]-lon[0] > 180 {
		lon = eastern
	}
	return orb.Point{math.Remainder((lon[0]+lon[1])/2, 360), (lat[0] + lat[1]) / 2}
}
