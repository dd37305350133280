package render

import (
	"cmp"
	"math"
	"slices"
	"strings"
	"testing"
	"unicode"
	"unicode/utf16"

	"github.com/tdewolff/canvas"
	"pgregory.net/rapid"
)

// namesBothWays are names with letters that run from right to left, alone and
// among others, with figures, units, brackets, marks and ties.
var namesBothWays = []string{
	"חצר קדמית", "גינה 3 ליד השער", "North lawn / גינה 2", "חצר (א) 12", "גינה 40 ft, 3.5%", "שָׁלוֹם", "גִּנָּה",
	"الحديقة الخلفية", "مرج 12 ب", "مرج ١٢ ب", "حَدِيقة", "شَدَّة", "باغچهٔ پشتی ۱۲", "می\u200cخواهم", "A/B #7 (NW) אבג [5 ft²] لا",
	"لا الله ولا", "نص حكيم له سر قاطع", "وذو شأن عظيم مكتوب", "على ثوب أخضر وأزرق", "דג סקרן שט בים מאוכזב", "ולפתע מצא חברה", "ڤ ٻ ڕ ێ ڎ", "لَا", "ښکلی ډېر", "אבג دهو",
}

// seen writes the letters of a line as they stand, from the left.
func seen(s string) string {
	runs := slices.Clone(Regular.shaped(s).runs)
	slices.SortFunc(runs, func(a, b run) int { return cmp.Compare(a.x, b.x) })
	mirrored := strings.NewReplacer("(", ")", ")", "(")
	var out strings.Builder
	for _, r := range runs {
		for _, g := range r.glyphs {
			if r.level%2 == 1 {
				g.letters = mirrored.Replace(g.letters)
			}
			out.WriteString(g.letters)
		}
	}
	return out.String()
}

func TestLinesRunBothWays(t *testing.T) {
	const a, b, g = "\u05d0", "\u05d1", "\u05d2" // alef, bet, gimel: no editor turns them round
	for _, tt := range []struct{ text, want string }{
		{"lawn " + a + b + g, "lawn " + g + b + a},
		{isolated(a + b + " 12 " + g), g + " 12 " + b + a},
		{isolated("lawn / " + a + b + " 2"), "lawn / 2 " + b + a},
		{isolated(a+b) + ", 4,900 ft²", b + a + ", 4,900 ft²"},
		{isolated("lawn "+a+b) + ", 4,900 ft²", "lawn " + b + a + ", 4,900 ft²"},
		{a + b + ", 4,900 ft²", "4,900 ," + b + a + " ft²"}, // what isolates are for
		{isolated(a + b + " (" + g + ")"), "(" + g + ") " + b + a},
		{isolated(a + " 40 ft, " + b), b + " ,ft 40 " + a},
		{isolated(a + "…"), "…" + a},
	} {
		if got := seen(tt.text); got != tt.want {
			t.Errorf("%+q is seen as %+q, want %+q", tt.text, got, tt.want)
		}
	}
}

func TestRunsTakeTheFaceThatHasTheirLetters(t *testing.T) {
	for _, tt := range []struct {
		face Face
		text string
		want []Face
	}{
		{Regular, "Back bed", []Face{Regular}},
		{Italic, "Bed חצר", []Face{Italic, secondRegular}},
		{Medium, "חצר קדמית", []Face{secondRegular, Medium, secondRegular}},
		{Bold, "مرج", []Face{secondBold}},
		{Regular, "x\u0302 y", []Face{secondRegular, Regular}}, // a letter stays with its mark
		{Regular, "庭", []Face{Regular}},
	} {
		var got []Face
		for _, r := range tt.face.shaped(tt.text).runs {
			got = append(got, r.face)
		}
		if !slices.Equal(got, tt.want) {
			t.Errorf("%q in %s is drawn in %v, want %v", tt.text, tt.face, got, tt.want)
		}
	}
}

