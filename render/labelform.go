package render

// A form is a label set about its own centre, ready to be placed.
type form struct {
	texts         []Text
	width, height float64 // mm
}

// labelGap is what a label keeps clear of others, in millimetres.
const labelGap = 0.5

// stacked sets lines one above the other, all centred.
func stacked(lines ...Text) form {
	const leading = 1.12
	var f form
	for _, t := range lines {
		above, below := t.beyond(leading)
		f.height += above + t.Size*mmPerPoint*leading + below
		f.width = max(f.width, t.width())
	}
	down := f.height / 2
	for _, t := range lines {
		h := t.Size * mmPerPoint * leading
		above, below := t.beyond(leading)
		t.Anchor = Middle
		t.At = Point{0, down - above - h/2 - t.Face.capHeight(t.Size)/2}
		f.texts = append(f.texts, t)
		down -= above + h + below
	}
	return f
}

// beyond is what letters of other scripts take above and below a line, in
// millimetres.
func (t Text) beyond(leading float64) (above, below float64) {
	if t.Face.hasAll(t.String) {
		return 0, 0
	}
	const clear = 0.15 // mm, from the tails of a larger letter above
	up, down := t.reach()
	return max(0, up+clear-(t.Size*mmPerPoint*leading+t.Face.capHeight(t.Size))/2), down - t.Face.descent(t.Size)
}

// beside sets a large letter to the left of other lines.
func beside(letter Text, lines ...Text) form {
	const gap = 1.4
	right := stacked(lines...)
	left := stacked(letter)
	f := form{width: left.width + gap + right.width, height: max(left.height, right.height)}
	for _, t := range left.texts {
		t.Anchor, t.At.X = Start, -f.width/2
		f.texts = append(f.texts, t)
	}
	for _, t := range right.texts {
		t.Anchor, t.At.X = Start, f.width/2-right.width
		f.texts = append(f.texts, t)
	}
	return f
}

// plate is the ground that the form covers about a centre.
func (f form) plate(center Point, turn float64) plate {
	return turnedPlate(center, f.width, f.height, turn).grown(labelGap)
}

// on draws the form on ground that shows through: its letters have a rim in
// the ink of the ground.
func (f form) on(ground Ink, center Point, turn float64) []Element {
	const rim = 0.6
	return f.set(center, turn, Text{Halo: rim, Clear: ground})
}

// padded returns the form with room at its sides, for a box round it.
func (f form) padded() form {
	const side = 0.7 // mm
	f.width += 2 * side
	return f
}

// boxed draws the form in a box of its own.
func (f form) boxed(center Point) []Element {
	box := f.plate(center, 0)
	frame := Path{Lines: polygon{box[:]}.lines(), Fill: white, Stroke: black, Weight: thinLine}
	return append([]Element{frame}, f.set(center, 0, Text{})...)
}

func (f form) set(center Point, turn float64, like Text) []Element {
	var elements []Element
	for _, t := range f.texts {
		t.At = t.At.turned(turn).plus(center.X, center.Y)
		t.Turn, t.Halo, t.Clear = turn, like.Halo, like.Clear
		elements = append(elements, t)
	}
	return elements
}
