package lanes

import (
	"math"

	"example.org/turfplat/geo"
)

// plainWalk is all walking, in metres, of one who searches nothing: in each
// lawn, in the order of the map, the same laps and axes, then rows along its
// longest side from one end to the other, going on past what lies in the way.
func plainWalk(t failer, y Yard, p Plan) float64 {
	w := y.walkers()[0]
	var at *geo.XY
	var walked float64
	walk := func(l geo.Line) {
		if at != nil {
			walked += math.Min(w.way(*at, l[0]), 2*(*at).Distance(l[0]))
		}
		walked += length(l)
		end := l[len(l)-1]
		at = &end
	}
	swath := p.Work.Pattern.Swath()
	for _, lawn := range p.Walked[0].Pieces() {
		b := must[belt](t)(beltOf(lawn, swath, p.Work.Practice.HandWidth))
		for _, l := range append(b.laps, b.axes...) {
			walk(l)
		}
		var side geo.XY
		edgesOf(lawn, func(a, b geo.XY) {
			if way := b.Minus(a); way.Norm() > side.Norm() {
				side = way
			}
		})
		h := headingOf(math.Atan2(side.Y, side.X))
		for i, row := range plainRows(b.rest, h, swath) {
			if i%2 == 1 {
				row = turned(row)
			}
			walk(row)
		}
	}
	return walked
}

// plainRows lays rows over the whole of some ground, in the order in which
// they lie.
func plainRows(ground geo.Region, h heading, swath float64) []geo.Line {
	if ground.Empty() {
		return nil
	}
	from, to, west, east := math.Inf(1), math.Inf(-1), math.Inf(1), math.Inf(-1)
	edgesOf(ground, func(a, _ geo.XY) {
		u, v := h.uv(a)
		from, to, west, east = min(from, v), max(to, v), min(west, u), max(east, u)
	})
	n, pitch := Abreast(to-from, swath)
	var rows []geo.Line
	for i := range n {
		v := from + (float64(i)+0.5)*pitch
		parts := ground.Inside(geo.Line{h.xy(west-1, v), h.xy(east+1, v)})
		if len(parts) == 0 {
			continue
		}
		last := parts[len(parts)-1]
		rows = append(rows, geo.Line{parts[0][0], last[len(last)-1]})
	}
	return rows
}
