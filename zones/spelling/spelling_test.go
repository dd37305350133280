package spelling

import (
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestNearest(t *testing.T) {
	words := []string{"window", "water", "Wetting agent", "mow"}
	for _, tt := range []struct{ written, want string }{
		{"windwo", "window"},
		{"WATR", "water"},
		{"wetting-agents", "Wetting agent"},
		{"mwo", ""},
		{"mov", "mow"},
		{"", ""},
		{"fertilizer", ""},
		{strings.Repeat("water", 9), ""},
	} {
		if got := Nearest(tt.written, words); got != tt.want {
			t.Errorf("%q: %q, want %q", tt.written, got, tt.want)
		}
	}
}

func TestSlips(t *testing.T) {
	for _, tt := range []struct {
		a, b string
		want int
	}{
		{"", "", 0},
		{"mow", "", 3},
		{"mow", "mow", 0},
		{"kitten", "sitting", 3}, // the usual example; counted by hand
		{"käfer", "kafer", 1},    // a letter, not its bytes
	} {
		if got := Slips(tt.a, tt.b); got != tt.want {
			t.Errorf("%q to %q: %d, want %d", tt.a, tt.b, got, tt.want)
		}
	}
}

// Slips are a distance: none between a word and itself alone, as many back as
// there, and no fewer straight than by way of a third word.
func TestSlipsAreADistance(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		word := rapid.StringMatching(`[abcä]{0,6}`)
		a, b, c := word.Draw(t, "a"), word.Draw(t, "b"), word.Draw(t, "c")
		if (Slips(a, b) == 0) != (a == b) || Slips(a, b) != Slips(b, a) || Slips(a, c) > Slips(a, b)+Slips(b, c) {
			t.Fatalf("%q, %q, %q: %d, %d, %d", a, b, c, Slips(a, b), Slips(b, c), Slips(a, c))
		}
	})
}
