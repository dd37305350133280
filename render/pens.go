package render

import (
	"math"

	"example.org/turfplat/zones"
)

// Pens draw lines of the ground, each with a symbol of its own.

// outlinePen is the surveyor's line of a property: long dashes, two dots.
func outlinePen(lines []Line) []Element {
	return []Element{
		Path{Lines: lines, Stroke: white, Weight: 2.2 * broadLine},
		Path{Lines: lines, Stroke: black, Weight: broadLine, Dash: []float64{5, 1.1, 0.8, 1.1, 0.8, 1.1}},
	}
}

// zoneEdge is where zones part.
func zoneEdge(lines []Line) []Element {
	return []Element{Path{Lines: lines, Stroke: accent, Weight: heavyLine}}
}

var barriers = map[zones.Kind]func([]Line) []Element{
	zones.Fence:   fence,
	zones.Wall:    wall,
	zones.Hedge:   hedge,
	zones.Cutline: cutline,
}

// fence is a line with crosses.
func fence(lines []Line) []Element {
	const every, arm = 5.0, 0.6
	var crosses []Line
	for _, p := range along(lines, every) {
		crosses = append(crosses,
			Line{Points: []Point{p.plus(-arm, -arm), p.plus(arm, arm)}},
			Line{Points: []Point{p.plus(-arm, arm), p.plus(arm, -arm)}})
	}
	return []Element{Path{Lines: lines, Stroke: black, Weight: thinLine}, Path{Lines: crosses, Stroke: black, Weight: thinLine}}
}

// wall is a double line.
func wall(lines []Line) []Element {
	return []Element{
		Path{Lines: lines, Stroke: black, Weight: 2 * heavyLine},
		Path{Lines: lines, Stroke: white, Weight: heavyLine},
	}
}

// hedge is a row of shrubs.
func hedge(lines []Line) []Element {
	const every, radius = 1.9, 0.75
	var shrubs []Line
	for _, p := range along(lines, every) {
		shrubs = append(shrubs, disc(p, radius).lines()...)
	}
	return []Element{Path{Lines: shrubs, Fill: white, Stroke: accent, Weight: thinLine}}
}

// cutline is where a person meant to divide the turf.
func cutline(lines []Line) []Element {
	return []Element{Path{Lines: lines, Stroke: grey, Weight: thinLine, Dash: []float64{1, 0.8}}}
}

// along returns places every so many millimetres along lines, the first half
// a step from the start.
func along(lines []Line, every float64) []Point {
	var places []Point
	for _, line := range lines {
		next := every / 2
		for i := 1; i < len(line.Points); i++ {
			a, b := line.Points[i-1], line.Points[i]
			length := math.Hypot(b.X-a.X, b.Y-a.Y)
			for ; next < length; next += every {
				places = append(places, Point{a.X + (b.X-a.X)*next/length, a.Y + (b.Y-a.Y)*next/length})
			}
			next -= length
		}
	}
	return places
}
