package render

import (
	"slices"
	"strings"

	"golang.org/x/text/unicode/norm"
)

// lettering makes names of any origin fit to be drawn, and keeps count of the
// letters that the typefaces lack.
type lettering struct {
	missing  []rune
	verbatim bool // what draws them has every letter, as browsers do
}

// longestName is how many characters of a name are read; no line of a sheet
// holds more.
const longestName = 400

// of returns a text that can be drawn.
func (l *lettering) of(text string) string {
	if letters := []rune(text); len(letters) > longestName {
		text = string(letters[:longestName]) + "…"
	}
	if l.verbatim {
		return isolated(norm.NFC.String(plain(text)))
	}
	fit, missing := Legible(text)
	for _, r := range missing {
		if !slices.Contains(l.missing, r) {
			l.missing = append(l.missing, r)
		}
	}
	return fit
}

// capitalized returns a text with a capital to begin with.
func capitalized(text string) string {
	for i, r := range text {
		if !isolates(r) {
			return text[:i] + strings.ToUpper(string(r)) + text[i+len(string(r)):]
		}
	}
	return text
}
