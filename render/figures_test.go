package render

import (
	"testing"

	"example.org/turfplat/geo"
	"example.org/turfplat/zones"
)

func TestFiguresBearTheirError(t *testing.T) {
	const ft2 = 0.3048 * 0.3048
	for _, tt := range []struct {
		units           zones.Units
		m2, ci          float64
		area, plusMinus string
	}{
		{zones.US, 9873 * ft2, 124 * ft2, "9,900", "120"},
		{zones.US, 9873 * ft2, 12 * ft2, "9,870", "12"},
		{zones.US, 1234567 * ft2, 3064 * ft2, "1,235,000", "3,000"},
		{zones.US, 0.4 * ft2, 0.2 * ft2, "0", "<1"},
		{zones.Metric, 987.3, 7, "985", "7"},
		{zones.Metric, 987.3, 0, "987", "0"},
		{zones.Metric, -120, 11, "−120", "11"},
		{zones.Metric, -0.3, 0, "0", "0"},
	} {
		f := figures{zones.Figures{Units: tt.units}}
		if got := f.Area(tt.m2, tt.ci); got != tt.area {
			t.Errorf("area %g is written %s, want %s", tt.m2, got, tt.area)
		}
		if got := f.PlusMinus(tt.ci); got != tt.plusMinus {
			t.Errorf("error %g is written %s, want %s", tt.ci, got, tt.plusMinus)
		}
	}
}

func TestLengthsAndPlaces(t *testing.T) {
	for _, tt := range []struct{ name, got, want string }{
		{"feet", figures{zones.Figures{Units: zones.US}}.Length(100 * geo.FootM), "100"},
		{"metres", figures{zones.Figures{Units: zones.Metric}}.Length(1234.4), "1,234"},
		{"share", share(1, 3), "33 %"},
		{"small share", share(0.001, 1), "<1 %"},
		{"no share", share(0, 1), "0 %"},
		{"more than the whole", share(2, 1), ""},
		{"share of nothing", share(0, 0), ""},
		{"north west", degreesText(-98.499851, 40.000241), "40.00024° N, 98.49985° W"},
		{"south east", degreesText(151.5, -33.25), "33.25000° S, 151.50000° E"},
		{"range", figures{zones.Figures{Units: zones.Metric}}.errorRange(0.1, 0.3), "0.10 to 0.30 m"},
		{"one error", figures{zones.Figures{Units: zones.US}}.errorRange(0.3048, 0.3048), "1.0 ft"},
	} {
		if tt.got != tt.want {
			t.Errorf("%s: %q, want %q", tt.name, tt.got, tt.want)
		}
	}
}
