package render

import (
	"sync"

	"github.com/tdewolff/font"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goitalic"
	"golang.org/x/image/font/gofont/gomedium"
	"golang.org/x/image/font/gofont/goregular"
)

const mmPerPoint = mmPerInch / 72

// Face is a cut of the Go typeface (Bigelow and Holmes 2016, BSD licence),
// which keeps 0 and O, 1, l and I apart and covers Latin, Greek and Cyrillic.
// It neither kerns nor ties letters, so that widths add up and "office" is
// found by a search.
type Face int

// Faces.
const (
	Regular Face = iota
	Medium
	Bold
	Italic
)

var cuts = [...]struct {
	name   string
	file   []byte
	weight int // CSS
	style  string
}{
	Regular: {"Go Regular", goregular.TTF, 400, "normal"},
	Medium:  {"Go Medium", gomedium.TTF, 500, "normal"},
	Bold:    {"Go Bold", gobold.TTF, 700, "normal"},
	Italic:  {"Go Italic", goitalic.TTF, 400, "italic"},
}

// String gives the name of the face.
func (f Face) String() string { return cuts[f].name }

// metrics holds the parsed faces. They are read only: whoever needs a subset
// parses a copy of his own, since subsetting writes into the font it is given.
var metrics = sync.OnceValue(func() (parsed [len(cuts)]*font.SFNT) {
	for f := range cuts {
		parsed[f] = Face(f).parse()
	}
	return parsed
})

func (f Face) parse() *font.SFNT {
	parsed, err := font.ParseSFNT(cuts[f].file, 0)
	if err != nil {
		panic("render: built-in font " + f.String() + ": " + err.Error())
	}
	return parsed
}

// Width returns the length of a text in millimetres at a size in points.
func (f Face) Width(text string, size float64) float64 {
	common := &commonAdvances()[f]
	var units int
	for _, r := range text {
		if int(r) < len(common) {
			units += common[r]
		} else {
			units += f.advance(r)
		}
	}
	return float64(units) * size * mmPerPoint / float64(metrics()[f].Head.UnitsPerEm)
}

// advance is the width of a character in units of the font.
func (f Face) advance(r rune) int {
	face := metrics()[f]
	return int(face.GlyphAdvance(face.GlyphIndex(r)))
}

// commonAdvances holds the widths of Latin, Greek and Cyrillic letters: looking
// up each letter in the font takes most of the time of a layout.
var commonAdvances = sync.OnceValue(func() *[len(cuts)][0x500]int {
	var advances [len(cuts)][0x500]int
	for f := range advances {
		for r := range advances[f] {
			advances[f][r] = Face(f).advance(rune(r))
		}
	}
	return &advances
})

// CapHeight returns the height of a capital letter in millimetres at a size in
// points.
func (f Face) CapHeight(size float64) float64 {
	face := metrics()[f]
	return float64(face.OS2.SCapHeight) * size * mmPerPoint / float64(face.Head.UnitsPerEm)
}

// Descent returns how far letters reach below the base line, in millimetres at
// a size in points.
func (f Face) Descent(size float64) float64 {
	face := metrics()[f]
	return -float64(face.Hhea.Descender) * size * mmPerPoint / float64(face.Head.UnitsPerEm)
}
