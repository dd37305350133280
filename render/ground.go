package render

import (
	"github.com/paulmach/orb"

	"example.org/turfplat/geo"
)

// ground tells where on the earth the map of a sheet lies.
type ground struct {
	window rect // of the map on the sheet, mm

	view  view
	frame geo.Frame
}

// place returns the place on WGS 84, longitude and latitude in degrees, that
// stands at a point of the window. It is as exact as the map, whose points are
// whole micrometres of paper.
func (g *ground) place(p Point) orb.Point { return g.frame.Place(g.view.ground(p)) }
