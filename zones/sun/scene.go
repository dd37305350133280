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

// A Slope is ground that lies aslant. Shadows that fall on it are reckoned as
// if all ground around lay in its plane. Where slopes overlap the first counts.
type Slope struct {
	Ground geo.Region
	Rise   float64 // over run: 0.1 rises 1 m in 10
	Aspect Degrees // the way it faces, downhill, clockwise from north
}

// Hours returns the mean hours of direct sun a day over a season, for each
// cell of a grid whose centre lies in the region wanted; NaN elsewhere.
func (s Scene) Hours(g Grid, want geo.Region, season Season) *Field {
	return s.under(s.beams(season), g, want)
}

// under returns the hours that reach the wanted cells out of those of beams.
func (s Scene) under(beams []beam, g Grid, want geo.Region) *Field {
	f := &Field{Grid: g, Values: noHours(g)}
	casters := s.casters()
	left := g.within(want)
	for _, slope := range s.Slopes {
		var here []bool
		here, left = split(left, g.within(slope.Ground))
		fill(f, here, casters, beams, slope)
	}
	fill(f, left, casters, beams, Slope{})
	return f
}
