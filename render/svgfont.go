package render

import (
	"encoding/base64"
	"fmt"
	"slices"

	"github.com/tdewolff/font"
)

// families lists the sheet's own embedded fonts, then fonts whose letters are
// about as wide as those of the Go typeface, for viewers that do not take
// embedded ones.
func (w *svgWriter) families(used usedLetters) string {
	own := w.ownFamily()
	if used.second() {
		own += ", " + w.secondFamily()
	}
	return own + ", Go, Arial, 'Liberation Sans', Helvetica, 'DejaVu Sans Condensed', sans-serif"
}

// ownFamily differs from sheet to sheet, since each embeds other letters.
func (w *svgWriter) ownFamily() string { return "go-" + w.name }

func (w *svgWriter) secondFamily() string { return "second-" + w.name }

// fonts embeds the letters that the elements use. Those of the second typeface
// are a family of their own, which letters are looked for in that the first
// lacks.
func (w *svgWriter) fonts(used usedLetters) error {
	if !used.any() {
		return nil
	}
	w.printf("<style>\n")
	for f, cut := range cuts {
		if len(used[f].letters) == 0 {
			continue
		}
		file, err := Face(f).subset(used[f])
		if err != nil {
			return err
		}
		family := w.ownFamily()
		if f >= faces {
			family = w.secondFamily()
		}
		w.printf("@font-face{font-family:%s;font-weight:%d;font-style:%s;src:url(data:font/ttf;base64,%s)}\n",
			family, cut.weight, cut.style, base64.StdEncoding.EncodeToString(file))
	}
	if used.second() {
		w.printf("text{font-synthesis:none}\n") // Hebrew and Arabic letters are not slanted
	}
	w.printf("</style>\n")
	return nil
}

// usedLetters are what is drawn in each face: letters in order, and the runs of
// texts that are more than letters side by side.
type usedLetters [len(cuts)]usedOfFace

type usedOfFace struct {
	letters []rune
	runs    []run
}

// lettersOf returns what is drawn in each face.
func lettersOf(elements []Element) (used usedLetters) {
	visit(elements, func(e Element) {
		t, ok := e.(Text)
		if !ok {
			return
		}
		if t.Face.hasAll(t.String) {
			used[t.Face].letters = append(used[t.Face].letters, []rune(t.String)...)
			return
		}
		for _, r := range t.Face.shaped(t.String).runs {
			of := &used[r.face]
			of.letters, of.runs = append(of.letters, []rune(r.text)...), append(of.runs, r)
		}
	})
	for f := range used {
		slices.Sort(used[f].letters)
		used[f].letters = slices.Compact(used[f].letters)
	}
	return used
}

func (u *usedLetters) any() bool { return slices.ContainsFunc(u[:], usedOfFace.drawn) }

// second reports whether anything is drawn in the second typeface.
func (u *usedLetters) second() bool { return slices.ContainsFunc(u[faces:], usedOfFace.drawn) }

func (u usedOfFace) drawn() bool { return len(u.letters) > 0 }

// subset returns a TrueType file with no letters but those that are drawn, and
// the forms they have beside others.
func (f Face) subset(used usedOfFace) ([]byte, error) {
	whole := f.parse()
	glyphs, forms := f.glyphsOf(used)
	part, err := whole.Subset(glyphs, font.SubsetOptions{Tables: []string{
		"OS/2", "cmap", "cvt ", "fpgm", "gasp", "glyf", "head", "hhea", "hmtx", "loca", "maxp", "name", "post", "prep",
	}})
	if err != nil {
		return nil, fmt.Errorf("letters of %s cannot be embedded: %w", f, err)
	}
	f.mapCharacters(part, glyphs, used.letters)
	if table := forms.table(func(g uint16) uint16 { return uint16(slices.Index(glyphs, g)) }); table != nil {
		part.Tables["GSUB"] = table
	}
	file := part.Write()
	pinDates(file)
	return file, nil
}

// glyphsOf are the glyphs of the letters that are drawn, none first, and how
// they change.
func (f Face) glyphsOf(used usedOfFace) ([]uint16, joining) {
	glyphs := []uint16{0}
	add := func(g uint16) {
		if !slices.Contains(glyphs, g) {
			glyphs = append(glyphs, g)
		}
	}
	for _, r := range used.letters {
		add(f.font().GlyphIndex(r))
	}
	for _, r := range used.runs {
		for _, g := range r.glyphs {
			add(g.id)
		}
	}
	var forms joining
	if f >= secondRegular {
		forms = f.joiningOf(used.runs)
	}
	for _, g := range forms.glyphs() {
		add(g)
	}
	return glyphs, forms
}
