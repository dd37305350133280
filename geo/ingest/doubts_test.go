package ingest

import (
	"fmt"
	"slices"
	"strings"
	"testing"
)

// boxes is a collection of square lawns from south-west corners on, a ten
// thousandth of a degree wide; turned ones run clockwise.
func boxes(turned bool, corners ...string) string {
	var features []string
	for _, at := range corners {
		var lon, lat float64
		fmt.Sscanf(at, "%g %g", &lon, &lat)
		ring := fmt.Sprintf("[%[1]v,%[2]v],[%[3]v,%[2]v],[%[3]v,%[4]v],[%[1]v,%[2]v]", lon, lat, lon+1e-4, lat+1e-4)
		if turned {
			ring = fmt.Sprintf("[%[1]v,%[2]v],[%[3]v,%[4]v],[%[3]v,%[2]v],[%[1]v,%[2]v]", lon, lat, lon+1e-4, lat+1e-4)
		}
		features = append(features, `{"type":"Feature","properties":null,"geometry":{"type":"Polygon","coordinates":[[`+ring+`]]}}`)
	}
	return collection(strings.Join(features, ","))
}

func TestDoubts(t *testing.T) {
	five := slices.Repeat([]string{"-93.12355 44.95123"}, 6) // 24 corners
	const turned = "all 2 areas run the wrong way round, turned them"
	for _, tt := range []struct{ name, text, want string }{
		{"nothing to doubt", boxes(false, "9.5253123 47.2401234", "9.5254123 47.2401234"), ""},
		{"a single one turned", boxes(true, "9.5253123 47.2401234"), `warning ring_winding: x: features[0]: ring runs the wrong way round, turned it near [9.5253123, 47.2401234]`},
		{"all turned, and turf would grow there swapped", boxes(true, "47.2401234 9.5253123", "47.2402234 9.5253123"),
			`warning axes_doubtful: x: ` + turned + `: does the site lie at latitude 9.5253123, longitude 47.2401234, or are longitude and latitude swapped? near [47.2401234, 9.5253123]`},
		{"all turned, and it would not", boxes(true, "-93.1234567 44.9512345", "-93.1235567 44.9512345"), `warning ring_winding: x: ` + turned},
		{"in Antarctica", boxes(false, "38.8712345 -77.0512345"), `warning axes_doubtful: x: lies where no turf grows, at latitude -77.0512345, longitude 38.8712345: are longitude and latitude swapped? near [38.8712345, -77.0512345]`},
		{"boxes on five decimals", boxes(false, append(five, "-93.12345 44.95123")...),
			`warning decimals_few: x: no corner has more than 5 decimals of a degree, so each may lie 0.56 m (1.8 ft) off: areas are less sure than their error says`},
		{"one of them on six", boxes(false, append(five, "-93.123451 44.95123")...), ""},
		{"fewer may be typed", boxes(false, five...), ""},
	} {
		t.Run(tt.name, func(t *testing.T) {
			var want []string
			if tt.want != "" {
				want = []string{tt.want}
			}
			checkSaid(t, readOne(t, tt.text).Problems, want...)
		})
	}
}
