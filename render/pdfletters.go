package render

import (
	"bytes"
	"fmt"
	"regexp"
	"strconv"

	"golang.org/x/text/unicode/norm"
)

// lettersOfGlyphs is what canvas writes of a glyph, or of several in a row, and
// the letters they stand for, if these are Arabic Presentation Forms of Unicode.
var lettersOfGlyphs = regexp.MustCompile(`\n<([0-9A-F]{4})> (?:<([0-9A-F]{4})> )?<(F[BCDE][0-9A-F]{2})>`)

// withLetters mends a stream that tells which letters glyphs stand for (ISO
// 32000-1, 9.10.3): canvas gives the forms that Arabic letters have beside
// others, which a search for a word may not find. Tied letters are left as they
// are, since readers take several letters of a glyph from left to right. So are
// all other streams.
func withLetters(stream []byte) []byte {
	if !bytes.HasPrefix(stream, []byte("/CIDInit ")) {
		return stream
	}
	return lettersOfGlyphs.ReplaceAllFunc(stream, func(entry []byte) []byte {
		m := lettersOfGlyphs.FindSubmatch(entry)
		form := hexadecimal(m[3])
		if len(m[2]) == 0 {
			return fmt.Appendf(nil, "\n<%s> %s", m[1], letterCode(form))
		}
		out := fmt.Appendf(nil, "\n<%s> <%s> [", m[1], m[2])
		for i := range hexadecimal(m[2]) - hexadecimal(m[1]) + 1 {
			out = append(out, letterCode(form+i)...)
		}
		return append(out, ']')
	})
}

// letterCode is the code of the letter that a form is of.
func letterCode(form rune) string {
	if letters := []rune(norm.NFKC.String(string(form))); len(letters) == 1 {
		form = letters[0]
	}
	return fmt.Sprintf("<%04X>", form)
}

func hexadecimal(digits []byte) rune {
	v, _ := strconv.ParseUint(string(digits), 16, 16) // the pattern holds no other
	return rune(v)
}
