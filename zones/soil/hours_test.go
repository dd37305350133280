package soil

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"
	"time"

	"example.org/turfplat/zones/material"
)

const (
	halfHoursFile = "../../../shared/data/soil/de_tharandt_halfhourly_1998.csv"
	// The file does not state the sensor's depth; 5 cm serves the test.
	halfHoursColumns = "time=year+day_of_year+hour,temp=soil_temp_c,depth=5cm,air=air_temp_c,unit=c,missing=-9999"
)

// TestHalfHours: a real year of half-hours gives the days whose longest gap is
// five hours or less, with the mean and the lowest of their readings, found
// here by going through the text; and the same window as the days in a file of
// their own.
func TestHalfHours(t *testing.T) {
	text := string(realFile(t, halfHoursFile))
	l, problems := readWith(t, text, halfHoursColumns)
	if l == nil || len(problems) > 0 {
		t.Fatal(problems)
	}
	means, lows := soilAt(t, l, "", "5 cm", Mean), soilAt(t, l, "", "5 cm", Lowest)
	want := halfHourDays(t, text)
	if len(means.Days) != len(want) || len(lows.Days) != len(want) {
		t.Fatalf("%d and %d days, want %d", len(means.Days), len(lows.Days), len(want))
	}
	var daily strings.Builder
	daily.WriteString("time,soil_5cm_c\n")
	for i, d := range means.Days {
		w := want[isoDay(d.Day)]
		if d.Readings != w.n || math.Abs(float64(d.Value)-w.sum/float64(w.n)) > 1e-9 || float64(lows.Days[i].Value) != w.low {
			t.Errorf("%s: %+v, lowest %v, want %+v", isoDay(d.Day), d, lows.Days[i].Value, w)
		}
		fmt.Fprintf(&daily, "%s,%v\n", isoDay(d.Day), float64(d.Value))
	}
	r := Rule{Opens: 10, HasClose: true, Closes: 13, TrailDays: 5}
	hourly := r.Window(means, date(1998, 1, 1), date(1998, 12, 31))
	again := r.Window(soilAt(t, mustRead(t, daily.String(), ""), "", "5 cm", Mean), date(1998, 1, 1), date(1998, 12, 31))
	if hourly.State != Closed || !hourly.Opened.Day.Equal(again.Opened.Day) || !hourly.Closed.Day.Equal(again.Closed.Day) {
		t.Errorf("by half-hours %+v, by days %+v", hourly, again)
	}
}

type halfHourDay struct {
	n        int
	sum, low float64
}

// halfHourDays reads the file with nothing of this package: hours of a day as
// the file counts them, hour 0 being the first of its day.
func halfHourDays(t *testing.T, text string) map[string]halfHourDay {
	t.Helper()
	days, last, gap := make(map[string]halfHourDay), make(map[string]float64), make(map[string]float64)
	for _, line := range strings.Split(strings.TrimSpace(text), "\n")[1:] {
		cells := strings.Split(strings.TrimSpace(line), ",")
		if cells[4] == "-9999" {
			continue
		}
		var v [5]float64
		for i, cell := range cells {
			var err error
			if v[i], err = strconv.ParseFloat(cell, 64); err != nil {
				t.Fatal(err)
			}
		}
		day := isoDay(time.Date(int(v[0]), time.January, int(v[1]), 0, 0, 0, 0, time.UTC))
		d, known := days[day]
		if !known {
			d.low = v[4]
		}
		gap[day] = max(gap[day], v[2]-last[day])
		last[day] = v[2]
		days[day] = halfHourDay{d.n + 1, d.sum + v[4], min(d.low, v[4])}
	}
	for day := range days {
		if max(gap[day], 24-last[day]) > 5 {
			delete(days, day)
		}
	}
	return days
}

// hours writes a log of a reading an hour from the first of April 2026 on; NaN
// is none.
func hours(n int, value func(hour int) float64) string {
	var b strings.Builder
	b.WriteString("time,soil_2in_c\n")
	for i := range n {
		if v := value(i); !math.IsNaN(v) {
			fmt.Fprintf(&b, "%s,%.2f\n", date(2026, 4, 1).Add(time.Duration(i)*time.Hour).Format("2006-01-02T15:04"), v)
		}
	}
	return b.String()
}

