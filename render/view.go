package render

import (
	"slices"

	"example.org/turfplat/geo"
)

// A view lays ground out in a window of the sheet, true to scale.
type view struct {
	window rect
	scale  Scale
	lie    lie
	origin Point      // a place on the sheet
	middle geo.XY     // that stands there, as ground lies on the sheet
	seen   geo.Region // the ground in the window

	part *view // of the window where labels stand; nil is all of it
}

func newView(window rect, scale Scale, l lie, middle geo.XY) (view, error) {
	return (view{scale: scale, lie: l, origin: window.center(), middle: middle}).in(window)
}

// in returns the view of the same ground in another window.
func (v view) in(window rect) (view, error) {
	v.window = window
	corners := window.polygon()[0]
	ground := make(geo.Ring, len(corners))
	for i, p := range corners {
		ground[i] = v.ground(p)
	}
	var err error
	v.seen, err = geo.RegionOf([]geo.Ring{ground})
	return v, err
}

// forLabels is the part of the window that this sheet is for.
func (v view) forLabels() view {
	if v.part == nil {
		return v
	}
	return *v.part
}

// at returns where a position in the frame stands on the sheet.
func (v view) at(p geo.XY) Point { return v.laid(v.lie.onSheet(p)) }

// laid returns where ground stands on the sheet that is told as it lies there.
func (v view) laid(p geo.XY) Point {
	way := p.Minus(v.middle)
	return v.origin.plus(v.scale.MM(way.X), v.scale.MM(way.Y))
}

// ground returns the position in the frame that stands at a place of the
// sheet.
func (v view) ground(p Point) geo.XY {
	way := geo.XY{X: v.scale.metres(p.X - v.origin.X), Y: v.scale.metres(p.Y - v.origin.Y)}
	return v.lie.onGround(v.middle.Plus(way))
}

// area returns a region as it stands on the sheet, whether the window shows it
// or not.
func (v view) area(r geo.Region) polygon {
	var area polygon
	for _, polygon := range r.Polygons() {
		for _, corners := range polygon.Rings() {
			placed := make(ring, len(corners))
			for i, p := range corners {
				placed[i] = v.at(p)
			}
			area = append(area, placed)
		}
	}
	return area
}

// shown returns the part of a region that the window shows.
func (v view) shown(r geo.Region) (geo.Region, error) {
	if v.showsAll(r) {
		return r, nil
	}
	return geo.Intersection(r, v.seen)
}

// showsAll reports whether the window shows all of a region.
func (v view) showsAll(r geo.Region) bool {
	for _, polygon := range r.Polygons() {
		for _, p := range polygon.Shell {
			if !v.window.holds(v.at(p)) {
				return false
			}
		}
	}
	return true
}

// rim returns the edges of a region as the window shows them: closed lines if
// it shows all of the region.
func (v view) rim(r geo.Region) []Line {
	if v.showsAll(r) {
		return v.area(r).lines()
	}
	var rings []geo.Line
	for _, polygon := range r.Polygons() {
		for _, ring := range polygon.Rings() {
			rings = append(rings, append(geo.Line(slices.Clone(ring)), ring[0]))
		}
	}
	return v.inWindow(rings)
}

// lines returns the parts of lines that lie in a region and that the window
// shows.
func (v view) lines(all []geo.Line, in geo.Region) []Line {
	var inside []geo.Line
	for _, whole := range all {
		inside = append(inside, in.Inside(whole)...)
	}
	return v.inWindow(inside)
}

// inWindow returns the parts of lines that the window shows.
func (v view) inWindow(all []geo.Line) []Line {
	var shown []Line
	for _, l := range all {
		for _, part := range v.seen.Inside(l) {
			points := make([]Point, len(part))
			for i, p := range part {
				points[i] = v.at(p)
			}
			shown = append(shown, Line{Points: points})
		}
	}
	return shown
}

func (r rect) center() Point { return Point{(r.min.X + r.max.X) / 2, (r.min.Y + r.max.Y) / 2} }

// inset returns the rectangle moved inwards on each side.
func (r rect) inset(d float64) rect { return rect{r.min.plus(d, d), r.max.plus(-d, -d)} }

// holds reports whether a point lies in the rectangle or on its edge.
func (r rect) holds(p Point) bool {
	return p.X >= r.min.X && p.X <= r.max.X && p.Y >= r.min.Y && p.Y <= r.max.Y
}
