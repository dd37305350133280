package render

import (
	"encoding/base64"
	"fmt"
	"slices"

	"github.com/tdewolff/font"
)

// families lists the sheet's own embedded font, then fonts whose letters are
// about as wide as those of the Go typeface, for viewers that do not take
// embedded ones.
func (w *svgWriter) families() string {
	return w.ownFamily() + ", Go, Arial, 'Liberation Sans', Helvetica, 'DejaVu Sans Condensed', sans-serif"
}

// ownFamily differs from sheet to sheet, since each embeds other letters.
func (w *svgWriter) ownFamily() string { return "go-" + w.name }

// fonts embeds the letters that the elements use.
func (w *svgWriter) fonts(elements []Element) error {
	letters := lettersOf(elements)
	if !slices.ContainsFunc(letters[:], func(l []rune) bool { return len(l) > 0 }) {
		return nil
	}
	w.printf("<style>\n")
	for f, cut := range cuts {
		if len(letters[f]) == 0 {
			continue
		}
		file, err := Face(f).subset(letters[f])
		if err != nil {
			return err
		}
		w.printf("@font-face{font-family:%s;font-weight:%d;font-style:%s;src:url(data:font/ttf;base64,%s)}\n",
			w.ownFamily(), cut.weight, cut.style, base64.StdEncoding.EncodeToString(file))
	}
	w.printf("</style>\n")
	return nil
}

// lettersOf returns the characters drawn in each face, in order.
func lettersOf(elements []Element) (letters [len(cuts)][]rune) {
	visit(elements, func(e Element) {
		if t, ok := e.(Text); ok {
			letters[t.Face] = append(letters[t.Face], []rune(t.String)...)
		}
	})
	for f := range letters {
		slices.Sort(letters[f])
		letters[f] = slices.Compact(letters[f])
	}
	return letters
}

// subset returns a TrueType file with no letters but those given.
func (f Face) subset(letters []rune) ([]byte, error) {
	whole := f.parse()
	glyphs := []uint16{0}
	for _, r := range letters {
		if g := whole.GlyphIndex(r); !slices.Contains(glyphs, g) {
			glyphs = append(glyphs, g)
		}
	}
	part, err := whole.Subset(glyphs, font.SubsetOptions{Tables: []string{
		"OS/2", "cmap", "cvt ", "fpgm", "gasp", "glyf", "head", "hhea", "hmtx", "loca", "maxp", "name", "post", "prep",
	}})
	if err != nil {
		return nil, fmt.Errorf("letters of %s cannot be embedded: %w", f, err)
	}
	file := part.Write()
	pinDates(file)
	return file, nil
}