// wave is the soil of a spring: it warms by the day and swings by the hour.
func wave(hour int) float64 { return 8 + float64(hour)/48 + 3*math.Sin(float64(hour)*math.Pi/12) }

// TestGapsOfHours: a day stands with gaps of up to five hours, wherever they
// lie, and not beyond; a log every six hours is whole as it is.
func TestGapsOfHours(t *testing.T) {
	tests := []struct {
		name  string
		gone  func(hour int) bool // of three days
		known int                 // days
	}{
		{"whole", func(int) bool { return false }, 3},
		{"four readings, five hours", func(h int) bool { return h >= 30 && h < 34 }, 3},
		{"five readings, six hours", func(h int) bool { return h >= 30 && h < 35 }, 2},
		{"the night, in two days", func(h int) bool { return h >= 21 && h < 29 }, 3},
		{"the night, too long for the first", func(h int) bool { return h >= 19 && h < 29 }, 2},
		{"every second", func(h int) bool { return h%2 == 1 }, 3},
		{"every sixth stays", func(h int) bool { return h%6 != 0 }, 3},
		{"the last day ends at noon", func(h int) bool { return h > 60 }, 2},
	}
	for _, tt := range tests {
		l := mustRead(t, hours(72, func(h int) float64 {
			if tt.gone(h) {
				return math.NaN()
			}
			return wave(h)
		}), "")
		if got := len(soilAt(t, l, "", "2 in", Mean).Days); got != tt.known {
			t.Errorf("%s: %d days, want %d", tt.name, got, tt.known)
		}
	}
}

// TestStuckHours: readings that stay the same for three days are of a stuck
// sensor, but under snow, where they are believed for months.
func TestStuckHours(t *testing.T) {
	tests := []struct {
		name     string
		value    float64
		from, to int // hours
		told     string
	}{
		{"two days and a half", 9.5, 24, 84, ""},
		{"three days", 9.5, 24, 97, `soil.csv: line 26: "soil_2in_c": reads 9.5 C without a change from 2026-04-02 to 2026-04-05, left out`},
		{"three weeks, in snow", 0.2, 24, 600, ""},
		{"three weeks, in frost too hard for snow to hold it there", -3.5, 24, 600, `soil.csv: line 26: "soil_2in_c": reads -3.5 C without a change from 2026-04-02 to 2026-04-25, left out`},
		{"half a year, at 0 C", 0, 24, 24 * 180, `soil.csv: line 26: "soil_2in_c": reads 0 C without a change from 2026-04-02 to 2026-09-27, left out`},
	}
	for _, tt := range tests {
		text := hours(24*190, func(h int) float64 {
			if h >= tt.from && h < tt.to {
				return tt.value
			}
			return 5 + wave(h%600)
		})
		l, problems := readWith(t, text, "")
		var got string
		for _, p := range problems {
			got += p.String()
		}
		if got != tt.told {
			t.Errorf("%s: %q, want %q", tt.name, got, tt.told)
		}
		if tt.told == "" {
			continue
		}
		for _, d := range soilAt(t, l, "", "2 in", Mean).Days {
			if d.Value == material.Temperature(tt.value) {
				t.Errorf("%s: %s is still there", tt.name, isoDay(d.Day))
			}
		}
	}
}

// TestStuckWaits: while its sensor is stuck a window waits and says so, though
// what it reads is warm enough.
func TestStuckWaits(t *testing.T) {
	l, problems := readWith(t, hours(24*12, func(h int) float64 {
		if h < 24*5 {
			return wave(h)
		}
		return 15
	}), "")
	if len(problems) != 1 || problems[0].Code != "soil_stuck" {
		t.Fatal(problems)
	}
	w := Rule{Opens: 12.5, TrailDays: 5}.Window(soilAt(t, l, "", "2 in", Mean), date(2026, 1, 1), lastOf(l))
	if w.State != Waiting || w.UnknownDays != 7 || w.Doubt != "no mean of 5 days can be made after 2026-04-05" {
		t.Errorf("%+v", w)
	}
}

