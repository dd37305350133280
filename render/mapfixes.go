package render

import (
	"math"

	"example.org/turfplat/geo"
)

// fixSize is the diameter of a fix on paper, in millimetres.
const fixSize = 0.7

// fixesDrawn are the fixes of walked objects, if the map is to show them.
func (d *draft) fixesDrawn() []geo.XY {
	if !d.options.Fixes {
		return nil
	}
	var all []geo.XY
	for _, o := range d.plat.Site.Objects {
		all = append(all, d.plat.Site.Fixes(o)...)
	}
	return all
}

// fixes draws where the receiver was on its walks.
func (d *draft) fixes(v view) []Element {
	var shown []Point
	for _, p := range d.fixesDrawn() {
		if at := v.at(p); v.window.inset(fixSize).holds(at) {
			shown = append(shown, at)
		}
	}
	return dots(shown)
}

// dots are small discs, which as octagons are round enough.
func dots(at []Point) []Element {
	const corners = 8
	var all []Line
	for _, p := range at {
		dot := Line{Closed: true}
		for i := range corners {
			sin, cos := math.Sincos(2 * math.Pi * float64(i) / corners)
			dot.Points = append(dot.Points, p.plus(fixSize/2*cos, fixSize/2*sin))
		}
		all = append(all, dot)
	}
	if all == nil {
		return nil
	}
	return []Element{Path{Lines: all, Fill: blue.shade(0.8)}}
}

// fixSample is a row of fixes for the key.
func fixSample(box rect) []Element {
	var row []Point
	for i := range 5 {
		row = append(row, Point{box.min.X + (float64(i)+0.5)*box.width()/5, box.center().Y + 0.4*float64(i%2)})
	}
	return dots(row)
}
