package render

import (
	"slices"
	"strings"
	"unicode"

	"golang.org/x/text/unicode/norm"
)

// standIn takes the place of a letter that the typeface lacks.
const standIn = '?'

// Legible makes a text of any origin fit to be drawn: control and formatting
// characters go, white space becomes single spaces, accents join their
// letters, and each letter that the typeface lacks becomes a question mark.
// The missing letters are returned, each once, in the order of the text.
func Legible(text string) (string, []rune) {
	text = norm.NFC.String(plain(text))
	missing := Missing(text)
	if len(missing) == 0 {
		return text, nil
	}
	return strings.Map(func(r rune) rune {
		if slices.Contains(missing, r) {
			return standIn
		}
		return r
	}, text), missing
}

// Missing returns the characters of a text that the typeface cannot draw, each
// once. All faces cover the same characters.
func Missing(text string) []rune {
	var missing []rune
	for _, r := range text {
		if !drawable(r) && !slices.Contains(missing, r) {
			missing = append(missing, r)
		}
	}
	return missing
}

// drawable keeps out the controls, which the font maps to some glyph or other.
func drawable(r rune) bool {
	return !unicode.IsControl(r) && r != unicode.ReplacementChar && metrics()[Regular].GlyphIndex(r) != 0
}

// plain drops what cannot be seen and folds white space; what is left is fit
// for XML and PDF strings.
func plain(text string) string {
	seen := strings.Map(func(r rune) rune {
		switch {
		case r == '\u00a0': // keeps numbers and units together
			return r
		case unicode.IsSpace(r):
			return ' '
		case !unicode.IsPrint(r) || r == unicode.ReplacementChar:
			return -1
		}
		return r
	}, text)
	return strings.Join(strings.FieldsFunc(seen, func(r rune) bool { return r == ' ' }), " ")
}