// A few days tell the unit where soil would be frozen out of season. Of 63
// stations of the U.S. Climate Reference Network in 2020 none had a day under
// -3.2 C from 15 March to 15 November, nor under 0 C from May to September.
func TestFrostOutOfSeasonDoubtsTheUnit(t *testing.T) {
	for _, tt := range []struct {
		name, column, day string
		value, latitude   float64
		want              string
	}{
		{"spring in C as F", "soil_2in_f", "2026-04-01", 13.9, 40, "soil_unit_doubt"},
		{"summer in C as F", "soil_2in_f", "2026-07-01", 28, 40, "soil_unit_doubt"},
		{"a late frost", "soil_2in_f", "2026-04-20", 28, 40, ""},
		{"winter", "soil_2in_f", "2026-01-10", 13.9, 40, ""},
		{"autumn in the south", "soil_2in_f", "2026-04-01", 13.9, -35, "soil_unit_doubt"},
		{"winter in the south", "soil_2in_f", "2026-07-01", 28, -35, ""},
		{"the end of its winter", "soil_2in_f", "2026-08-31", 28, -35, ""},
		{"no place", "soil_2in_f", "2026-04-01", 13.9, 0, ""},
		{"spring in C", "soil_2in_c", "2026-04-01", 13.9, 40, ""},
		{"frosty air", "air_f", "2026-04-01", 13.9, 40, ""},
	} {
		_, problems := ReadLog(strings.NewReader(fmt.Sprintf("time,%s\n%s,%g\n", tt.column, tt.day, tt.value)), "x.csv", Options{Latitude: tt.latitude})
		got := ""
		for _, p := range problems {
			got += p.Code
		}
		if got != tt.want {
			t.Errorf("%s: %q, want %q: %v", tt.name, got, tt.want, problems)
		}
	}
}

// TestUnitDoubts: what a log of some weeks tells of its unit. A log of winter
// in F cannot be told from a hot summer in C, which the doubt says.
func TestUnitDoubts(t *testing.T) {
	tests := []struct {
		name, column string
		from, to     float64 // over forty days
		want         string  // code, and whether the log is refused
	}{
		{"spring in C", "soil_2in_c", 4, 18, ""},
		{"spring in F", "soil_2in_f", 39, 64, ""},
		{"spring in F as C", "soil_2in_c", 39, 64, "soil_unit true"},
		{"spring in C as F", "soil_2in_f", 4, 18, "soil_unit true"},
		{"summer in C as F", "soil_2in_f", 20, 30, "soil_unit_doubt false"},
		{"winter in F as C", "soil_2in_c", 33, 41, "soil_unit_doubt false"},
		{"tropics in C", "soil_2in_c", 26, 31, ""},
		{"frozen ground in F", "soil_2in_f", 25, 33, ""},
		{"air of a hard winter in C", "air_c", -35, -12, ""},
		{"air in F as C", "air_c", 39, 80, "soil_unit true"},
		{"one hot day of forty", "soil_2in_c", 20, 49, ""},
	}
	for _, tt := range tests {
		var b strings.Builder
		b.WriteString("time," + tt.column + "\n")
		for i := range 40 {
			fmt.Fprintf(&b, "%s,%.2f\n", isoDay(date(2026, 3, 1+i)), tt.from+(tt.to-tt.from)*float64(i)/39)
		}
		l, problems := readWith(t, b.String(), "")
		var got string
		for _, p := range problems {
			got += fmt.Sprintf("%s %v", p.Code, l == nil)
		}
		if got != tt.want {
			t.Errorf("%s: %q, want %q", tt.name, got, tt.want)
		}
	}
}

// TestWrongUnitAtOneStation: of several stations one in another unit is left
// out and told, and the others stay.
func TestWrongUnitAtOneStation(t *testing.T) {
	var b strings.Builder
	b.WriteString("time,station,soil_2in_c\n")
	for i := range 20 {
		fmt.Fprintf(&b, "%s,front,%d\n%s,back,%d\n", isoDay(date(2026, 3, 1+i)), 5+i, isoDay(date(2026, 3, 1+i)), 41+2*i)
	}
	l, problems := readWith(t, b.String(), "")
	const want = `warning soil_unit: soil.csv: line 3: "soil_2in_c": in C its days reach 79 C: too hot at station "back", left out | if it is in F, say so: name it ..._f or write unit=f`
	if got := told(problems); l == nil || len(got) != 1 || got[0] != want {
		t.Fatalf("%q", got)
	}
	if n := len(soilAt(t, l, "front", "2 in", Mean).Days); n != 20 {
		t.Errorf("%d days of the front", n)
	}
	if n := len(soilAt(t, l, "back", "2 in", Mean).Days); n != 0 {
		t.Errorf("%d days of the back", n)
	}
}
