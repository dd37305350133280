package render

import (
	"math"
	"strconv"
	"strings"
)

// appendDecimal writes a number to the micrometre, without trailing zeros and
// without a minus before zero.
func appendDecimal(out []byte, v float64) []byte {
	micro := int64(math.Round(v * 1000))
	if micro < 0 {
		out, micro = append(out, '-'), -micro
	}
	out = strconv.AppendInt(out, micro/1000, 10)
	rest := micro % 1000
	if rest == 0 {
		return out
	}
	out = append(out, '.', byte('0'+rest/100), byte('0'+rest/10%10), byte('0'+rest%10))
	for out[len(out)-1] == '0' {
		out = out[:len(out)-1]
	}
	return out
}

func decimal(v float64) string { return string(appendDecimal(nil, v)) }

func decimals(vs []float64) string {
	words := make([]string, len(vs))
	for i, v := range vs {
		words[i] = decimal(v)
	}
	return strings.Join(words, " ")
}
