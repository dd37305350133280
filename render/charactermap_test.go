package render

import (
	"slices"
	"testing"

	"github.com/tdewolff/font"
	"pgregory.net/rapid"
)

func TestSubsetsFindTheirLetters(t *testing.T) {
	check := func(t failing, f Face, text string) {
		letters := []rune(text)
		slices.Sort(letters)
		used := usedOfFace{letters: slices.Compact(letters)}
		file, err := f.subset(used)
		if err != nil {
			t.Fatal(err)
		}
		part, err := font.ParseSFNT(file, 0)
		if err != nil {
			t.Fatal(err)
		}
		glyphs, _ := f.glyphsOf(used)
		for _, r := range used.letters {
			want := f.font().GlyphIndex(r)
			if f < secondRegular && f.font().Cmap.ToUnicode(want) != r {
				continue // browsers draw it as the character it looks like
			}
			if got := glyphs[part.GlyphIndex(r)]; got != want {
				t.Fatalf("%s of %q has %q as glyph %d, not %d", f, string(used.letters), r, got, want)
			}
		}
	}
	// letters that are missing are parts of others, and come out of line
	check(t, Regular, "abcdefghijklmnpqrstuvwxyz öó")
	check(t, secondRegular, "جحخدذرزسشضطظعغ")
	rapid.Check(t, func(t *rapid.T) {
		f := Face(rapid.IntRange(0, len(cuts)-1).Draw(t, "face"))
		alphabet := rapid.SampledFrom([][2]rune{{'!', 0x17f}, {0x391, 0x45f}, {0x5d0, 0x64a}, {0x620, 0x6ff}, {0x1d400, 0x1d4ff}}).Draw(t, "alphabet")
		letters := rapid.SliceOfN(rapid.Int32Range(alphabet[0], alphabet[1]), 1, 60).Draw(t, "letters")
		check(t, f, string(slices.DeleteFunc(letters, func(r rune) bool { return f.font().GlyphIndex(r) == 0 })))
	})
}
