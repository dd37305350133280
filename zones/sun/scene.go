package sun

import (
	"github.com/paulmach/orb"

	"example.org/turfplat/geo"
)

// LeastElevation is the usual elevation from which direct sun counts: common
// practice, no source.
const LeastElevation Degrees = 5

// A Scene is everything that decides how the sun reaches the ground around a
// place.
type Scene struct {
	Place        orb.Point // longitude, latitude of the frame's centre
	Obstacles    []Obstacle
	Slopes       []Slope // ground in none of them is level
	MinElevation Degrees // direct sun counts while the sun stands at least so high, refraction included
}

// Hours returns the mean hours of direct sun a day over a season, for each
// cell of a grid whose centre lies in the region wanted; NaN elsewhere.
func (s Scene) Hours(g Grid, want geo.Region, season Season) *Field {
	return s.under(s.beams(season), g, want)
}
