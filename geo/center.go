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
	lat, lon := nothing, nothing
	for p := range places {
		lat, lon = lat.with(p.Lat()), lon.with(p.Lon())
	}
	if lat == nothing {
		return orb.Point{}
	}
	if lon[1]-lon[0] > 180 { // counted from 0 to 360 they lie closer
		lon = nothing
		for p := range places {
			lon = lon.with(math.Mod(p.Lon()+360, 360))
		}
	}
	return orb.Point{math.Remainder((lon[0]+lon[1])/2, 360), (lat[0] + lat[1]) / 2}
}

// A stretch of degrees, from the least to the greatest.
type stretch [2]float64

var nothing = stretch{math.Inf(1), math.Inf(-1)}

func (s stretch) with(v float64) stretch { return stretch{min(s[0], v), max(s[1], v)} }
