package render

import (
	"cmp"
	"math"
	"slices"

	"github.com/tdewolff/font"
)

// letters calls visit with the contours of each letter where it stands on the
// sheet, curves cut into short pieces.
func (t Text) letters(visit func([]Line)) {
	start := -t.width() * t.Anchor.share()
	em := t.Size * mmPerPoint
	if !t.Face.hasAll(t.String) {
		for _, r := range t.Face.shaped(t.String).runs {
			for _, g := range r.glyphs {
				visit(t.outline(r.face, g.id, start+(r.x+g.x)*em, g.y*em))
			}
		}
		return
	}
	face := t.Face.font()
	for _, r := range t.String {
		glyph := face.GlyphIndex(r)
		visit(t.outline(t.Face, glyph, start, 0))
		start += float64(face.GlyphAdvance(glyph)) * (em / float64(face.Head.UnitsPerEm))
	}
}

// outline is a glyph of the text, some millimetres along and above its base line
// from where it stands.
func (t Text) outline(f Face, glyph uint16, along, above float64) []Line {
	var pen contourPen
	face := f.font()
	scale := t.Size * mmPerPoint / float64(face.Head.UnitsPerEm)
	if err := face.GlyphPath(&pen, glyph, 0, along, above, scale, font.NoHinting); err != nil {
		panic("render: built-in font " + f.String() + ": " + err.Error())
	}
	for _, line := range pen.lines {
		for i, p := range line.Points {
			line.Points[i] = p.turned(t.Turn).plus(t.At.X, t.At.Y)
		}
	}
	return pen.lines
}

// reach returns how far letters stand above and reach below the base line, in
// millimetres: capitals and tails, or what letters of other scripts do.
func (t Text) reach() (up, down float64) {
	up, down = t.Face.capHeight(t.Size), t.Face.descent(t.Size)
	if t.Face.hasAll(t.String) {
		return up, down
	}
	t.At, t.Turn = Point{}, 0
	t.letters(func(letter []Line) {
		for _, contour := range letter {
			for _, p := range contour.Points {
				up, down = max(up, p.Y), max(down, -p.Y)
			}
		}
	})
	return up, down
}

// halo returns the rim that keeps a text clear of what lies below it: a clear
// patch under each letter, with the rim round it.
func (t Text) halo() Path {
	var patches []Line
	t.letters(func(letter []Line) {
		var points []Point
		for _, contour := range letter {
			points = append(points, contour.Points...)
		}
		if patch := hull(points); len(patch) > 0 {
			patches = append(patches, Line{Points: coarse(patch, t.Halo*rimShare), Closed: true})
		}
	})
	return Path{Lines: patches, Fill: t.clear(), Stroke: t.clear(), Weight: 2 * t.Halo}
}

// rimShare is how far the line of a rim may be off, as a share of its width:
// what nobody sees is most of a file.
const rimShare = 0.2

// hull returns the convex hull of points, counter-clockwise (Andrew 1979,
// Information Processing Letters 9).
func hull(points []Point) []Point {
	slices.SortFunc(points, func(a, b Point) int { return cmp.Or(cmp.Compare(a.X, b.X), cmp.Compare(a.Y, b.Y)) })
	half := func() []Point {
		var chain []Point
		for _, p := range points {
			for n := len(chain); n > 1 && !turnsLeft(chain[n-2], chain[n-1], p); n-- {
				chain = chain[:n-1]
			}
			chain = append(chain, p)
		}
		return chain[:max(0, len(chain)-1)]
	}
	lower := half()
	slices.Reverse(points)
	return append(lower, half()...)
}

func turnsLeft(a, b, c Point) bool { return (b.X-a.X)*(c.Y-a.Y)-(b.Y-a.Y)*(c.X-a.X) > 0 }

// coarse leaves out points of a closed line that it can do without and stay
// within some millimetres (Douglas and Peucker 1973), and rounds the others to
// a hundredth.
func coarse(ring []Point, within float64) []Point {
	if len(ring) < 4 {
		return ring
	}
	far := 0
	for i, p := range ring {
		if squaredDistance(p, ring[0], ring[0]) > squaredDistance(ring[far], ring[0], ring[0]) {
			far = i
		}
	}
	kept := append(coarsePart(ring[:far+1], within), coarsePart(append(ring[far:len(ring):len(ring)], ring[0]), within)...)
	for i, p := range kept {
		kept[i] = Point{math.Round(p.X*100) / 100, math.Round(p.Y*100) / 100}
	}
	return kept
}

// coarsePart leaves points out of an open line; the last one is left to the
// part that begins there.
func coarsePart(part []Point, within float64) []Point {
	last := len(part) - 1
	far, most := 0, within*within
	for i := 1; i < last; i++ {
		if d := squaredDistance(part[i], part[0], part[last]); d > most {
			far, most = i, d
		}
	}
	if far == 0 {
		return []Point{part[0]}
	}
	return append(coarsePart(part[:far+1], within), coarsePart(part[far:], within)...)
}

func (t Text) clear() Ink {
	if t.Clear.none() {
		return white
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
