package sun

import "example.org/turfplat/geo"

// An Obstacle is anything that stands between the sun and the ground.
type Obstacle struct {
	ID, Name string // as the site file has them
	Shape    Shape
	Pass     Pass
}

// Pass is the share of direct sun that comes through an obstacle, 0 to 1. The
// zero value is opaque. Evergreens pass the same share in leaf and bare.
type Pass struct{ InLeaf, Bare float64 }

// A Shape is the form of an obstacle: a Prism, Roof, Crown or Screen. Heights
// are in metres above the ground straight below.
type Shape interface{}

// A Prism has upright sides over a region, courtyards and all, from a base to
// a level top: a building, a part of one, or a wood from the base of its
// crowns to their tops.
type Prism struct {
	Plan      geo.Region
	Base, Top float64
}

// A RoofForm is the form of a sloped roof.
type RoofForm int

// Forms of sloped roofs.
const (
	Gabled    RoofForm = iota // a ridge from gable to gable
	Hipped                    // a ridge with a slope at each end too
	Pyramidal                 // slopes up to one point
	Skillion                  // one slope
)

// A Roof is a building under a sloped roof.
type Roof struct {
	Plan              geo.Region
	Base, Eave, Ridge float64 // Ridge is the highest line of the roof
	Form              RoofForm
	// Bearing is the direction of the ridge or, for a skillion, the way it
	// slopes down, clockwise from north; nil runs the ridge along the longer
	// side.
	Bearing *Degrees
}

// A CrownForm is the form of a tree's crown.
type CrownForm int

// Forms of crowns.
const (
	Ellipsoid CrownForm = iota // broadleaved trees, palms
	Cone                       // needleleaved trees: point up, level base
)

// A Crown is that of a tree on a clear trunk. The trunk's own shade is not
// counted.
type Crown struct {
	At        geo.XY
	Radius    float64 // m
	Base, Top float64
	Form      CrownForm
}

// A Screen stands along a line: a fence, a wall, a hedge. A width of 0 is a
// thin one.
type Screen struct {
	Line          geo.Line
	Height, Width float64 // m
}
