package material

import (
	"regexp"
	"strconv"
	"strings"
)

// mostDigits are what a number may have; a double holds so many and gives them
// back through any unit.
const mostDigits = 15

// largestDenominator parts a fraction, such as 1/4 or the 1/128 of an acre,
// from a number whose unit was forgotten, as in 3 / 1000 ft2.
const largestDenominator = 128

var (
	fractionForm = regexp.MustCompile(`^(?:(\d+) +)?(\d+) ?/ ?(\d+)`)
	decimalForm  = regexp.MustCompile(`^(?:\d{1,3}(?:,\d{3})+(?:\.\d+)?|\d+(?:\.\d+)?|\.\d+)`)
)

// takeNumber reads the number that a text begins with: a decimal, with or
// without commas between thousands, or a fraction. Whole is false if there is
// none, or one that cannot be read as one thing.
func takeNumber(text string) (value float64, rest string, whole bool) {
	if m := fractionForm.FindStringSubmatch(text); m != nil {
		value, whole = fraction(m[1], m[2], m[3])
		return value, text[len(m[0]):], whole
	}
	written := decimalForm.FindString(text)
	rest = text[len(written):]
	if written == "" || beginsNumber(rest) {
		return 0, text, false
	}
	plain := strings.ReplaceAll(written, ",", "")
	if strings.HasPrefix(written, "0") && strings.Contains(written, ",") || digits(plain) > mostDigits {
		return 0, text, false
	}
	value, err := strconv.ParseFloat(plain, 64)
	return value, rest, err == nil
}

// beginsNumber reports whether a text goes on as a number does.
func beginsNumber(text string) bool {
	return text != "" && strings.IndexByte("0123456789.,", text[0]) >= 0
}

// digits counts those that bear on a number's value.
func digits(plain string) int {
	return len(strings.TrimLeft(strings.Replace(plain, ".", "", 1), "0"))
}

func fraction(whole, over, under string) (float64, bool) {
	if digits(whole) > 6 || digits(over) > 6 || digits(under) > 6 {
		return 0, false
	}
	w, _ := strconv.Atoi("0" + whole)
	o, _ := strconv.Atoi(over)
	u, _ := strconv.Atoi(under)
	if u == 0 || u > largestDenominator || whole != "" && o >= u {
		return 0, false
	}
	return float64(w*u+o) / float64(u), true
}
