package ingest

import (
	"strconv"
	"unicode/utf8"
)

// Quoted makes any text fit for a message: in quotes, on one line, without
// control characters, and cut after 60 characters.
func Quoted(text string) string { return strconv.Quote(shortened(text)) }

func shortened(s string) string {
	const most = 60 // characters
	if len(s) <= most {
		return s
	}
	runes := []rune(s[:min(len(s), (most+1)*utf8.UTFMax)])
	if len(runes) <= most {
		return s
	}
	return string(runes[:most-1]) + "…"
}
