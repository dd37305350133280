package render

// Signs for places on the ground, height millimetres tall and centred on a
// point. Each has a shape of its own, so that it is told apart without colour;
// all are white and black and stay clear of what lies below by a white rim.

// StartSign is where work begins: a black disc with an S.
func StartSign(at Point, height float64) Group {
	return Group{ID: "start", Title: "Start", Elements: letterBadge(Disc(at, height/2), at, height, "S")}
}

// RefillSign is where the hopper or tank is filled: a black square with an R.
func RefillSign(at Point, height float64) Group {
	h := height * 0.46
	square := Rect{at.plus(-h, -h), at.plus(h, h)}.Polygon()
	return Group{ID: "refill", Title: "Refill", Elements: letterBadge(square, at, height, "R")}
}

func letterBadge(shape Polygon, at Point, height float64, letter string) []Element {
	size := height * 0.62 / mmPerPoint
	return []Element{
		Path{Lines: shape.Lines(), Fill: Black, Stroke: White, Weight: BroadLine},
		Path{Lines: shape.Lines(), Fill: Black},
		Text{At: at.plus(0, -Bold.CapHeight(size)/2), String: letter, Face: Bold, Size: size, Ink: White, Anchor: Middle},
	}
}

// HazardSign warns: a white triangle with a stroke and a dot in it.
func HazardSign(at Point, height float64) Group {
	const slant = 0.58 // half the base of an equilateral triangle of height 1
	foot := -height * 0.42
	triangle := Polygon{{at.plus(-slant*height, foot), at.plus(slant*height, foot), at.plus(0, foot+height)}}
	mark := Line{Points: []Point{at.plus(0, foot+height*0.36), at.plus(0, foot+height*0.68)}}
	return Group{ID: "hazard", Title: "Hazard", Elements: []Element{
		Path{Lines: triangle.Lines(), Fill: White, Stroke: White, Weight: height * 0.24},
		Path{Lines: triangle.Lines(), Fill: White, Stroke: Black, Weight: height * 0.1},
		Path{Lines: []Line{mark}, Stroke: Black, Weight: height * 0.12, Round: true},
		Path{Lines: Disc(at.plus(0, foot+height*0.18), height*0.07).Lines(), Fill: Black},
	}}
}

// GateSign is a way in: a leaf of rails with a brace, between two posts.
func GateSign(at Point, height float64) Group {
	place := func(x, y float64) Point { return at.plus(x*height, y*height) }
	box := func(x0, y0, x1, y1 float64) Polygon { return Rect{place(x0, y0), place(x1, y1)}.Polygon() }
	posts := append(box(-0.62, -0.5, -0.46, 0.5), box(0.46, -0.5, 0.62, 0.5)...)
	rails := []Line{
		{Points: []Point{place(-0.46, 0.28), place(0.46, 0.28)}},
		{Points: []Point{place(-0.46, -0.3), place(0.46, -0.3)}},
		{Points: []Point{place(-0.46, -0.3), place(0.46, 0.28)}},
	}
	return Group{ID: "gate", Title: "Gate", Elements: []Element{
		Path{Lines: box(-0.72, -0.6, 0.72, 0.6).Lines(), Fill: White},
		Path{Lines: rails, Stroke: Black, Weight: height * 0.07},
		Path{Lines: posts.Lines(), Fill: Black},
	}}
}
