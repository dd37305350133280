package render

// northArrow returns a dart that points north, height millimetres long with
// its letter, whose foot stands at a point. Turn is the direction of north in
// degrees counter-clockwise from the top of the sheet; the letter stays level, as
// one on its side is another letter.
func northArrow(foot Point, height, turn float64) Group {
	shaft := height * 0.72
	place := func(x, y float64) Point { return Point{x, y}.turned(turn).plus(foot.X, foot.Y) }
	tip, notch := place(0, shaft), place(0, shaft*0.22)
	left, right := place(-shaft*0.3, 0), place(shaft*0.3, 0)
	size := height * 0.32 / mmPerPoint
	cap := Bold.capHeight(size)
	letter := place(0, shaft+height*0.06+cap/2).plus(0, -cap/2)
	return Group{ID: "north", Title: "North arrow", Elements: []Element{
		Path{Lines: polygon{{tip, notch, right}}.lines(), Fill: white, Stroke: black, Weight: thinLine},
		Path{Lines: polygon{{tip, left, notch}}.lines(), Fill: black, Stroke: black, Weight: thinLine},
		Text{At: letter, String: "N", Face: Bold, Size: size, Ink: black, Anchor: Middle},
	}}
}
