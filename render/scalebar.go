package render

import (
	"math"
	"strconv"

	"example.org/turfplat/geo"
)

// scaleBarHeight is the height of a scale bar with its figures, in millimetres.
const scaleBarHeight = 11.0

const (
	barThickness  = 1.4 // mm, of either side
	barFigureSize = 9.0 // points
)

// scaleBar returns a bar of true lengths at a scale, feet above and metres
// below, no longer than the given millimetres. Its lower left corner, figures
// included, is at a point.
func scaleBar(corner Point, scale Scale, longest float64) Group {
	const figuresRoom = 12 // mm: half of the first figure, and the name of the unit after the last
	room := longest - figuresRoom
	axis := corner.plus(2, scaleBarHeight/2)
	group := Group{ID: "scale-bar", Title: "Scale bar, " + scale.String()}
	for _, side := range []struct {
		unit   string
		metres float64
		up     bool
	}{{"ft", geo.FootM, true}, {"m", 1, false}} {
		part, parts := barParts(scale.metres(room) / side.metres)
		group.Elements = append(group.Elements, barSide(axis, part, parts, scale.MM(part*side.metres), side.unit, side.up)...)
	}
	return group
}

// barSide draws one side of a bar: parts in black and white with figures.
func barSide(axis Point, part float64, parts int, partMM float64, unit string, up bool) []Element {
	bottom, figures := axis.Y-barThickness, axis.Y-barThickness-1-Regular.capHeight(barFigureSize)
	if up {
		bottom, figures = axis.Y, axis.Y+barThickness+1
	}
	var filled []Line
	var elements []Element
	for i := 0; i <= parts; i++ {
		x := axis.X + float64(i)*partMM
		if i%2 == 0 && i < parts {
			filled = append(filled, rect{Point{x, bottom}, Point{x + partMM, bottom + barThickness}}.polygon().lines()...)
		}
		figure := strconv.FormatFloat(float64(i)*part, 'f', -1, 64)
		elements = append(elements, Text{At: Point{x, figures}, String: figure, Size: barFigureSize, Ink: black, Anchor: Middle})
		if i == parts {
			after := x + Regular.width(figure, barFigureSize)/2 + 0.8
			elements = append(elements, Text{At: Point{after, figures}, String: unit, Size: barFigureSize, Ink: black})
		}
	}
	frame := rect{Point{axis.X, bottom}, Point{axis.X + float64(parts)*partMM, bottom + barThickness}}.polygon()
	return append([]Element{
		Path{Lines: frame.lines(), Fill: white},
		Path{Lines: filled, Fill: black},
		Path{Lines: frame.lines(), Stroke: black, Weight: hairLine},
	}, elements...)
}

// barParts returns the longest bar of three to five parts within a limit. Parts
// are 1, 2 or 5 times a power of ten.
func barParts(limit float64) (part float64, parts int) {
	power := math.Pow(10, math.Floor(math.Log10(limit))-1)
	longest := 0.0
	for _, step := range []float64{1, 2, 5, 10, 20} {
		for n := 3; n <= 5; n++ {
			if length := float64(n) * step * power; length <= limit && length >= longest {
				part, parts, longest = step*power, n, length
			}
		}
	}
	return part, parts
}
