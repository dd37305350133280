package track

import "example.org/turfplat/geo"

// A traverse is a cleaned walk: its stations, and their places smoothed.
type traverse struct {
	path   path
	smooth smoother
	at     []geo.XY
	speed  float64 // usual, m/s
	jitter float64 // of a fix against its neighbours, m
}

func newTraverse(p path) traverse {
	t := traverse{path: p, speed: p.usualSpeed(), jitter: p.jitter()}
	t.smooth = newSmoother(p, span(t.jitter))
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
