package ingest

import "math"

// plainNumber reads a decimal number as people and receivers write it: with or
// without a sign, and digits before or after the point. Words for numbers,
// other bases and digit separators are refused, as is what overflows.
func plainNumber(text []byte) (v float64, ok bool) {
	const longest = 64 // bytes
	if len(text) > longest {
		return 0, false
	}
	if len(text) > 0 && text[0] == '+' {
		text = text[1:]
		if len(text) > 0 && text[0] == '-' {
			return 0, false
		}
	}
	if !isPlainNumber(text) {
		return 0, false
	}
	return parseNumber(text)
}

func isPlainNumber(text []byte) bool {
	if len(text) > 0 && text[0] == '-' {
		text = text[1:]
	}
	whole := digitsAt(text)
	text = text[whole:]
	part := 0
	if len(text) > 0 && text[0] == '.' {
		part = digitsAt(text[1:])
		text = text[1+part:]
	}
	if whole+part == 0 {
		return false
	}
	if len(text) > 0 && (text[0] == 'e' || text[0] == 'E') {
		text = text[1:]
		if len(text) > 0 && (text[0] == '+' || text[0] == '-') {
			text = text[1:]
		}
		power := digitsAt(text)
		if power == 0 {
			return false
		}
		text = text[power:]
	}
	return len(text) == 0
}

// digitsAt counts the digits a text begins with.
func digitsAt(text []byte) int {
	n := 0
	for n < len(text) && '0' <= text[n] && text[n] <= '9' {
		n++
	}
	return n
}

// plainCount reads a small whole number, also one written as 7.0.
func plainCount(text []byte) (n int, ok bool) {
	const most = 1000
	v, ok := plainNumber(text)
	if !ok || v < 0 || v > most || v != math.Trunc(v) {
		return 0, false
	}
	return int(v), true
}
