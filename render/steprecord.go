package render

// A record is room to write down weather, work and names. It is a block.
type record struct{ blanks []blank }

// A blank is a box to write in.
type blank struct {
	label string
	least float64 // mm wide
}

const blankHeight = 10.5 // mm: a line of handwriting under its label

// record asks for what a record of the step must hold.
func (s stepSheet) record() block {
	speed, warmth := "mph", "°F"
	if s.figures.Metric() {
		speed, warmth = "km/h", "°C"
	}
	r := record{[]blank{
		{"Date", 19}, {"Time in", 19}, {"Time out", 19},
		{"Temp. " + warmth, 19}, {"Wind from", 19}, {"Wind " + speed, 19},
		{"Rain, last and next", 33}, {"Soil moist?", 22},
	}}
	step := s.step.Step
	if s.lays() {
		r.blanks = append(r.blanks, blank{"Actual used", 28}, blank{"Left over", 28})
	}
	if step.Labelled() {
		r.blanks = append(r.blanks, blank{"Product and registration no.", 57})
	}
	r.blanks = append(r.blanks, blank{"Name", 33}, blank{"Licence no.", 22}, blank{"Signature", 57})
	return r
}

// lays reports whether the step puts a material down.
func (s stepSheet) lays() bool { return s.step.Step.ByLabel() || s.step.Step.Rate != nil }

// set implements block.
func (r record) set(corner Point, width float64) (elements []Element, height float64) {
	elements, height = heading("Weather and sign-off", stepSize, corner, width)
	for first := 0; first < len(r.blanks); {
		used, n := 0.0, 0
		for first+n < len(r.blanks) && (n == 0 || used+r.blanks[first+n].least <= width) {
			used += r.blanks[first+n].least
			n++
		}
		x := corner.X
		for _, b := range r.blanks[first : first+n] {
			wide := b.least * width / used
			box := rect{Point{x, corner.Y - height - blankHeight}, Point{x + wide, corner.Y - height}}
			elements = append(elements, Group{Title: b.label, Elements: []Element{
				Path{Lines: box.polygon().lines(), Fill: white, Stroke: black.tint(0.6), Weight: thinLine},
				Text{At: Point{x + cellMargin, baseLine(box.max.Y, 0, Regular, stepSize)}, String: shortened(b.label, Regular, stepSize, wide-2*cellMargin), Size: stepSize, Ink: black},
			}})
			x += wide
		}
		height += blankHeight
		first += n
	}
	return elements, height
}
