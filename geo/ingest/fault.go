package ingest

import (
	"bytes"
	"fmt"
	"unicode/utf8"
)

// A fault is what stops a text from being read at all.
type fault struct {
	code, text, hint string
	limit            bool // the text may be right but asks too much
}

func unexpected(c byte, want string) *fault {
	return &fault{
		code: "json_syntax",
		text: fmt.Sprintf("is not valid JSON: expected %s, found %s", want, found(c)),
		hint: "mend it there, or export it again",
	}
}

// found names a byte in a message.
func found(c byte) string {
	switch {
	case c == '\n' || c == '\r':
		return "a line break"
	case c > ' ' && c < 0x7f:
		return string(c)
	}
	return fmt.Sprintf("byte 0x%02x", c)
}

// endsEarly is the fault of a text that stops before its value is whole.
func endsEarly(g *grammar) *fault {
	text := "ends early"
	if g.state == inString || g.state == inEscape || g.state == inHex {
		text += " inside a string"
	}
	switch n := len(g.open); n {
	case 0:
	case 1:
		text += ", one bracket is still open"
	default:
		text += fmt.Sprintf(", %d brackets are still open", n)
	}
	return &fault{code: "input_short", text: text, hint: "copy or export it again"}
}

// notUTF8 is the fault of a text, which begins at base in its input, with a
// byte that is not UTF-8; nil if there is none.
func notUTF8(text []byte, base int) (at int, f *fault) {
	if utf8.Valid(text) {
		return 0, nil
	}
	for {
		r, size := utf8.DecodeRune(text[at:])
		if r == utf8.RuneError && size <= 1 {
			break
		}
		at += size
	}
	return at, &fault{
		code: "utf8_invalid",
		text: fmt.Sprintf("byte 0x%02x at offset %d is not UTF-8", text[at], base+at),
		hint: "save it with the UTF-8 encoding",
	}
}

// lineColumn says where an offset stands, both from 1, columns in characters.
func lineColumn(text []byte, offset int) (line, column int) {
	before := text[:offset]
	line = 1 + bytes.Count(before, []byte{'\n'})
	return line, 1 + utf8.RuneCount(before[bytes.LastIndexByte(before, '\n')+1:])
}
