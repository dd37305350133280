package render

// heading sets a title between two rules, as tables have it.
func heading(title string, size float64, corner Point, width float64) (elements []Element, height float64) {
	height = lineHeight(size) + 2*rowMargin
	return []Element{
		ruled(corner, width, black, heavyLine),
		Text{At: Point{corner.X + cellMargin, baseLine(corner.Y-rowMargin, 0, Bold, size)}, String: title, Face: Bold, Size: size, Ink: black},
		ruled(corner.plus(0, -height), width, black, thinLine),
	}, height
}

func ruled(from Point, width float64, ink Ink, weight float64) Path {
	return Path{Lines: []Line{{Points: []Point{from, from.plus(width, 0)}}}, Stroke: ink, Weight: weight}
}

// notes is room to write in, of a height in millimetres. It is a block.
type notes struct{ height float64 }

const (
	leastNotes = 26.0 // mm worth the while
	noteLine   = 8.0  // mm between lines to write on
)

// set implements block.
func (n notes) set(corner Point, width float64) (elements []Element, height float64) {
	elements, down := heading("Notes", mapSize, corner, width)
	for down += noteLine; down <= n.height; down += noteLine {
		elements = append(elements, ruled(corner.plus(0, -down), width, faint, hairLine))
	}
	return elements, n.height
}
