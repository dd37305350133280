package render

import (
	"slices"
	"unicode/utf8"

	"github.com/tdewolff/canvas/text"
)

type failing interface {
	Helper()
	Fatalf(string, ...any)
	Fatal(...any)
}

// checkJoining shapes the runs of a name with the font that a drawing of it
// holds. Marks may be drawn one by one that the whole font ties, and joiners are
// not drawn.
func checkJoining(t failing, name string) {
	t.Helper()
	used := lettersOf([]Element{Text{String: name, Size: 9, Ink: black}})
	for _, of := range used[secondRegular:] {
		if !of.drawn() {
			continue
		}
		file, err := secondRegular.subset(of)
		if err != nil {
			t.Fatal(err)
		}
		embedded, err := text.NewShaper(file, 0)
		if err != nil {
			t.Fatal(err)
		}
		glyphs, _ := secondRegular.glyphsOf(of)
		for _, r := range of.runs {
			var got, want []uint16
			for _, g := range embedded.Shape(r.text, 0, r.direction(), 0, "", "", "") {
				if id := glyphs[g.ID]; !isMark(id) && !isJoiner(g.Text) {
					got = append(got, id)
				}
			}
			for _, g := range r.glyphs {
				if letter, _ := utf8.DecodeRuneInString(g.letters); !isMark(g.id) && !isJoiner(letter) {
					want = append(want, g.id)
				}
			}
			if !slices.Equal(got, want) {
				t.Fatalf("%+q: the font of the drawing gives %+q the glyphs %d, want %d", name, r.text, got, want)
			}
		}
	}
}

func isMark(glyph uint16) bool { return secondRegular.font().GlyphAdvance(glyph) == 0 }
