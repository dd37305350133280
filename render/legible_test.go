package render

import (
	"encoding/xml"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestLegible(t *testing.T) {
	for _, tt := range []struct{ name, in, want, missing string }{
		{"plain", "Back bed 2", "Back bed 2", ""},
		{"white space", " Back\t bed\r\n2 ", "Back bed 2", ""},
		{"controls", "a\x00b\x1bc\u202ed\u00ade\x7f", "abcde", ""},
		{"C1 controls, which the font maps to letters", "a\u0080b", "ab", ""},
		{"invalid UTF-8", "a\xffb", "ab", ""},
		{"accent apart from its letter", "Jardi\u0301n", "Jardín", ""},
		{"Greek and Cyrillic", "Αυλή Газон", "Αυλή Газон", ""},
		{"signs of the trade", "9,870 ft² ± 120 – ½ × 5° ≥ 3", "9,870 ft² ± 120 – ½ × 5° ≥ 3", ""},
		{"no-break space", "5\u00a0lb", "5\u00a0lb", ""},
		{"running left", "חצר 2", rtl + "חצר 2" + end, ""},
		{"running both ways", "North / חצר", ltr + "North / חצר" + end, ""},
		{"isolates of its own", "\u2067חצר\u2069 \u2069", rtl + "חצר" + end, ""},
		{"joiners that matter", "می\u200cخواهم", rtl + "می\u200cخواهم" + end, ""},
		{"joiners that do not", "a\u200cb ب\u200c \u200dב", ltr + "ab ب ב" + end, ""},
		{"some of it not in the typefaces", "חצר 草", rtl + "חצר ?" + end, "草"},
		{"of the second typeface", "Հայ ễ", "Հայ ễ", ""},
		{"not in the typefaces", "草 and 草 and 🌳", "? and ? and ?", "草🌳"},
		{"markup", `<b>"&`, `<b>"&`, ""},
	} {
		got, missing := Legible(tt.in)
		if got != tt.want || string(missing) != tt.missing {
			t.Errorf("%s: Legible(%q) = %q, %q, want %q, %q", tt.name, tt.in, got, string(missing), tt.want, tt.missing)
		}
	}
}

func TestLegibleIsDrawableAndSettled(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := rapid.String().Draw(t, "text")
		got, _ := Legible(in)
		if missing := missing(got); len(missing) > 0 {
			t.Fatalf("Legible(%q) = %q still lacks %q", in, got, string(missing))
		}
		if again, _ := Legible(got); again != got {
			t.Fatalf("Legible(%q) = %q, and again %q", in, got, again)
		}
	})
}

func FuzzPlainIsFitForXML(f *testing.F) {
	for _, seed := range []string{"a\x00b", "\ufffe", "</title>", "]]>", "\xed\xa0\x80", "🌳"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		var back string
		want := plain(text)
		if err := xml.Unmarshal([]byte("<t>"+escaped(want)+"</t>"), &back); err != nil || back != want {
			t.Errorf("%q: %q, %v", text, back, err)
		}
	})
}

func TestTextThatCannotBeDrawnIsRefused(t *testing.T) {
	s := NewSheet("x", "x", A4)
	s.Add(Text{String: "草", Size: 9, Ink: black})
	for name, write := range writers {
		if _, err := write(s); err == nil || !strings.Contains(err.Error(), "U+8349") {
			t.Errorf("%s: error %v does not name the letter", name, err)
		}
	}
}

func TestFacesCoverTheSame(t *testing.T) {
	for r := rune(0); r < 0x20000; r++ {
		has := Regular.font().GlyphIndex(r) != 0
		for _, f := range []Face{Medium, Bold, Italic} {
			if (f.font().GlyphIndex(r) != 0) != has {
				t.Fatalf("%U is in one of %s and %s only", r, Regular, f)
			}
		}
	}
}
