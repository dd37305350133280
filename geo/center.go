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
	first, seen := orb.Point{}, false
	low, high := orb.Point{math.Inf(1), math.Inf(1)}, orb.Point{math.Inf(-1), math.Inf(-1)}
	for p := range places {
		if !seen {
			first, seen = p, true
		}
		p[0] = first[0] + math.Remainder(p[0]-first[0], 360)
		low = orb.Point{min(low[0], p[0]), min(low[1], p[1])}
		high = orb.Point{max(high[0], p[0]), max(high[1], p[1])}
	}
	if !seen {
		return first
	}
	return orb.Point{math.Remainder((low[0]+high[0])/2, 360), (low[1] + high[1]) / 2}
}
