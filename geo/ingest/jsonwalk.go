package ingest

import (
	"bytes"
	"encoding/binary"
	"encoding/json"
	"iter"
	"math/bits"
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

const (
	ones = 0x0101010101010101 // a bit in each of eight bytes
	tops = 0x80 * ones
)

// marked marks, among eight bytes, those that may be brackets or quotes, by
// their bit 0x40: all brackets have it, as letters do but no part of a number;
// quotes are found as the zeroes they become when 0x22 is taken off. Now and
// then a byte that follows a quote is marked as well.
func marked(eight uint64) uint64 {
	unquoted := eight ^ '"'*ones
	return eight&(0x40*ones) | (unquoted-ones)&^unquoted&tops>>1
}

// bracketEnd returns the index after the object or array that begins at i.
func bracketEnd(text []byte, i int) int {
	depth := 0
	for i+8 <= len(text) {
		next := i + 8
		for marks := marked(binary.LittleEndian.Uint64(text[i:])); marks != 0; marks &= marks - 1 {
			at := i + bits.TrailingZeros64(marks)/8
			if depth += deeper[text[at]]; depth == 0 {
				return at + 1
			}
			if text[at] == '"' {
				next = stringEnd(text, at)
				break
			}
		}
		i = next
	}
	for ; ; i++ {
		if text[i] == '"' {
			i = stringEnd(text, i) - 1
		} else if depth += deeper[text[i]]; depth == 0 {
			return i + 1
		}
	}
}

// deeper is what a byte outside strings adds to the depth.
var deeper = [256]int{'{': 1, '[': 1, '}': -1, ']': -1}

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
		return Quoted(unquote(value))
	case '{':
		return "an object"
	case '[':
		return "an array"
	}
	return shortened(string(value))
}
