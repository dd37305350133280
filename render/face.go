package render

import (
	"sync"

	"github.com/go-fonts/dejavu/dejavusanscondensed"
	"github.com/go-fonts/dejavu/dejavusanscondensedbold"
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
// found by a search. Letters that it lacks are taken from a second typeface,
// upright, regular or bold, where that has them: Hebrew and Arabic, Armenian,
// Georgian and some more.
type Face int

// Faces.
const (
	Regular Face = iota
	Medium
	Bold
	Italic

	// Cuts of the second typeface, the condensed DejaVu Sans (Bitstream and the
	// DejaVu authors, free licence of their own). Texts do not ask for them.
	secondRegular
	secondBold
)

// faces is how many faces texts may ask for.
const faces = int(secondRegular)

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

	secondRegular: {"DejaVu Sans Condensed", dejavusanscondensed.TTF, 400, "normal"},
	secondBold:    {"DejaVu Sans Condensed Bold", dejavusanscondensedbold.TTF, 700, "normal"},
}

// String gives the name of the face.
func (f Face) String() string { return cuts[f].name }

// second is the cut of the second typeface that goes with a face.
func (f Face) second() Face {
	if f == Bold {
		return secondBold
	}
	return secondRegular
}

// fontFiles holds the faces, each parsed when it is first needed. They are read
// only: whoever needs a subset parses a copy of his own, since subsetting writes
// into the font it is given.
var fontFiles = func() (fonts [len(cuts)]func() *font.SFNT) {
	for f := range fonts {
		fonts[f] = sync.OnceValue(Face(f).parse)
	}
	return fonts
}()

func (f Face) font() *font.SFNT { return fontFiles[f]() }

func (f Face) parse() *font.SFNT {
	parsed, err := font.ParseSFNT(cuts[f].file, 0)
	if err != nil {
		panic("render: built-in font " + f.String() + ": " + err.Error())
	}
	return parsed
}

// width returns the length of a text in millimetres at a size in points.
func (f Face) width(text string, size float64) float64 {
	common := &commonAdvances()[f]
	var units int
	for _, r := range text {
		advance := lacks
		if int(r) < len(common) {
			advance = common[r]
		} else {
			advance = f.advance(r)
		}
		if advance == lacks {
			return f.shaped(text).width * size * mmPerPoint
		}
		units += advance
	}
	return float64(units) * size * mmPerPoint / float64(f.font().Head.UnitsPerEm)
}

// hasAll reports whether the face has all letters of a text, so that they stand
// side by side as they come.
func (f Face) hasAll(text string) bool {
	common := &commonAdvances()[f]
	for _, r := range text {
		if int(r) < len(common) && common[r] == lacks || int(r) >= len(common) && f.font().GlyphIndex(r) == 0 {
			return false
		}
	}
	return true
}

// lacks is the advance of a character that a face does not have.
const lacks = -1

// advance is the width of a character in units of the font.
func (f Face) advance(r rune) int {
	if glyph := f.font().GlyphIndex(r); glyph != 0 {
		return int(f.font().GlyphAdvance(glyph))
	}
	return lacks
}

// commonAdvances holds the widths of Latin, Greek and Cyrillic letters: looking
// up each letter in the font takes most of the time of a layout.
var commonAdvances = sync.OnceValue(func() *[faces][0x500]int {
	var advances [faces][0x500]int
	for f := range advances {
		for r := range advances[f] {
			advances[f][r] = Face(f).advance(rune(r))
		}
	}
	return &advances
})

// capHeight returns the height of a capital letter in millimetres at a size in
// points.
func (f Face) capHeight(size float64) float64 {
	face := f.font()
	return float64(face.OS2.SCapHeight) * size * mmPerPoint / float64(face.Head.UnitsPerEm)
}

// descent returns how far letters reach below the base line, in millimetres at
// a size in points.
func (f Face) descent(size float64) float64 {
	face := f.font()
	return -float64(face.Hhea.Descender) * size * mmPerPoint / float64(face.Head.UnitsPerEm)
}
