package render

import (
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// Hebrew letters, so that no editor turns the lines of a table round.
const alef, bet, gimel = "\u05d0", "\u05d1", "\u05d2"

const rtl, ltr, end = string(isolateRightToLeft), string(isolateLeftToRight), string(isolateEnd)

func TestIsolated(t *testing.T) {
	for _, tt := range []struct{ text, want string }{
		{"Back bed 2", "Back bed 2"},
		{"12", "12"},
		{alef + " 2", rtl + alef + " 2" + end},
		{"2 " + alef, rtl + "2 " + alef + end},
		{"bed " + alef, ltr + "bed " + alef + end},
		{alef + " bed", rtl + alef + " bed" + end},
		{"١٢", rtl + "١٢" + end}, // figures of Arabic
		{"", ""},
	} {
		if got := isolated(tt.text); got != tt.want {
			t.Errorf("%+q is isolated as %+q, want %+q", tt.text, got, tt.want)
		}
	}
}

func TestIsolatesOfBrokenLines(t *testing.T) {
	name := isolated(alef + alef + " " + bet + bet + " " + gimel + gimel)
	room := Regular.width(alef+alef+" "+bet+bet, 9) + 0.1
	for _, tt := range []struct {
		what      string
		got, want []string
	}{
		{"wrapped", wrapped(name, Regular, 9, room), []string{rtl + alef + alef + " " + bet + bet + end, rtl + gimel + gimel + end}},
		{"followed", wrapped(name+", 40 ft²", Regular, 9, room), []string{rtl + alef + alef + " " + bet + bet + end, rtl + gimel + gimel + end + ", 40", "ft²"}},
		{"cut within", []string{shortened(name, Regular, 9, room)}, []string{rtl + alef + alef + "…" + end}},
		{"cut after", []string{shortened(isolated(alef)+", 4,900 ft²", Regular, 9, Regular.width(alef+", 4…", 9)+0.1)}, []string{rtl + alef + end + ", 4…"}},
		{"in two", stringsOf(inTwo(Text{String: name, Size: 9})), []string{rtl + alef + alef + end, rtl + bet + bet + " " + gimel + gimel + end}},
		{"joined again", []string{rejoined(wrapped(name, Regular, 9, room)...)}, []string{name}},
	} {
		if !slices.Equal(tt.got, tt.want) {
			t.Errorf("%s: %+q, want %+q", tt.what, tt.got, tt.want)
		}
	}
}

func stringsOf(lines []Text) (texts []string) {
	for _, t := range lines {
		texts = append(texts, t.String)
	}
	return texts
}

// However a text is broken or cut, each line opens and closes its own isolates,
// fits, and none of its letters is torn from its marks.
func TestBrokenLinesAreWhole(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := shapedText().Draw(t, "text") + ", 4,900 ft²"
		width := rapid.Float64Range(12, 60).Draw(t, "width")
		lines := wrapped(text, Medium, 9, width)
		plainOf := func(s string) string { return strings.ReplaceAll(plain(s), " ", "") }
		if got := plainOf(strings.Join(lines, "")); got != plainOf(text) {
			t.Fatalf("%+q became %+q", text, lines)
		}
		for _, line := range append(lines, shortened(text, Medium, 9, width)) {
			if w := Medium.width(line, 9); w > width+1e-9 {
				t.Fatalf("%+q is %g mm wide, more than %g", line, w, width)
			}
			open := 0
			for _, r := range line {
				switch {
				case r == isolateEnd:
					open--
				case isolates(r):
					open++
				}
				if open < 0 {
					t.Fatalf("%+q closes more than it opens", line)
				}
			}
			if open != 0 {
				t.Fatalf("%+q stays open", line)
			}
		}
	})
}
