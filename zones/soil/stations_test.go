package soil

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"maps"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"example.org/turfplat/zones/material"
)

const (
	stationsFile = "../../../shared/data/soil/uscrn_daily_2020_share.csv"
	// The network's columns: soil at 5 and 10 cm, daily means.
	stationsColumns = "time=lst_date,station=wban,unit=c,temp=soil_temp_5_daily,depth=5cm,temp=soil_temp_10_daily,depth=10cm,air_max=t_daily_max,air_min=t_daily_min"
)

// realFile reads a file of real readings, or skips the test.
func realFile(tb testing.TB, path string) []byte {
	tb.Helper()
	text, err := os.ReadFile(path)
	if err != nil {
		tb.Skipf("the real readings are not beside the project (%s)", path)
	}
	return text
}

// tenths are the readings of a column in tenths of a degree, by station and
// date: whole numbers, so that means are compared exactly.
type tenths map[string]map[string]int

// stationTenths reads a column with nothing of this package.
func stationTenths(t *testing.T, text []byte, column string) tenths {
	t.Helper()
	rows, err := csv.NewReader(bytes.NewReader(text)).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	at := func(name string) int { return slices.Index(rows[0], name) }
	read := make(tenths)
	for _, row := range rows[1:] {
		station := row[at("wban")]
		if read[station] == nil {
			read[station] = make(map[string]int)
		}
		if cell := row[at(column)]; cell != "" {
			whole, part, _ := strings.Cut(cell, ".")
			v, err := strconv.Atoi(whole + (part + "0")[:1])
			if err != nil {
				t.Fatal(err)
			}
			read[station][row[at("lst_date")]] = v
		}
	}
	return read
}

// bruteWindow finds the dates of a rule by trying each day, in whole numbers:
// 9 sum >= 50 n (F - 32) is mean >= F with the sum in tenths of a degree
// Celsius. It returns "" for what does not come.
func bruteWindow(readings map[string]int, length, opensF, closesF int, falling bool, from, upTo time.Time) (opened, closed string) {
	enough := map[int]int{1: 1, 3: 3, 5: 4, 7: 6}[length] // 80 % of them
	reached := func(day time.Time, fahrenheit int) bool {
		sum, n := 0, 0
		for back := range length {
			if v, known := readings[day.AddDate(0, 0, -back).Format(time.DateOnly)]; known {
				sum, n = sum+v, n+1
			}
		}
		if _, known := readings[day.Format(time.DateOnly)]; !known || n < enough {
			return false
		}
		if falling {
			return 9*sum <= 50*n*(fahrenheit-32)
		}
		return 9*sum >= 50*n*(fahrenheit-32)
	}
	for day := from; !day.After(upTo); day = day.AddDate(0, 0, 1) {
		if opened == "" && reached(day, opensF) {
			opened = day.Format(time.DateOnly)
		}
		if opened != "" && closed == "" && reached(day, closesF) {
			closed = day.Format(time.DateOnly)
		}
	}
	return opened, closed
}

func fahrenheit(f int) material.Temperature { return material.Temperature(float64(f-32) * 5 / 9) }

func date(year int, month time.Month, day int) time.Time {
	return time.Date(year, month, day, 0, 0, 0, 0, time.UTC)
}

// dayText is a date for comparison; "" if there is none.
func dayText(day time.Time) string {
	if day.IsZero() {
		return ""
	}
	return isoDay(day)
}

var stationRules = []struct {
	length, opensF, closesF int
	falling                 bool
}{
	{5, 55, 65, false}, // the rule of pre-emergents (common practice, no source)
	{3, 50, 60, false},
	{7, 54, 73, false},
	{1, 60, 70, false},
	{5, 70, 60, true}, // winter pre-emergent
	{7, 65, 50, true},
}

// TestEveryStation: each rule at each of the 63 stations and both depths opens
// and closes on the dates found by trying every day in whole numbers, on the
// reading that the file has for that date; in the north, and in the south by
// the same readings half a year later.
func TestEveryStation(t *testing.T) {
	text := realFile(t, stationsFile)
	for _, south := range []bool{false, true} {
		season, log := date(2020, 1, 1), text
		if south {
			const halfYear = 182 // days: the first of January becomes the first of July
			season, log = date(2020, 7, 1), shifted(text, halfYear)
		}
		l := mustRead(t, string(log), stationsColumns)
		if n := len(l.Stations()); n != 63 {
			t.Fatalf("%d stations", n)
		}
		for _, depth := range []string{"5", "10"} {
			readings := stationTenths(t, log, "soil_temp_"+depth+"_daily")
			for _, name := range l.Stations() {
				checkStation(t, l, name, depth, readings[name], season)
			}
		}
	}
}

func checkStation(t *testing.T, l *Log, name, depth string, readings map[string]int, season time.Time) {
	t.Helper()
	series := soilAt(t, l, name, depth+" cm", Mean)
	for _, rule := range stationRules {
		r := Rule{Falling: rule.falling, Opens: fahrenheit(rule.opensF), HasClose: true, Closes: fahrenheit(rule.closesF), TrailDays: rule.length}
		from := r.Begins(season)
		w := r.Window(series, from, lastOf(l))
		opened, closed := bruteWindow(readings, rule.length, rule.opensF, rule.closesF, rule.falling, from, lastOf(l))
		if dayText(w.Opened.Day) != opened || dayText(w.Closed.Day) != closed {
			t.Errorf("station %s, %s cm, %v: %s until %s, want %s until %s", name, depth, rule, dayText(w.Opened.Day), dayText(w.Closed.Day), opened, closed)
		}
		if opened != "" {
			want := material.Temperature(float64(readings[opened]) / 10)
			if got := w.Opened.Reading; got.Value != want || dayText(got.Day) != opened {
				t.Errorf("station %s, %s cm, %v: decided by %v on %s, the file has %v", name, depth, rule, got.Value, dayText(got.Day), want)
			}
		}
	}
}

