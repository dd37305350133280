package render

// Signs for places on the ground, height millimetres tall and centred on a
// point. Each has a shape of its own, so that it is told apart without colour;
// all are white and black and stay clear of what lies below by a white rim.

// startSign is where work begins: a black disc with an S.
func startSign(at Point, height float64) Group {
	return Group{ID: "start", Title: "Start", Elements: letterBadge(disc(at, height/2), at, height, "S")}
}

// refillSign is where the hopper or tank is filled: a black square with an R.
func refillSign(at Point, height float64) Group {
	h := height * 0.46
	square := rect{at.plus(-h, -h), at.plus(h, h)}.polygon()
	return Group{ID: "refill", Title: "Refill", Elements: letterBadge(square, at, height, "R")}
}

func letterBadge(shape polygon, at Point, height float64, letter string) []Element {
	size := height * 0.62 / mmPerPoint
	return []Element{
		Path{Lines: shape.lines(), Fill: black, Stroke: white, Weight: broadLine},
		Path{Lines: shape.lines(), Fill: black},
		Text{At: at.plus(0, -Bold.capHeight(size)/2), String: letter, Face: Bold, Size: size, Ink: white, Anchor: Middle},
	}
}

// hazardSign warns: a white triangle with a stroke and a dot in it.
func hazardSign(at Point, height float64) Group {
	const slant = 0.58 // half the base of an equilateral triangle of height 1
	foot := -height * 0.42
	triangle := polygon{{at.plus(-slant*height, foot), at.plus(slant*height, foot), at.plus(0, foot+height)}}
	mark := Line{Points: []Point{at.plus(0, foot+height*0.36), at.plus(0, foot+height*0.68)}}
	return Group{ID: "hazard", Title: "Hazard", Elements: []Element{
		Path{Lines: triangle.lines(), Fill: white, Stroke: white, Weight: height * 0.24},
		Path{Lines: triangle.lines(), Fill: white, Stroke: black, Weight: height * 0.1},
		Path{Lines: []Line{mark}, Stroke: black, Weight: height * 0.12, Round: true},
		Path{Lines: disc(at.plus(0, foot+height*0.18), height*0.07).lines(), Fill: black},
	}}
}

// gateSign is a way in: a leaf of rails with a brace, between two posts.
func gateSign(at Point, height float64) Group {
	place := func(x, y float64) Point { return at.plus(x*height, y*height) }
	box := func(x0, y0, x1, y1 float64) polygon { return rect{place(x0, y0), place(x1, y1)}.polygon() }
	posts := append(box(-0.62, -0.5, -0.46, 0.5), box(0.46, -0.5, 0.62, 0.5)...)
	rails := []Line{
		{Points: []Point{place(-0.46, 0.28), place(0.46, 0.28)}},
		{Points: []Point{place(-0.46, -0.3), place(0.46, -0.3)}},
		{Points: []Point{place(-0.46, -0.3), place(0.46, 0.28)}},
	}
	return Group{ID: "gate", Title: "Gate", Elements: []Element{
		Path{Lines: box(-0.72, -0.6, 0.72, 0.6).lines(), Fill: white},
		Path{Lines: rails, Stroke: black, Weight: height * 0.07},
		Path{Lines: posts.lines(), Fill: black},
	}}
}
