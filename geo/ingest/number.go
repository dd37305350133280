package ingest

import (
	"bytes"
	"strconv"
)

// decimals is how finely degrees are written where they are not copied: 1e-13
// degrees are 11 nanometres, a tenth of what a site frame keeps, so that positions
// read back as they were and edges that two zones share stay one. More would
// have digits beyond those that are read in one look.
const decimals = 13

// appendDegrees writes v with at most n decimals and no trailing zeros.
func appendDegrees(dst []byte, v float64, n int) []byte {
	from := len(dst)
	dst = strconv.AppendFloat(dst, v, 'f', n, 64)
	if bytes.IndexByte(dst[from:], '.') >= 0 {
		dst = bytes.TrimRight(dst, "0")
		dst = bytes.TrimSuffix(dst, []byte{'.'})
	}
	if string(dst[from:]) == "-0" {
		return append(dst[:from], '0')
	}
	return dst
}

// powers are the powers of ten a double holds exactly.
var powers = [...]float64{
	1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11,
	1e12, 1e13, 1e14, 1e15, 1e16, 1e17, 1e18, 1e19, 1e20, 1e21, 1e22,
}

// parseNumber gives the double nearest to a well-formed JSON number; ok is
// false beyond the range of doubles. The usual case, digits that make a whole
// number below 2^53 and no exponent, takes one exact division (Clinger 1990,
// "How to read floating point numbers accurately").
func parseNumber(text []byte) (v float64, ok bool) {
	digits, negative := text, false
	if len(digits) > 0 && digits[0] == '-' {
		digits, negative = digits[1:], true
	}
	if len(digits) > 19 { // more could overflow
		return parseLongNumber(text)
	}
	var whole uint64
	point := len(digits) - 1
	for i, c := range digits {
		switch {
		case c == '.':
			point = i
		case c < '0' || c > '9':
			return parseLongNumber(text)
		default:
			whole = whole*10 + uint64(c-'0')
		}
	}
	if whole > 1<<53 {
		return parseLongNumber(text)
	}
	v = float64(whole) / powers[len(digits)-1-point]
	if negative {
		v = -v
	}
	return v, true
}

func parseLongNumber(text []byte) (float64, bool) {
	v, err := strconv.ParseFloat(string(text), 64)
	return v, err == nil
}
