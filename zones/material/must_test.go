package material

import (
	"flag"
	"math"
	"strconv"
	"testing"

	"pgregory.net/rapid"

	"example.org/turfplat/geo"
)

// exact is how well results must agree with exact values.
const exact = 1e-6

type failer interface {
	Helper()
	Errorf(format string, v ...any)
	Fatalf(format string, v ...any)
}

// near asks two figures to agree to a part of the wanted one.
func near(t failer, what string, got, want, rel float64) {
	t.Helper()
	if !(math.Abs(got-want) <= rel*math.Abs(want)) {
		t.Errorf("%s: %.12g, want %.12g", what, got, want)
	}
}

// printed asks a figure to agree with one that its source rounds.
func printed(t failer, what string, got, want, within float64) {
	t.Helper()
	if !(math.Abs(got-want) <= within) {
		t.Errorf("%s: %.12g, printed %.12g within %g", what, got, want, within)
	}
}

// must gives what cannot fail in a test.
func must[T any](v T, err error) T {
	if err != nil {
		panic(err)
	}
	return v
}

func unit(text string) Unit         { return must(ParseUnit(text)) }
func rate(text string) Rate         { return must(mustParse(text).Rate()) }
func amount(text string) Amount     { return must(mustParse(text).Amount()) }
func length(text string) geo.Length { return must(mustParse(text).Length()) }
func area(text string) geo.Area     { return must(mustParse(text).Area()) }

// feet2 is an area in square feet.
func feet2(ft2 float64) geo.Area { return geo.Area(ft2 * unit("ft2").factor()) }

// checkError asks for a message, "" for none.
func checkError(t failer, what string, err error, want string) {
	t.Helper()
	got := ""
	if err != nil {
		got = err.Error()
	}
	if got != want {
		t.Errorf("%s:\n%s\nwant\n%s", what, got, want)
	}
}

// check tries a property on a number of random cases, fewer with -short.
func check(t *testing.T, cases int, property func(*rapid.T)) {
	t.Helper()
	if testing.Short() {
		cases = max(1, cases/10)
	}
	checks := flag.Lookup("rapid.checks")
	defer checks.Value.Set(checks.Value.String())
	checks.Value.Set(strconv.Itoa(cases))
	rapid.Check(t, property)
}
