package render

import "github.com/tdewolff/font"

// outline returns the contours of a text's letters where they stand on the
// sheet, curves cut into short pieces.
func (t Text) outline() []Line {
	face := metrics()[t.Face]
	scale := t.Size * mmPerPoint / float64(face.Head.UnitsPerEm)
	var pen contourPen
	x := -t.Width() * t.Anchor.share()
	for _, r := range t.String {
		glyph := face.GlyphIndex(r)
		if err := face.GlyphPath(&pen, glyph, 0, x, 0, scale, font.NoHinting); err != nil {
			panic("render: built-in font " + t.Face.String() + ": " + err.Error())
		}
		x += float64(face.GlyphAdvance(glyph)) * scale
	}
	for _, line := range pen.lines {
		for i, p := range line.Points {
			line.Points[i] = p.turned(t.Turn).plus(t.At.X, t.At.Y)
		}
	}
	return pen.lines
}

// halo returns the rim that keeps a text clear of what lies below it.
func (t Text) halo() Path {
	return Path{Lines: t.outline(), Stroke: t.clear(), Weight: 2 * t.Halo}
}

func (t Text) clear() Ink {
	if t.Clear.None() {
		return White
	}
	return t.Clear
}

// contourPen collects the contours of glyphs as closed lines.
type contourPen struct{ lines []Line }

// curvePieces is how many edges stand for a curve; letters have few and short
// curves, and a halo need not be finer.
const curvePieces = 3

func (c *contourPen) MoveTo(x, y float64) {
	c.lines = append(c.lines, Line{Points: []Point{{x, y}}, Closed: true})
}

func (c *contourPen) LineTo(x, y float64) {
	last := &c.lines[len(c.lines)-1]
	last.Points = append(last.Points, Point{x, y})
}

func (c *contourPen) QuadTo(cx, cy, x, y float64) {
	a := c.at()
	for i := 1; i <= curvePieces; i++ {
		t := float64(i) / curvePieces
		u := 1 - t
		c.LineTo(u*u*a.X+2*u*t*cx+t*t*x, u*u*a.Y+2*u*t*cy+t*t*y)
	}
}

// CubeTo is never called by a TrueType font, whose curves are quadratic.
func (c *contourPen) CubeTo(_, _, _, _, x, y float64) { c.LineTo(x, y) }

func (c *contourPen) Close() {
	last := &c.lines[len(c.lines)-1]
	if n := len(last.Points); n > 1 && last.Points[0] == last.Points[n-1] {
		last.Points = last.Points[:n-1]
	}
}

func (c *contourPen) at() Point {
	points := c.lines[len(c.lines)-1].Points
	return points[len(points)-1]
}
