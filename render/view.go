package render

import (
	"example.org/turfplat/geo"
)

// A view lays ground out in a window of the sheet, north up and true to scale.
type view struct {
	window Rect
	scale  Scale
	middle geo.XY // the ground in the middle of the window
	seen   geo.Region
}

func newView(window Rect, scale Scale, extent geo.Bounds) (view, error) {
	v := view{window: window, scale: scale, middle: geo.XY{
		X: (extent.Min.X + extent.Max.X) / 2, Y: (extent.Min.Y + extent.Max.Y) / 2}}
	w, h := scale.Metres(window.Width())/2, scale.Metres(window.Height())/2
	var err error
	v.seen, err = geo.RegionOf([]geo.Ring{{
		{X: v.middle.X - w, Y: v.middle.Y - h}, {X: v.middle.X + w, Y: v.middle.Y - h},
		{X: v.middle.X + w, Y: v.middle.Y + h}, {X: v.middle.X - w, Y: v.middle.Y + h},
	}})
	return v, err
}

// at returns where a position in the frame stands on the sheet.
func (v view) at(p geo.XY) Point {
	return v.window.center().plus(v.scale.MM(p.X-v.middle.X), v.scale.MM(p.Y-v.middle.Y))
}

// area returns a region as it stands on the sheet, whether the window shows it
// or not.
func (v view) area(r geo.Region) Polygon {
	var area Polygon
	for _, polygon := range r.Polygons() {
		for _, ring := range polygon.Rings() {
			placed := make(Ring, len(ring))
			for i, p := range ring {
				placed[i] = v.at(p)
			}
			area = append(area, placed)
		}
	}
	return area
}

// shown returns the part of a region that the window shows.
func (v view) shown(r geo.Region) (geo.Region, error) {
	b, w := r.Bounds(), v.seen.Bounds()
	if b.Min.X >= w.Min.X && b.Min.Y >= w.Min.Y && b.Max.X <= w.Max.X && b.Max.Y <= w.Max.Y {
		return r, nil
	}
	return geo.Intersection(r, v.seen)
}

// lines returns the parts of lines that lie in a region and that the window
// shows.
func (v view) lines(all []geo.Line, in geo.Region) []Line {
	var shown []Line
	for _, whole := range all {
		for _, l := range in.Inside(whole) {
			for _, part := range v.seen.Inside(l) {
				points := make([]Point, len(part))
				for i, p := range part {
					points[i] = v.at(p)
				}
				shown = append(shown, Line{Points: points})
			}
		}
	}
	return shown
}

func (r Rect) center() Point { return Point{(r.Min.X + r.Max.X) / 2, (r.Min.Y + r.Max.Y) / 2} }

// inset returns the rectangle moved inwards on each side.
func (r Rect) inset(d float64) Rect { return Rect{r.Min.plus(d, d), r.Max.plus(-d, -d)} }

// holds reports whether a point lies in the rectangle or on its edge.
func (r Rect) holds(p Point) bool {
	return p.X >= r.Min.X && p.X <= r.Max.X && p.Y >= r.Min.Y && p.Y <= r.Max.Y
}
