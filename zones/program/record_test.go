package program

import (
	"testing"
	"time"

	"example.org/turfplat/zones/material"
	"example.org/turfplat/zones/soil"
)

func TestLikely(t *testing.T) {
	day := func(d int) time.Time { return time.Date(2026, 4, d, 0, 0, 0, 0, time.UTC) }
	for _, tt := range []struct {
		name             string
		last             int // day of the log's last mean
		mean, perDay, to float64
		unknown          bool
		want             string
	}{
		{"warming", 6, 12, 0.4, 13, false, "likely to open in about 3 days, on 2026-04-09"},
		{"tomorrow", 6, 12, 1.5, 13, false, "likely to open tomorrow, 2026-04-07"},
		{"cooling towards autumn's limit", 6, 15, -0.5, 13, false, "likely to open in about 4 days, on 2026-04-10"},
		{"cooling away", 6, 12, -0.4, 13, false, ""},
		{"no trend", 6, 12, 0, 13, false, ""},
		{"trend not known", 6, 12, 0.4, 13, true, ""},
		{"in months", 6, 2, 0.1, 13, false, ""},
		{"log of two days ago", 4, 12, 0.4, 13, false, "likely to open tomorrow, 2026-04-07"},
		{"after its dates end", 6, 12, 0.2, 13, false, "not likely to open before its dates end on 2026-04-10"},
		{"log that ended before that day", 1, 12, 0.4, 13, false, ""},
	} {
		w := soil.Window{Now: soil.Trailing{Day: day(tt.last), Mean: material.Temperature(tt.mean)}, Trend: soil.Trend{PerDay: material.Temperature(tt.perDay), Known: !tt.unknown}}
		if got := (opening{expected: expected(w, soil.Rule{Opens: material.Temperature(tt.to)}, day(6))}).likely(day(9+1), day(6)); got != tt.want {
			t.Errorf("%s: %q, want %q", tt.name, got, tt.want)
		}
	}
}