// TestNorthAndSouth: of the same readings half a year later, the window is half
// a year later, at every station.
func TestNorthAndSouth(t *testing.T) {
	text := realFile(t, stationsFile)
	const halfYear = 182 // days
	north, south := mustRead(t, string(text), stationsColumns), mustRead(t, string(shifted(text, halfYear)), stationsColumns)
	r := Rule{Opens: fahrenheit(55), HasClose: true, Closes: fahrenheit(65), TrailDays: 5}
	opened := make(map[State]int)
	for _, name := range north.Stations() {
		n := r.Window(soilAt(t, north, name, "5 cm", Mean), date(2020, 1, 1), lastOf(north))
		s := r.Window(soilAt(t, south, name, "5 cm", Mean), date(2020, 7, 1), lastOf(south))
		if n.State != s.State || n.Opened.Mean != s.Opened.Mean || daysBetween(n.Opened.Day, s.Opened.Day) != halfYear || n.Trend != s.Trend {
			t.Errorf("station %s: north %+v, south %+v", name, n, s)
		}
		opened[n.State]++
	}
	// Spring came at all of them; the file's highest readings of three, at 35.86,
	// 40.04 and 60.72 N, are 18.2, 17.6 and 15.1 C, under the 65 F that close.
	if want := map[State]int{Closed: 60, Open: 3}; !maps.Equal(opened, want) {
		t.Errorf("states at the end of the year: %v, want %v", opened, want)
	}
}

// shifted moves the dates of the network's file.
func shifted(text []byte, days int) []byte {
	var b bytes.Buffer
	for i, line := range bytes.Split(bytes.TrimSuffix(text, []byte("\n")), []byte("\n")) {
		cells := strings.SplitN(string(line), ",", 3)
		if day, err := time.Parse(time.DateOnly, cells[1]); err == nil && i > 0 {
			cells[1] = isoDay(day.AddDate(0, 0, days))
		}
		fmt.Fprintln(&b, strings.Join(cells, ","))
	}
	return b.Bytes()
}

// TestWrongUnitAtEveryStation: the readings of each station alone, named as of
// the other unit, are refused; in their own, in either unit, nothing is said.
func TestWrongUnitAtEveryStation(t *testing.T) {
	readings := stationTenths(t, realFile(t, stationsFile), "soil_temp_5_daily")
	for name, days := range readings {
		for _, tt := range []struct {
			column string
			f      bool // the readings are in F
			code   string
		}{
			{"soil_5cm_c", false, ""}, {"soil_5cm_f", true, ""},
			{"soil_5cm_f", false, "soil_unit"}, {"soil_5cm_c", true, "soil_unit"},
		} {
			l, problems := ReadLog(strings.NewReader(stationText(tt.column, days, tt.f)), "x.csv", Options{})
			switch {
			case tt.code == "" && len(problems) > 0:
				t.Errorf("station %s as %s: %v", name, tt.column, problems)
			case tt.code != "" && (l != nil || len(problems) != 1 || problems[0].Code != tt.code):
				t.Errorf("station %s as %s, in F %v, is not refused: %v", name, tt.column, tt.f, problems)
			}
		}
	}
}

func stationText(column string, days map[string]int, f bool) string {
	var b strings.Builder
	fmt.Fprintf(&b, "time,%s\n", column)
	for _, day := range slices.Sorted(maps.Keys(days)) {
		v := float64(days[day]) / 10
		if f {
			v = v*9/5 + 32
		}
		fmt.Fprintf(&b, "%s,%.2f\n", day, v)
	}
	return b.String()
}

// TestFrozenAtEveryStation: no genuine reading of the network is taken for one
// of a stuck sensor, snow of 79 days among them; and a sensor that sticks for
// twenty days in spring is told at each station, and its days are left out.
func TestFrozenAtEveryStation(t *testing.T) {
	text := realFile(t, stationsFile)
	if _, problems := readWith(t, string(text), stationsColumns); len(problems) > 0 {
		t.Errorf("the network's own readings: %v", problems)
	}
	const from, to = "2020-05-01", "2020-05-20"
	for name, days := range stationTenths(t, text, "soil_temp_5_daily") {
		for day := range days {
			if day >= from && day <= to {
				days[day] = 117 // of no day's neighbours
			}
		}
		for day := date(2020, 5, 1); isoDay(day) <= to; day = day.AddDate(0, 0, 1) {
			days[isoDay(day)] = 117
		}
		l, problems := ReadLog(strings.NewReader(stationText("soil_5cm_c", days, false)), "x.csv", Options{})
		if l == nil || len(problems) != 1 || problems[0].Code != "soil_stuck" {
			t.Errorf("station %s: %v", name, problems)
			continue
		}
		for _, d := range soilAt(t, l, "", "5 cm", Mean).Days {
			if day := isoDay(d.Day); day >= from && day <= to {
				t.Errorf("station %s: %s is still there", name, day)
			}
		}
	}
}