// shapedText draws words of the scripts that are shaped, with marks and figures.
func shapedText() *rapid.Generator[string] {
	return rapid.Custom(func(t *rapid.T) string {
		var words []string
		for _, alphabet := range rapid.SliceOfN(rapid.SampledFrom([]string{
			"abc12", "(", ")", "/", "12", "١٢", "۱۲", "Հայ",
			"אבגדהוזחטיכלמנסעפצקרשתךםןףץ\u05b4\u05b8\u05bc\u05c1",
			"ابتثجحخدذرزسشصضطظعغفقكلمنهويىةءآأإئؤ\u064e\u0650\u0651\u0652پچژگیډښڼ\u200c",
		}), 1, 6).Draw(t, "scripts") {
			word := rapid.StringOfN(rapid.SampledFrom([]rune(alphabet)), 1, 8, -1).Draw(t, "word")
			words = append(words, strings.TrimLeftFunc(word, unicode.IsMark)) // marks follow letters
		}
		label, _ := Legible(strings.Join(words, " "))
		return label
	})
}

// Canvas draws runs by their letters, without the marks. It must leave the letters
// where they were measured, with the glyphs that were: but for letters that the
// font has another form of under a mark, a little wider or less so.
func TestCanvasDrawsRunsAsTheyAreShaped(t *testing.T) {
	fonts := make(map[Face]*canvas.Font)
	for f := range cuts {
		font, err := canvas.LoadFont(cuts[f].file, 0, canvas.FontRegular)
		if err != nil {
			t.Fatal(err)
		}
		fonts[Face(f)] = font
	}
	rapid.Check(t, func(t *rapid.T) {
		s := shapedText().Draw(t, "text")
		for _, r := range Bold.shaped(s).runs {
			marks := r.marks()
			letters := slices.DeleteFunc(slices.Clone(r.glyphs), func(g glyph) bool { return g.mark })
			face := fonts[r.face].Face(9, canvas.Black)
			face.Direction = r.direction()
			em, pen, drawn, within := 9*mmPerPoint, 0.0, 0, 1e-9
			if len(marks) > 0 {
				within = 0.01 // mm a letter
			}
			canvas.NewTextLine(face, r.without(marks), canvas.Left).WalkSpans(func(x, _ float64, span canvas.TextSpan) {
				if math.Abs(x-pen) > 1e-9 {
					t.Fatalf("%+q: part of %+q stands at %g mm, not %g", s, r.text, x, pen)
				}
				for _, g := range span.Glyphs {
					if drawn >= len(letters) {
						t.Fatalf("%+q: %+q is drawn with more than %d letters", s, r.text, len(letters))
					}
					want := letters[drawn]
					drawn++
					if g.XOffset != 0 || g.YOffset != 0 || math.Abs(pen-want.x*em) > within*float64(drawn) || g.ID != want.id && len(marks) == 0 {
						t.Fatalf("%+q: glyph %d of %+q stands at %g mm, shaped as %d at %g mm", s, g.ID, r.text, pen, want.id, want.x*em)
					}
					pen += float64(g.XAdvance) / float64(r.face.font().Head.UnitsPerEm) * em
				}
			})
			if drawn != len(letters) || math.Abs(pen-r.width*em) > within*float64(drawn+1) {
				t.Fatalf("%+q: %+q is drawn with %d letters %g mm wide, shaped with %d, %g mm", s, r.text, drawn, pen, len(letters), r.width*em)
			}
		}
	})
}

// The letters of a drawing bring along how they join: a viewer that shapes with
// the fonts embedded in it chooses the same forms.
func TestEmbeddedLettersJoin(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		checkJoining(t, strings.Map(unmarked, shapedText().Draw(t, "text")))
	})
	for _, name := range namesBothWays {
		checkJoining(t, name)
	}
}

