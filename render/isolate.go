package render

import (
	"strings"

	"golang.org/x/text/unicode/bidi"
)

// Isolates keep a name whose letters run from right to left apart from what
// stands beside it in a line, so that neither puts the other's figures in the
// wrong place (Unicode Standard Annex 9, 2.4).
const (
	isolateLeftToRight = '\u2066'
	isolateRightToLeft = '\u2067'
	isolateByLetters   = '\u2068' // runs as its first letter does
	isolateEnd         = '\u2069'
)

func isolates(r rune) bool { return r >= isolateLeftToRight && r <= isolateEnd }

// isolated returns a text as an isolate if any of it runs from right to left.
func isolated(text string) string {
	start, leftward := rune(0), false
	for _, r := range text {
		properties, _ := bidi.LookupRune(r)
		switch properties.Class() {
		case bidi.L:
			if start == 0 {
				start = isolateLeftToRight
			}
		case bidi.R, bidi.AL:
			if start == 0 {
				start = isolateRightToLeft
			}
			leftward = true
		case bidi.AN:
			leftward = true
		}
	}
	if !leftward {
		return text
	}
	if start == 0 {
		start = isolateRightToLeft
	}
	return string(start) + text + string(isolateEnd)
}

// balanced closes the isolates that are open at the end of a line, and opens
// them again on the next one.
func balanced(lines []string) []string {
	var open []rune
	for i, line := range lines {
		before := string(open)
		for _, r := range line {
			switch {
			case r == isolateEnd:
				open = open[:max(0, len(open)-1)]
			case isolates(r):
				open = append(open, r)
			}
		}
		lines[i] = before + line + strings.Repeat(string(isolateEnd), len(open))
	}
	return lines
}

// rejoined undoes balanced: the lines as one.
func rejoined(lines ...string) string {
	text := strings.Join(lines, " ")
	for _, start := range []rune{isolateLeftToRight, isolateRightToLeft, isolateByLetters} {
		text = strings.ReplaceAll(text, string(isolateEnd)+" "+string(start), " ")
	}
	return text
}
