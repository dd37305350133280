package render

import "math"

// recoloured returns the elements with every ink changed.
func recoloured(elements []Element, change func(Ink) Ink) []Element {
	return reinked(elements, change, change)
}

// monochrome returns the elements in black, white and greys. Lines that are not
// very pale become black: a copier drops grey ones.
func monochrome(elements []Element) []Element { return reinked(elements, Ink.grey, Ink.penGrey) }

// reinked returns the elements with the inks of areas and letters, and those of
// lines changed.
func reinked(elements []Element, area, line func(Ink) Ink) []Element {
	to := func(k Ink, change func(Ink) Ink) Ink {
		if k.none() {
			return k
		}
		return change(k)
	}
	changed := make([]Element, len(elements))
	for i, e := range elements {
		switch e := e.(type) {
		case Group:
			e.Elements = reinked(e.Elements, area, line)
			changed[i] = e
		case Path:
			e.Fill, e.Stroke = to(e.Fill, area), to(e.Stroke, line)
			changed[i] = e
		case Text:
			e.Ink, e.Clear = to(e.Ink, area), to(e.Clear, area)
			changed[i] = e
		case numbered:
			e.text.Ink, e.text.Clear = to(e.text.Ink, area), to(e.text.Clear, area)
			changed[i] = e
		}
	}
	return changed
}

// penGrey returns the grey in which a line of the ink is drawn.
func (k Ink) penGrey() Ink {
	const pale = 0.4 // luminance
	if k.luminance() < pale {
		return black
	}
	return k.grey()
}

// grey returns the grey that is as light as the ink. Very light tints become
// white: a copier turns them into dirt.
func (k Ink) grey() Ink {
	const lightest = 0.82 // luminance
	l := k.luminance()
	if l > lightest {
		return white
	}
	v := 12.92 * l
	if l > 0.0031308 { // IEC 61966-2-1, the inverse of luminance
		v = 1.055*math.Pow(l, 1/2.4) - 0.055
	}
	g := uint8(math.Round(255 * v))
	return Ink{g, g, g, true}
}