// Whatever a name holds, it can be measured, rimmed and embedded.
func FuzzNames(f *testing.F) {
	for _, name := range append(namesBothWays, "אֱִُ\u200d", "\u0600١", "ﷺﷲ", "ߒߞߏ", "ລາວ", "ⵜⴰ", "\u0300\u05b8", "()[]{}א", "🌳\ufe0f") {
		f.Add(name)
	}
	f.Fuzz(func(t *testing.T, name string) {
		label := (&lettering{}).of(name)
		text := Text{String: label, Face: Bold, Size: 9, Ink: black, Halo: 0.5}
		if err := text.check(); err != nil {
			t.Fatal(err)
		}
		w := text.width()
		if up, down := text.reach(); !(w >= 0 && w < largestSheet*10 && up < 100 && down < 100) {
			t.Errorf("%+q is %g mm wide and reaches %g mm up and %g mm down", label, w, up, down)
		}
		text.halo()
		used := lettersOf([]Element{text})
		for face, of := range used {
			if !of.drawn() {
				continue
			}
			if _, err := Face(face).subset(of); err != nil {
				t.Error(err)
			}
		}
	})
}

// unmarked leaves out marks: with them the whole font has some letters of its
// own, which a drawing need not have.
func unmarked(r rune) rune {
	if unicode.IsMark(r) {
		return -1
	}
	return r
}

func TestLinesStandAsInABrowser(t *testing.T) {
	c := startChromium(t)
	s := NewSheet("lines", "Lines", A4)
	for i, name := range namesBothWays {
		for j, face := range []Face{Regular, Bold, Italic} {
			label, missing := Legible(name)
			if len(missing) > 0 {
				t.Fatalf("%q lacks %q", name, missing)
			}
			s.Add(Text{At: Point{5 + 70*float64(j), 290 - 9*float64(i)}, String: label + ", 4,900 ft²", Face: face, Size: 12, Ink: black})
		}
	}
	b := c.open(desktop, onDisk(t, slices.Concat([]byte("<!doctype html><meta charset=utf-8><body>"), written(t, SVG, s))))
	var places [][]float64 // where each UTF-16 unit of each text starts
	b.eval(`document.fonts.ready.then(() => [...document.querySelectorAll("svg text")].map(t => [...Array(t.getNumberOfChars()).keys()].map(i => t.getStartPositionOfChar(i).x)))`, &places)
	i := 0
	visit(s.Elements, func(e Element) {
		text := e.(Text)
		for _, l := range startsOf(text) {
			if got := places[i][l.unit]; math.Abs(got-l.at) > hairLine/2 { // browsers round the widths of runs
				t.Errorf("%s %+q: letter %d stands at %.2f mm, in the browser at %.2f", text.Face, text.String, l.unit, l.at, got)
			}
		}
		i++
	})
}

// A letterStart is where the writing of a letter starts: at its left, or at its
// right if it runs that way.
type letterStart struct {
	unit int     // number of its UTF-16 unit in the text
	at   float64 // mm
}

func startsOf(t Text) (starts []letterStart) {
	letters := []rune(t.String)
	next := 0
	for _, r := range t.Face.shaped(t.String).runs {
		units := make(map[int]int) // by place in the run
		for i, letter := range r.text {
			for isolates(letters[next]) {
				next++
			}
			if letters[next] != letter {
				panic("a run is not what comes next")
			}
			units[i] = len(utf16.Encode(letters[:next]))
			next++
		}
		for _, g := range r.glyphs {
			advance := float64(r.face.font().GlyphAdvance(g.id)) / float64(r.face.font().Head.UnitsPerEm)
			if advance == 0 || strings.ContainsFunc(g.letters, isJoiner) {
				continue // marks stand where their letters do
			}
			at := r.x + g.x
			if r.level%2 == 1 {
				at += advance
			}
			starts = append(starts, letterStart{units[g.from], t.At.X + at*t.Size*mmPerPoint})
		}
	}
	return starts
}
