package material

import (
	"errors"
	"math"
	"strings"
	"testing"
)

// FuzzParse: whatever is read is a sound quantity that is read again as it is
// written; whatever is not is refused with a message of one line.
func FuzzParse(f *testing.F) {
	for _, seed := range []string{
		"0.75 lb N / 1000 ft2", "3 fl oz/M", "1 1/2 in", "½ in", "40 g/m²", "0.5 lb a.i. per acre", "2 lb PLS / 1000 ft2", "1,200 lb / yd3", "65 % v/v",
		"4 lb / gal", "14 weeks", "−4 °F", "imp gal", "5 imperial fluid ounces", "1/128 acre", "3 / 1000 ft2", "1e3 lb", "-3 lb", "0,5 kg", "3 lb of N", "3 months",
		"123456789012345678 lb", "1 lb / 0.0000000001 mg", "\xff\xfe 3 lb", "3 lb\x00", strings.Repeat("9", 200) + " lb", "% / %", "1 % / 1 %", "12 '", `3"`,
	} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		q, err := Parse(text)
		if err != nil {
			var wrong *InputError
			if !errors.As(err, &wrong) || strings.ContainsAny(err.Error(), "\n\r") {
				t.Fatalf("%q is refused with %q", text, err)
			}
			return
		}
		if v := q.SI(); math.IsNaN(v) || math.IsInf(v, 0) {
			t.Fatalf("%q is %v", text, v)
		}
		again, err := Parse(q.String())
		if err != nil || again.Unit != q.Unit || again.Of != q.Of || math.Abs(again.Number-q.Number) > 1e-14*math.Abs(q.Number) {
			t.Fatalf("%q is %q, which is read as %q, %v", text, q, again, err)
		}
	})
}

func FuzzParseGrade(f *testing.F) {
	for _, seed := range []string{"24-0-6", " 0 - 0 - 50 ", "12.5-4-8", "99-99-99", "--", "1-2-3-4", "24-0-6\n"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		g, err := ParseGrade(text)
		if err != nil {
			return
		}
		if again, err := ParseGrade(g.String()); err != nil || again != g {
			t.Fatalf("%q is %s, which is read as %s, %v", text, g, again, err)
		}
	})
}
