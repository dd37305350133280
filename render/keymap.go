package render

import (
	"fmt"

	"example.org/turfplat/geo"
	"example.org/turfplat/zones"
)

// sides are the edges of all parts that have a sheet, each once, where place
// puts ground as it lies on the sheet. The outermost stand some metres clear of
// the site.
func (t tiling) sides(clear float64, place func(geo.XY) Point) []Line {
	t.across, t.down = t.across.grown(clear), t.down.grown(clear)
	type side struct {
		upright      bool
		index, along int
	}
	drawn := make(map[side]bool)
	var lines []Line
	add := func(s side, a, b geo.XY) {
		if !drawn[s] {
			drawn[s] = true
			lines = append(lines, Line{Points: []Point{place(a), place(b)}})
		}
	}
	for _, one := range t.tiles {
		b := t.part(one)
		lowRight, highLeft := geo.XY{X: b.Max.X, Y: b.Min.Y}, geo.XY{X: b.Min.X, Y: b.Max.Y}
		add(side{true, one.column, one.row}, b.Min, highLeft)
		add(side{true, one.column + 1, one.row}, lowRight, b.Max)
		add(side{false, one.row, one.column}, b.Min, lowRight)
		add(side{false, one.row + 1, one.column}, highLeft, b.Max)
	}
	return lines
}

// keyMap draws the parts of a site that have sheets of their own over the map
// of the whole, each with the number of its sheet. Labels of the ground keep
// off the numbers.
func (d *draft) keyMap(t tiling, v view, sheets []*Sheet) []Element {
	const outside = 2.5 // mm of the outermost edges from the site
	words := func(number, _ int) string { return fmt.Sprintf("sheet %d", number) }
	text := Text{String: words(mostTiles, 0), Face: Bold, Size: mapSize, Ink: black, Anchor: Middle}
	label := stacked(text)
	turf := newField(v.area(d.plat.Ground.Cover(zones.Turf)))
	elements := matchLine(t.sides(v.scale.metres(outside), v.laid))
	for i, one := range t.tiles {
		center := placeOfNumber(t, one, v, label, turf)
		box := label.plate(center, 0)
		d.labels.take(box)
		text.At = center.plus(0, -text.Face.capHeight(text.Size)/2)
		elements = append(elements,
			Path{Lines: polygon{box[:]}.lines(), Fill: white, Stroke: black, Weight: mediumLine},
			numbered{text, sheets[i], words})
	}
	return elements
}

// placeOfNumber puts the number of a part into one of its corners or, where it
// is outermost, above or below it: off the turf if it can be.
func placeOfNumber(t tiling, one tile, v view, label form, turf field) Point {
	const clear, beyond = 1.5, 4.0 // mm from the edges of the part, inside and outside
	part := t.part(one)
	low, high := v.laid(part.Min), v.laid(part.Max)
	w, h := label.width/2+labelGap, label.height/2+labelGap
	left, right, bottom, top := low.X+clear+w, high.X-clear-w, low.Y+clear+h, high.Y-clear-h
	places := []Point{{left, top}, {right, top}, {left, bottom}, {right, bottom}}
	if one.row == len(t.down.middles)-1 {
		places = append(places, Point{(left + right) / 2, high.Y + beyond + h})
	}
	if one.row == 0 {
		places = append(places, Point{(left + right) / 2, low.Y - beyond - h})
	}
	for _, at := range places {
		if box := label.plate(at, 0); box.within(v.window.inset(windowInset)) && !turf.meets(box) {
			return at
		}
	}
	return places[0]
}

// A locator shows where on its site the part of a sheet lies, and which sheets
// show the others. It is a block.
type locator struct {
	tiling tiling
	here   int // index of the tile
	site   geo.Region
	sheets []*Sheet // of the tiles
}

// set implements block.
func (l locator) set(corner Point, width float64) (elements []Element, height float64) {
	const highest, lowest, margin = 32.0, 6.0, 1.5 // mm
	elements, head := heading("Sheets", mapSize, corner, width)
	extent := l.tiling.lie.extent
	mmPerMetre := min((width-2*margin)/extent.Width(), highest/extent.Height())
	if low := lowest/mmPerMetre - extent.Height(); low > 0 { // numbers need room
		extent.Min.Y, extent.Max.Y = extent.Min.Y-low/2, extent.Max.Y+low/2
		l.tiling.down = l.tiling.down.grown(low / 2)
	}
	left := corner.X + (width-extent.Width()*mmPerMetre)/2
	top := corner.Y - head - margin
	place := func(p geo.XY) Point {
		return Point{left + (p.X-extent.Min.X)*mmPerMetre, top - (extent.Max.Y-p.Y)*mmPerMetre}
	}
	part := func(i int) rect {
		b := l.tiling.part(l.tiling.tiles[i])
		return rect{place(b.Min), place(b.Max)}
	}
	if len(l.sheets) > 0 {
		elements = append(elements, Path{Lines: part(l.here).polygon().lines(), Fill: black.tint(0.22)})
	}
	var site []Line
	for _, polygon := range l.site.Polygons() {
		for _, ring := range polygon.Rings() {
			line := Line{Closed: true}
			for _, p := range ring {
				line.Points = append(line.Points, place(l.tiling.lie.onSheet(p)))
			}
			site = append(site, line)
		}
	}
	elements = append(elements,
		Path{Lines: site, Stroke: black, Weight: thinLine},
		Path{Lines: l.tiling.sides(0, place), Stroke: black, Weight: thinLine, Dash: []float64{1, 0.6}})
	for i, sheet := range l.sheets {
		at := part(i).center().plus(0, -Bold.capHeight(mapSize)/2)
		elements = append(elements, numbered{
			text:  Text{At: at, Face: Bold, Size: mapSize, Ink: black, Anchor: Middle, Halo: 0.5},
			sheet: sheet,
			words: func(number, _ int) string { return fmt.Sprint(number) },
		})
	}
	return elements, head + 2*margin + extent.Height()*mmPerMetre
}
