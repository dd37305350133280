package track

import "example.org/turfplat/geo"

// A traverse is a cleaned walk: its stations, and their places smoothed.
type traverse struct {
	path   path
	smooth smoother
	at     []geo.XY
	speed  float64 // usual, m/s
}

func newTraverse(p path) traverse {
	t := traverse{path: p, smooth: newSmoother(p), speed: p.usualSpeed()}
	t.at = t.smooth.smoothed()
	return t
}

func (t traverse) places(stations []int) []geo.XY {
	at := make([]geo.XY, len(stations))
	for i, s := range stations {
		at[i] = t.at[s]
	}
	return at
}
