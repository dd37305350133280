package render

import "regexp"

// Point is a place on a sheet, in millimetres to the right of and above the
// lower left corner.
type Point struct{ X, Y float64 }

// Sheet is one side of paper.
type Sheet struct {
	ID            string   // short name of the sheet, for links and file parts
	Title         string   // what the sheet is called
	Name          string   // what it shows, in a word or two; empty is as the title
	Site          string   // name of the site it is of; may be empty
	Subject       string   // what it shows, in a sentence or two, for people who cannot see it
	Lang          string   // BCP 47 tag; empty is "en"
	Width, Height float64  // mm
	Paper         string   // name of the paper
	Scale         Scale    // of the map on it; zero if there is none
	ground        *ground  // where on the earth its map lies; nil if it has none
	Missing       []rune   // letters of names that the typefaces lack, drawn as question marks
	Unlabelled    []string // letters of zones that found no room on the map
	Elements      []Element
}

// NewSheet returns an empty sheet of paper.
func NewSheet(id, title string, paper Paper) *Sheet {
	return &Sheet{ID: id, Title: title, Lang: "en", Width: paper.Width, Height: paper.Height, Paper: paper.Name}
}

// Add puts elements on top of those the sheet holds.
func (s *Sheet) Add(elements ...Element) { s.Elements = append(s.Elements, elements...) }

// name is what lists of sheets call it.
func (s *Sheet) name() string {
	if s.Name == "" {
		return s.Title
	}
	return s.Name
}

// Element is something drawn: a [Path], a [Text] or a [Group].
type Element interface{ element() }

func (Path) element()  {}
func (Text) element()  {}
func (Group) element() {}

// Group holds elements that belong together, bottom first.
type Group struct {
	ID       string // short name; made unique and fit for XML when written
	Title    string // what the group shows; may be empty
	Elements []Element
}

// Line is a chain of straight pieces. A closed line returns to its start,
// which is not repeated.
type Line struct {
	Points []Point
	Closed bool
}

// Path is any number of lines drawn with one pen. Fills follow the non-zero
// rule: holes are wound against the ring round them, as those of a polygon
// must be.
type Path struct {
	Lines  []Line
	Fill   Ink
	Stroke Ink
	Weight float64   // of the stroke, mm
	Dash   []float64 // lengths of dashes and gaps in turn, mm; none is unbroken
	Round  bool      // ends of strokes; square ends stop at the last point
}

// Anchor tells which part of a text stands at its place.
type Anchor int

// Anchors.
const (
	Start Anchor = iota
	Middle
	End
)

// share is the part of the text's width that lies before its place.
func (a Anchor) share() float64 { return float64(a) / 2 }

// Text is one line of letters standing on its base line. The line runs from left
// to right; names in letters that run the other way should be [Legible], which
// isolates them.
type Text struct {
	At     Point
	String string
	Face   Face
	Size   float64 // points
	Ink    Ink
	Anchor Anchor
	Turn   float64 // degrees counter-clockwise about At
	Halo   float64 // width of the clear rim round the letters, mm
	Clear  Ink     // ink of that rim; none is white
}

// width returns the length of the text in millimetres.
func (t Text) width() float64 { return t.Face.width(t.String, t.Size) }

// visit calls see for each path and text of the elements, bottom first.
func visit(elements []Element, see func(Element)) {
	for _, e := range elements {
		switch e := e.(type) {
		case Group:
			visit(e.Elements, see)
		case numbered: // not drawn yet
		default:
			see(e)
		}
	}
}

// lang returns the language tag of the sheet, English where it has none that
// is fit to be written.
func (s *Sheet) lang() string {
	if languageTag.MatchString(s.Lang) {
		return s.Lang
	}
	return "en"
}

// languageTag is the shape of a BCP 47 tag (RFC 5646 2.1), not its registry.
var languageTag = regexp.MustCompile(`^[A-Za-z]{2,8}(-[A-Za-z0-9]{1,8})*$`)
