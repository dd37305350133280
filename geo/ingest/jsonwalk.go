package ingest

import (
	"bytes"
	"encoding/binary"
	"encoding/json"
	"iter"
)

// The functions here walk JSON text that a grammar has found well formed, and
// rely on it.

func isBlank(c byte) bool { return c == ' ' || c == '\n' || c == '\r' || c == '\t' }

func trimBlanks(text []byte) []byte { return bytes.Trim(text, " \t\r\n") }

// skipBlanks returns the index of the first byte from i on that is not blank.
func skipBlanks(text []byte, i int) int {
	for i < len(text) && isBlank(text[i]) {
		i++
	}
	return i
}

// stringEnd returns the index after the string that begins at i.
func stringEnd(text []byte, i int) int {
	for i++; text[i] != '"'; i++ {
		if text[i] == '\\' {
			i++
		}
	}
	return i + 1
}

// valueEnd returns the index after the value that begins at i.
func valueEnd(text []byte, i int) int {
	switch text[i] {
	case '"':
		return stringEnd(text, i)
	case '{', '[':
		return bracketEnd(text, i)
	}
	for i < len(text) && text[i] != ',' && text[i] != ']' && text[i] != '}' && !isBlank(text[i]) {
		i++
	}
	return i
}

// structural marks the bytes that matter for finding the end of a bracket.
var structural = [256]bool{'"': true, '{': true, '[': true, '}': true, ']': true}

// noneStructural reports whether none of eight bytes matters, as is the case
// within numbers: brackets are among the bytes with the bit 0x40, quotes have
// no bit that 0x22 lacks. It may also be false for others, such as letters.
func noneStructural(eight uint64) bool {
	const (
		ones   = 0x0101010101010101
		tops   = 0x80 * ones
		quotes = '"' * ones
	)
	unquoted := eight ^ quotes // a quote becomes zero
	return eight&(0x40*ones) == 0 && (unquoted-ones)&^unquoted&tops == 0
}

func bracketEnd(text []byte, i int) int {
	for depth := 0; ; i++ {
		for i+8 <= len(text) && noneStructural(binary.LittleEndian.Uint64(text[i:])) {
			i += 8
		}
		for !structural[text[i]] {
			i++
		}
		switch text[i] {
		case '"':
			i = stringEnd(text, i) - 1
		case '{', '[':
			depth++
		default:
			if depth--; depth == 0 {
				return i + 1
			}
		}
	}
}

// elements yields the values of an array.
func elements(array []byte) iter.Seq[[]byte] {
	return func(yield func([]byte) bool) {
		for i := skipBlanks(array, 1); array[i] != ']'; {
			end := valueEnd(array, i)
			if !yield(array[i:end:end]) {
				return
			}
			i = nextItem(array, end)
		}
	}
}

// pairs yields the names, in their quotes, and values of an object.
func pairs(object []byte) iter.Seq2[[]byte, []byte] {
	return func(yield func(name, value []byte) bool) {
		for i := skipBlanks(object, 1); object[i] != '}'; {
			nameEnd := stringEnd(object, i)
			from := skipBlanks(object, skipBlanks(object, nameEnd)+1)
			end := valueEnd(object, from)
			if !yield(object[i:nameEnd], object[from:end:end]) {
				return
			}
			i = nextItem(object, end)
		}
	}
}

// nextItem steps from the end of a value over a comma, if one follows.
func nextItem(text []byte, i int) int {
	i = skipBlanks(text, i)
	if text[i] == ',' {
		i = skipBlanks(text, i+1)
	}
	return i
}

// unquote returns what a JSON string says; half a surrogate pair becomes
// U+FFFD.
func unquote(quoted []byte) string {
	inner := quoted[1 : len(quoted)-1]
	if bytes.IndexByte(inner, '\\') < 0 {
		return string(inner)
	}
	var s string
	_ = json.Unmarshal(quoted, &s) // a well-formed string cannot fail
	return s
}

// scalarText returns a string, or a number or truth value as it was written.
func scalarText(value []byte) (string, bool) {
	if len(value) == 0 {
		return "", false
	}
	switch value[0] {
	case '"':
		return unquote(value), true
	case '{', '[', 'n':
		return "", false
	}
	return string(value), true
}

// describe names a value in a message.
func describe(value []byte) string {
	switch value[0] {
	case '"':
		return quoted(unquote(value))
	case '{':
		return "an object"
	case '[':
		return "an array"
	}
	return shortened(string(value))
}
