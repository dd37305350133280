package render

import (
	"fmt"
	"slices"
)

// matchLine is where the part of one sheet ends and that of another begins.
func matchLine(lines []Line) []Element {
	return []Element{
		Path{Lines: lines, Stroke: white, Weight: 2.2 * broadLine},
		Path{Lines: lines, Stroke: black, Weight: broadLine, Dash: []float64{2.6, 1.4}},
	}
}

// matchLines draws where a tile joins its neighbours, each line with the number
// of the sheet beyond it. Labels of the ground keep off them.
func (d *draft) matchLines(t tiling, one tile, v view, sheets []*Sheet) []Element {
	own, window := v.part.window, v.window
	var elements []Element
	for _, side := range []struct {
		neighbour tile
		from, to  Point
		out       Point // from the line to its label
		turn      float64
	}{
		{tile{one.column - 1, one.row}, Point{own.min.X, window.min.Y}, Point{own.min.X, window.max.Y}, Point{-1, 0}, 90},
		{tile{one.column + 1, one.row}, Point{own.max.X, window.min.Y}, Point{own.max.X, window.max.Y}, Point{1, 0}, 90},
		{tile{one.column, one.row - 1}, Point{window.min.X, own.min.Y}, Point{window.max.X, own.min.Y}, Point{0, -1}, 0},
		{tile{one.column, one.row + 1}, Point{window.min.X, own.max.Y}, Point{window.max.X, own.max.Y}, Point{0, 1}, 0},
	} {
		beyond := t.index(side.neighbour)
		if beyond < 0 {
			continue
		}
		elements = append(elements, matchLine([]Line{{Points: []Point{side.from, side.to}}})...)
		elements = append(elements, d.joins(side.from, side.to, side.out, side.turn, sheets[beyond], d.spotsOfSigns(v)))
		d.labels.take(strokePlate(side.from, side.to, 2.2*broadLine))
	}
	return elements
}

// joins is the label of a match line, beyond its middle or as near to that as
// there are no signs.
func (d *draft) joins(from, to, out Point, turn float64, sheet *Sheet, signs board) Element {
	const clear, rim = 1.4, 0.6 // mm
	words := func(number, _ int) string { return fmt.Sprintf("joins sheet %d", number) }
	text := Text{String: words(888, 0), Face: Bold, Size: mapSize, Ink: black, Anchor: Middle, Turn: turn, Halo: rim}
	label := stacked(text)
	off := clear + label.height/2
	center := besideLine(from, to, func(at Point) bool { return signs.free(label.plate(at.plus(out.X*off, out.Y*off), turn)) })
	center = center.plus(out.X*off, out.Y*off)
	d.labels.take(label.plate(center, turn))
	d.joinWords = append(d.joinWords, label.plate(center, turn))
	down := Point{0, -text.Face.capHeight(text.Size) / 2}.turned(turn)
	text.At = center.plus(down.X, down.Y)
	return numbered{text, sheet, words}
}

// besideLine is the point of a line nearest to its middle that is free; the
// middle itself if none is.
func besideLine(from, to Point, free func(Point) bool) Point {
	const steps = 40 // to either end
	middle := Point{(from.X + to.X) / 2, (from.Y + to.Y) / 2}
	for i := range 2 * steps * 4 / 5 { // not at the very ends
		share := float64((i+1)/2) / (2 * steps)
		if i%2 == 0 {
			share = -share
		}
		if at := middle.plus(share*(to.X-from.X), share*(to.Y-from.Y)); free(at) {
			return at
		}
	}
	return middle
}

// withMatchLines puts match lines over the ground, but under its signs and
// labels, which break them.
func withMatchLines(ground, joins []Element) []Element {
	if len(joins) == 0 {
		return ground
	}
	top := slices.IndexFunc(ground, func(e Element) bool {
		g, ok := e.(Group)
		return ok && (g.ID == "signs" || g.ID == "labels")
	})
	if top < 0 {
		top = len(ground)
	}
	return slices.Insert(slices.Clone(ground), top, Element(Group{ID: "match-lines", Title: "Match lines", Elements: joins}))
}
