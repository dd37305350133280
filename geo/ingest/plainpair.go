package ingest

import "encoding/binary"

// plainPair returns the index after an array of two numbers that begins at i
// and is written as positions are: without exponents, or a blank but one after
// the comma. It is 0 if something else stands there, or the text ends.
func plainPair(text []byte, i int) int {
	end := plainEnd(text, i+1)
	if end == 0 || text[end] != ',' {
		return 0
	}
	if end++; end < len(text) && text[end] == ' ' {
		end++
	}
	if end = plainEnd(text, end); end == 0 || text[end] != ']' {
		return 0
	}
	return end + 1
}

// plainEnd returns the index after a number, at which something stands; 0 if
// there is none.
func plainEnd(text []byte, i int) int {
	if i < len(text) && text[i] == '-' {
		i++
	}
	if i >= len(text) || !isDigit(text[i]) {
		return 0
	}
	if text[i] == '0' {
		i++
	} else {
		i = digitsEnd(text, i)
	}
	if i < len(text) && text[i] == '.' {
		point := i
		for i++; i+8 <= len(text) && areDigits(binary.LittleEndian.Uint64(text[i:])); {
			i += 8
		}
		if i = digitsEnd(text, i); i == point+1 {
			return 0
		}
	}
	if i == len(text) {
		return 0
	}
	return i
}

// digitsEnd returns the index of the first byte from i on that is no digit.
func digitsEnd(text []byte, i int) int {
	for i < len(text) && isDigit(text[i]) {
		i++
	}
	return i
}

func isDigit(c byte) bool { return c-'0' <= 9 }

// areDigits reports whether eight bytes are all digits: 0x30 to 0x39, which stay
// below 0x40 when six is added.
func areDigits(eight uint64) bool {
	const high = 0xf0 * ones
	return ((eight^'0'*ones)|((eight+6*ones)^'0'*ones))&high == 0
}
