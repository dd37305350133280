package sun

import (
	"example.org/turfplat/geo"
)

// RoofForm is the form of a sloped roof.
type RoofForm int

// Forms of sloped roofs.
const (
	Gabled    RoofForm = iota // a ridge from gable to gable
	Hipped                    // a ridge with a slope at each end too, as steep as the sides
	Pyramidal                 // slopes up to one point
	Skillion                  // one slope
)

// A Roof is a building under a sloped roof, piece by piece of its plan. It is
// exact over convex pieces; notches of up to a fiftieth of a piece are roofed
// over. Over any other piece, and for a skillion without a bearing, it counts
// as level at half its height: common practice, no source.
type Roof struct {
	Plan              geo.Region
	Base, Eave, Ridge float64 // Ridge is the height of the highest line
	Form              RoofForm
	// Bearing is the direction of the ridge or, for a skillion, the way it
	// slopes down, clockwise from north. Nil runs the ridge along the longer
	// side of the least rectangle round the piece.
	Bearing *Degrees
	Across  bool // without a bearing: the ridge runs along the shorter side
}

// notch is the share of a piece that notches may take off its hull.
const notch = 0.02

func (r Roof) bodies() []body {
	var bodies []body
	for _, piece := range r.Plan.Pieces() {
		polygon := piece.Polygons()[0]
		hull := geo.Hull(polygon.Shell)
		whole := len(polygon.Holes) == 0 && areaOf(polygon.Shell) >= (1-notch)*areaOf(hull)
		if whole && (r.Form != Skillion || r.Bearing != nil) {
			bodies = append(bodies, r.over(hull)...)
		} else {
			bodies = append(bodies, Prism{piece, r.Base, (r.Eave + r.Ridge) / 2}.bodies()...)
		}
	}
	return bodies
}

// over returns the body of walls and roof over a convex ring.
func (r Roof) over(ring geo.Ring) []body {
	base, eave, ridge := aboveSample(r.Base), aboveSample(r.Eave), aboveSample(r.Ridge)
	if ridge <= base {
		return nil
	}
	walls := solid{}
	for _, p := range ring {
		walls = append(walls, corner{p, base}, corner{p, eave})
	}
	if r.Form == Skillion {
		return []body{append(walls, skillion(ring, r.Bearing.heading(), eave, ridge)...)}
	}
	for _, p := range r.ridge(ring) {
		walls = append(walls, corner{p, ridge})
	}
	return []body{walls}
}

// skillion returns the corners of one slope that falls the way of a heading.
func skillion(ring geo.Ring, down geo.XY, eave, ridge float64) []corner {
	high, low := extent(ring, down)
	var corners []corner
	for _, p := range ring {
		corners = append(corners, corner{p, eave + (ridge-eave)*(low-dot(p, down))/(low-high)})
	}
	return corners
}

// ridge returns the ends of the ridge over a convex ring.
func (r Roof) ridge(ring geo.Ring) [2]geo.XY {
	along := longSide(ring)
	switch {
	case r.Bearing != nil:
		along = r.Bearing.heading()
	case r.Across:
		along = leftOf(along)
	}
	side := leftOf(along)
	right, left := extent(ring, side)
	from, to := crossing(ring, along, (right+left)/2)
	inset := 0.0
	switch r.Form {
	case Hipped:
		inset = min((left-right)/2, (to-from)/2)
	case Pyramidal:
		inset = (to - from) / 2
	}
	end := func(t float64) geo.XY {
		return geo.XY{X: along.X*t + side.X*(right+left)/2, Y: along.Y*t + side.Y*(right+left)/2}
	}
	return [2]geo.XY{end(from + inset), end(to - inset)}
}
