package render

import (
	"slices"
	"strings"
	"unicode"

	"golang.org/x/text/unicode/norm"
)

// standIn takes the place of a letter that the typefaces lack.
const standIn = '?'

// Legible makes a text of any origin fit to be drawn: control and formatting
// characters go, white space becomes single spaces, accents join their
// letters, and each letter that the typefaces lack becomes a question mark. What
// runs from right to left is isolated from what it may come to stand beside. The
// missing letters are returned, each once, in the order of the text.
func Legible(text string) (string, []rune) {
	text = norm.NFC.String(plain(text))
	missing := missing(text)
	if len(missing) == 0 {
		return isolated(text), nil
	}
	return isolated(strings.Map(func(r rune) rune {
		if slices.Contains(missing, r) {
			return standIn
		}
		return r
	}, text)), missing
}

// missing returns the characters of a text that the typefaces cannot draw, each
// once. All faces cover the same characters.
func missing(text string) []rune {
	var missing []rune
	for _, r := range text {
		if !drawable(r) && !slices.Contains(missing, r) {
			missing = append(missing, r)
		}
	}
	return missing
}

// drawable keeps out the controls, which fonts map to some glyph or other.
func drawable(r rune) bool {
	switch {
	case unicode.IsControl(r) || r == unicode.ReplacementChar:
		return false
	case Regular.font().GlyphIndex(r) != 0 || isolates(r) || isJoiner(r):
		return true
	}
	return unicode.IsPrint(r) && secondRegular.font().GlyphIndex(r) != 0 && secondBold.font().GlyphIndex(r) != 0
}

// plain drops what cannot be seen and folds white space; what is left is fit
// for XML and PDF strings.
func plain(text string) string {
	letters := []rune(text)
	var seen strings.Builder
	for i, r := range letters {
		switch {
		case r == noBreak || isJoiner(r) && parts(letters, i):
			seen.WriteRune(r)
		case unicode.IsSpace(r):
			seen.WriteByte(' ')
		case unicode.IsPrint(r) && r != unicode.ReplacementChar:
			seen.WriteRune(r)
		}
	}
	return strings.Join(strings.FieldsFunc(seen.String(), func(r rune) bool { return r == ' ' }), " ")
}

// isJoiner reports whether a character is one that cannot be seen and joins the
// letters beside it, or keeps them from being joined.
func isJoiner(r rune) bool { return r == '\u200c' || r == '\u200d' }

// parts reports whether a joiner stands between letters that it matters to.
func parts(letters []rune, joiner int) bool {
	joined := func(i int) bool {
		return i >= 0 && i < len(letters) && unicode.Is(unicode.Arabic, letters[i]) && drawable(letters[i])
	}
	return joined(joiner-1) && joined(joiner+1)
}
