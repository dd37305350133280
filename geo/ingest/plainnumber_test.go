package ingest

import "testing"

func TestPlainNumber(t *testing.T) {
	for text, want := range map[string]float64{
		"0": 0, "-0": 0, "44.9": 44.9, "+44.9": 44.9, "-.5": -0.5, "5.": 5, "1e3": 1000, "1.5E-1": 0.15, "00012": 12,
		"42.33817650000000000001": 42.3381765, "9007199254740993": 9007199254740992,
	} {
		if got, ok := plainNumber([]byte(text)); !ok || got != want {
			t.Errorf("%q: got %v, %v, want %v", text, got, ok, want)
		}
	}
	for _, text := range []string{"", "-", "+", "+-1", "--1", ".", "-.", "1.2.3", "1e", "1e+", "e5", "0x10", "1_0", "1,5", "Inf", "NaN", " 1", "1 ", "1e999", "١",
		"11111111111111111111111111111111111111111111111111111111111111111"} {
		if got, ok := plainNumber([]byte(text)); ok {
			t.Errorf("%q: got %v, want none", text, got)
		}
	}
}

func TestPlainCount(t *testing.T) {
	for text, want := range map[string]int{"0": 0, "07": 7, "12.0": 12, "1000": 1000, "7.5": -1, "-1": -1, "1001": -1, "1e300": -1, "": -1, "x": -1} {
		got, ok := plainCount([]byte(text))
		if !ok {
			got = -1
		}
		if got != want {
			t.Errorf("%q: got %d, want %d", text, got, want)
		}
	}
}
