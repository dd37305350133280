package soil

import (
	"strings"
	"testing"
	"time"
)

// TestMoments: the ways in which logs write times.
func TestMoments(t *testing.T) {
	tests := []struct {
		cells string // parted by |
		want  string // as the clock shows it; "" = no time
		utc   bool
	}{
		{"2026-04-05", "2026-04-05T00:00:00", false},
		{"20260405", "2026-04-05T00:00:00", false},
		{"2026/04/05", "2026-04-05T00:00:00", false},
		{"2026-04-05T13:30", "2026-04-05T13:30:00", false},
		{"2026-04-05 13:30:15.250", "2026-04-05T13:30:15", false},
		{"2026-04-05T13:30Z", "2026-04-05T13:30:00", true},
		{"2026-04-05 13:30 UTC", "2026-04-05T13:30:00", true},
		{"2026-04-05T13:30:00+00:00", "2026-04-05T13:30:00", true},
		{"2026-04-05T23:30:00-05:00", "2026-04-05T23:30:00", false},
		{"2026-04-05T23:30:00-0530", "2026-04-05T23:30:00", false},
		{"2026-04-05T23:30+02", "2026-04-05T23:30:00", false},
		{"2026-04-05T24:00", "2026-04-06T00:00:00", false},
		{"2026-12-31 24:00:00", "2027-01-01T00:00:00", false},
		{"2026-04-05|13:30", "2026-04-05T13:30:00", false},
		{"2026-04-05|7:05", "2026-04-05T07:05:00", false},
		{"20260405|0705", "2026-04-05T07:05:00", false},
		{"2026-04-05|2400", "2026-04-06T00:00:00", false},
		{"2026-04-05|13.5", "2026-04-05T13:30:00", false},
		{"2026-04-05|", "2026-04-05T00:00:00", false},
		{"1998|1", "1998-01-01T00:00:00", false},
		{"1998|1|0.5", "1998-01-01T00:30:00", false},
		{"1998|60|23.5", "1998-03-01T23:30:00", false},
		{"2000|60|24", "2000-03-01T00:00:00", false},
		{"1998|366|0", "1999-01-01T00:00:00", false}, // the midnight that ends the year, in half-hours of Tharandt 1998
		{"", "", false}, {"spring", "", false}, {"2026-02-30", "", false}, {"2026-04-05T25:00", "", false}, {"4/5/2026", "", false}, {"1743897600", "", false},
		{"2026-04-05X13:30", "", false}, {"0026-04-05", "", false}, {"9999-04-05", "", false}, {"1998|0", "", false}, {"1998|367", "", false}, {"1998|1.5", "", false},
		{"1998|1|25", "", false}, {"1998|1|-1", "", false}, {"2026-04-05|noon", "", false}, {"2026-04-05|9999", "", false}, {"2026-04-05T01:00|02:00", "", false}, {"|13:30", "", false},
		{strings.Repeat("2026", 20), "", false},
	}
	for _, tt := range tests {
		m, ok := readMoment(strings.Split(tt.cells, "|"))
		got := ""
		if ok {
			got = time.Unix(m.at, 0).UTC().Format("2006-01-02T15:04:05")
		}
		if got != tt.want || ok && m.utc != tt.utc {
			t.Errorf("%s: %q in UTC %v, want %q, %v", tt.cells, got, m.utc, tt.want, tt.utc)
		}
	}
}

// TestSolarDays: a moment in UTC counts to the day by the sun at the site, one
// with an offset to the day that its clock shows.
func TestSolarDays(t *testing.T) {
	tests := []struct {
		moment    string
		longitude float64
		want      string
	}{
		{"2026-04-05T03:00Z", 0, "2026-04-05"},
		{"2026-04-05T03:00Z", -93.1, "2026-04-04"}, // 21:12 of the day before to a day's mean sun
		{"2026-04-05T06:12Z", -93.1, "2026-04-04"},
		{"2026-04-05T06:13Z", -93.1, "2026-04-05"},
		{"2026-04-05T15:00Z", 151.2, "2026-04-06"},
		{"2026-04-05T23:30-05:00", -93.1, "2026-04-05"},
		{"2026-04-05T23:30", -93.1, "2026-04-05"},
	}
	for _, tt := range tests {
		l, problems := ReadLog(strings.NewReader("time,soil_5cm_c\n"+tt.moment+",10\n"), "x.csv", Options{Longitude: tt.longitude})
		if l == nil {
			t.Fatal(problems)
		}
		if got := isoDay(lastOf(l)); got != tt.want {
			t.Errorf("%s at %g: %s, want %s", tt.moment, tt.longitude, got, tt.want)
		}
	}
}
