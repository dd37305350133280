package ingest

import (
	"math"
	"strconv"
	"testing"

	"pgregory.net/rapid"
)

func TestAppendDegrees(t *testing.T) {
	for _, tt := range []struct {
		v        float64
		decimals int
		want     string
	}{
		{0, 7, "0"}, {math.Copysign(0, -1), 7, "0"}, {-1e-12, 11, "0"}, {-1e-11, 11, "-0.00000000001"},
		{100, 7, "100"}, {100, 0, "100"}, {-93.1, 7, "-93.1"}, {44.12345678, 7, "44.1234568"}, {179.99999999, 7, "180"},
	} {
		if got := string(appendDegrees([]byte("10"), tt.v, tt.decimals)); got != "10"+tt.want {
			t.Errorf("%v with %d decimals is %s, want 10%s", tt.v, tt.decimals, got, tt.want)
		}
	}
}

// TestParseNumber: the same double as the standard library's, to the bit.
func TestParseNumber(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.SampledFrom([]string{"9007199254740993", "-9007199254740993", "0.00000000000001", "123456789012345", "-0"}).Draw(t, "known")
		if rapid.Bool().Draw(t, "random") {
			text = rapid.StringMatching(`-?(0|[1-9][0-9]{0,18})(\.[0-9]{1,20})?([eE][+-]?[0-9]{1,3})?`).Draw(t, "text")
		}
		want, err := strconv.ParseFloat(text, 64)
		got, ok := parseNumber([]byte(text))
		if ok != (err == nil) || ok && math.Float64bits(got) != math.Float64bits(want) {
			t.Errorf("%s is %v, %v, want %v, %v", text, got, ok, want, err)
		}
	})
}
