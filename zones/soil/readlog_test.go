package soil

import (
	"errors"
	"io"
	"slices"
	"strconv"
	"strings"
	"testing"
	"testing/iotest"
	"time"

	"example.org/turfplat/geo/ingest"
)

// told writes problems as a person sees them, with their severity and hint.
func told(problems []ingest.Problem) []string {
	var list []string
	for _, p := range problems {
		text := p.Severity.String() + " " + p.Code + ": " + p.String()
		if p.Hint != "" {
			text += " | " + p.Hint
		}
		list = append(list, text)
	}
	return list
}

// TestReadLog: what is odd about a log is told with its place, and what can be
// read of it is.
func TestReadLog(t *testing.T) {
	var manyDays, manyValues string // one hot day of less than fifty would speak for another unit
	for i := range 60 {
		day, v := isoDay(date(2026, 2, 1+i)), strconv.Itoa(3+i%7)
		manyDays += day + "," + v + "\n"
		manyValues += " " + day + "=" + v
	}
	manyValues = manyValues[1:]
	tests := []struct {
		name, columns, text string
		days                string // of the only station at 2 in: day=value in C, "refused" if there is no log
		told                []string
	}{
		{"daily, as named", "", "time,soil_2in_f\n2026-04-01,50\n2026-04-02,59\n", "2026-04-01=10 2026-04-02=15", nil},
		{"capitals, blanks, quotes, BOM, CRLF", "", "\ufeffTime, \"Soil_2in_C\"\r\n\"2026/04/01\", 10 \r\n\r\n2026-04-02,\"11\"\r\n", "2026-04-01=10 2026-04-02=11", nil},
		{"semicolons and decimal commas", "", "time;soil_5cm_c\n2026-04-01;10,5\n", "2026-04-01=10.5", nil},
		{"tabs, and lines before the names", "", "Logger 7\nplot: front\n\ntime\tsoil_5cm_c\n20260401\t10.5\n", "2026-04-01=10.5", nil},
		{"station and other columns", "", "station,note,time,soil_5cm_c\nfront,\"wet, cold\",2026-04-01,10.5\n", "2026-04-01=10.5", nil},
		{"other names", "time=date,temp=ts5,unit=c,depth=5cm,missing=-9999", "date,ts5\n2026-04-01,-9999\n2026-04-02,-9999.0\n2026-04-03,4\n", "2026-04-03=4", nil},
		{"words for missing", "", "time,soil_5cm_c\n2026-04-01,NA\n2026-04-02,\n2026-04-03\n2026-04-04,NaN\n2026-04-05,4\n", "2026-04-05=4", nil},
		{"a code for missing, with names as they are", "missing=99.9", "time,soil_5cm_c\n2026-04-01,99.9\n2026-04-05,4\n", "2026-04-05=4", nil},
		{"a code that is not stated", "", "time,soil_5cm_c\n2026-04-01,-9999\n2026-04-02,-9999\n2026-04-05,4\n", "2026-04-05=4", []string{
			`warning soil_impossible: soil.csv: line 2: "soil_5cm_c": -9999 C is no temperature of soil or air, left out (2 readings) | if it stands for a missing reading, say so with --columns missing=-9999`}},
		{"one reading of a broken sensor", "", "time,soil_5cm_c\n" + manyDays + "2026-04-05,85\n", manyValues, []string{
			`warning soil_impossible: soil.csv: line 62: "soil_5cm_c": 85 C is no temperature of soil or air, left out | if it stands for a missing reading, say so with --columns missing=85`}},
		{"words for numbers", "", "time,soil_5cm_c\n2026-04-01,Inf\n2026-04-02,0x1p3\n2026-04-03,cold\n2026-04-04,1_0\n2026-04-05,4\n", "2026-04-05=4", []string{
			`warning soil_unread: soil.csv: line 2: "soil_5cm_c": "Inf" is no temperature, left out (4 readings)`}},
		{"times that are none", "", "time,soil_5cm_c\n4/5/2026,10\n2026-13-01,10\n,10\n2026-04-05,4\n", "2026-04-05=4", []string{
			`warning soil_time: soil.csv: line 2: "time": "4/5/2026" is no time, row passed over (3 rows) | write it as in 2026-04-05 or 2026-04-05T13:30`}},
		{"out of order", "", "time,soil_5cm_c\n2026-04-02,11\n2026-04-01,10\n2026-04-03,12\n", "2026-04-01=10 2026-04-02=11 2026-04-03=12", []string{
			`warning soil_order: soil.csv: line 3: "soil_5cm_c": rows are out of order, sorted by time`}},
		{"twice the same, and twice not the same", "", "time,soil_5cm_c\n2026-04-01,10\n2026-04-01,10\n2026-04-02,11\n2026-04-02,12\n", "2026-04-01=10 2026-04-02=11", []string{
			`warning soil_repeat: soil.csv: line 5: "soil_5cm_c": another reading of the moment on line 4, left out | if the log is of several places, name their column with --columns station=...`}},
		{"a name without unit", "", "time,soil_2in,soil_5cm_c\n2026-04-01,50,10\n", "2026-04-01=10", []string{
			`warning soil_column: soil.csv: line 1: "soil_2in": the name does not say depth and unit, passed over | name it as in soil_2in_f or soil_5cm_c, or use --columns`}},
		{"one sensor twice", "", "time,soil_5cm_f,soil_5cm_c\n2026-04-01,50,10\n", "refused", []string{
			`error soil_columns: soil.csv: line 1: columns "soil_5cm_f" and "soil_5cm_c" are of one sensor | name with --columns the one to read`}},
		{"no temperatures", "", "time,rain\n2026-04-01,3\n", "refused", []string{
			"error soil_columns: soil.csv: no line names the columns; the first lacks one of temperature, such as soil_2in_f | name them time, soil_2in_f or soil_5cm_c at the top, or say which is which with --columns time=...,temp=...,unit=c,depth=5cm"}},
		{"a column that is not there", "time=day,temp=ts5,unit=c,depth=5cm", "date,ts5\n2026-04-01,4\n", "refused", []string{
			`error soil_columns: soil.csv: no line names the columns; the first lacks "day" | name them time, soil_2in_f or soil_5cm_c at the top, or say which is which with --columns time=...,temp=...,unit=c,depth=5cm`}},
		{"names and no rows", "", "time,soil_5cm_c\n", "refused", []string{
			"error soil_empty: soil.csv: the log has no readings of temperature | look whether --columns names the right ones"}},
		{"nothing", "", "", "refused", []string{
			`error soil_columns: soil.csv: no line names the columns; the first lacks "time", one of temperature, such as soil_2in_f | name them time, soil_2in_f or soil_5cm_c at the top, or say which is which with --columns time=...,temp=...,unit=c,depth=5cm`}},
		{"no text", "", "time,soil_5cm_c\n2026-04-01,\xff\n", "refused", []string{
			"error utf8_invalid: soil.csv: line 2: the line is not text in UTF-8 | save the log as CSV with the UTF-8 encoding"}},
		{"no line breaks", "", "time,soil_5cm_c\n" + strings.Repeat("x", longestLine+1), "refused", []string{
			"error soil_line: soil.csv: line 2: the line is too long to be a row of a log | look whether this is a text file with line breaks"}},
		{"UTC", "", "time,soil_5cm_c\n2026-04-01T12:00Z,10\n", "", []string{
			`note soil_utc: soil.csv: line 2: "time": times are in UTC, and so are the days`}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			l, problems := readWith(t, tt.text, tt.columns)
			if got := told(problems); !slices.Equal(got, tt.told) {
				t.Errorf("told\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(tt.told, "\n"))
			}
			if l == nil || tt.days == "refused" {
				if l != nil || tt.days != "refused" {
					t.Errorf("refused: %v, want %q", l == nil, tt.days)
				}
				return
			}
			if got := daysText(l, t); tt.days != "" && got != tt.days {
				t.Errorf("days %s, want %s", got, tt.days)
			}
		})
	}
}

// TestReadFails: what stops the reading refuses the log, be it never so good up
// to there.
func TestReadFails(t *testing.T) {
	good := strings.NewReader("time,soil_5cm_c\n2026-04-01,10\n")
	l, problems := ReadLog(io.MultiReader(good, iotest.ErrReader(errors.New("disk gone"))), "soil.csv", Options{})
	if got := told(problems); l != nil || len(got) != 1 || got[0] != "error read_failed: soil.csv: cannot be read on: disk gone" {
		t.Errorf("%q", got)
	}
}

// daysText writes the days of the only station at 2 in, in degrees Celsius.
func daysText(l *Log, t *testing.T) string {
	var list []string
	for _, d := range soilAt(t, l, l.Stations()[0], "2 in", Mean).Days {
		c := sensorColumn{unit: celsius}
		list = append(list, isoDay(d.Day)+"="+strings.TrimSuffix(c.shown(d.Value), " C"))
	}
	return strings.Join(list, " ")
}

// TestNoStations: a log without a station column has none to choose.
func TestNoStations(t *testing.T) {
	l := mustRead(t, "time,soil_5cm_c\n2026-04-01,11\n", "")
	const want = `the log names no stations, so there is no "side": leave the station out`
	if _, err := l.Station("side"); err == nil || err.Error() != want {
		t.Errorf("%v, want %s", err, want)
	}
	if _, err := l.Station(""); err != nil {
		t.Error(err)
	}
}

// TestStations: a log of several asks which; names that are not there are
// answered with those that are.
func TestStations(t *testing.T) {
	l := mustRead(t, "time,station,soil_5cm_c\n2026-04-02,front,10\n2026-04-01,back,11\n2026-04-01,front,12\n", "")
	if got := l.Stations(); !slices.Equal(got, []string{"back", "front"}) {
		t.Errorf("stations %q", got)
	}
	for _, tt := range []struct{ name, want string }{
		{"", `the log has 2 stations: choose one of "back", "front"`},
		{"side", `the log has no station "side": choose one of "back", "front"`},
		{"Front", `the log has no station "Front": choose one of "back", "front"`},
	} {
		if _, err := l.Station(tt.name); err == nil || err.Error() != tt.want {
			t.Errorf("%q: %v, want %s", tt.name, err, tt.want)
		}
	}
	back, err := l.Station("back")
	if err != nil || isoDay(back.Last()) != "2026-04-01" || isoDay(lastOf(l)) != "2026-04-02" {
		t.Errorf("the last reading of the back is of %s, of all %s, %v", isoDay(back.Last()), isoDay(lastOf(l)), err)
	}
}

// TestNearestDepth: the sensor nearest to the depth asked for is taken, told if
// it is another depth, and none if it is far.
func TestNearestDepth(t *testing.T) {
	const text = "time,soil_5cm_c,soil_4in_c,soil_12in_c\n2026-04-01,10,9,8\n"
	tests := []struct{ depth, column, note string }{
		{"2 in", "soil_5cm_c", ""}, {"5 cm", "soil_5cm_c", ""}, {"10 cm", "soil_4in_c", ""},
		{"1 in", "soil_5cm_c", `no sensor at 2.54 cm; column "soil_5cm_c" at 5 cm is the nearest, and deeper soil warms and cools later`},
		{"6 in", "soil_4in_c", `no sensor at 15.24 cm; column "soil_4in_c" at 10.16 cm is the nearest, and shallower soil warms and cools sooner`},
		{"20 cm", "", "no sensor is near 20 cm; the nearest is 10.16 cm"},
	}
	station, err := mustRead(t, text, "").Station("")
	if err != nil {
		t.Fatal(err)
	}
	for _, tt := range tests {
		series, err := station.Soil(mustLength(t, tt.depth), Mean)
		note := series.Note
		if err != nil {
			note = err.Error()
		}
		if series.Column != tt.column || note != tt.note {
			t.Errorf("%s: column %q, %q; want %q, %q", tt.depth, series.Column, note, tt.column, tt.note)
		}
	}
}

// TestStatistics: lows come from columns of lows or from readings of the day,
// never from its mean.
func TestStatistics(t *testing.T) {
	daily := "time,soil_2in_f,soil_2in_min_f,air_max_f\n2026-04-01,50,41,68\n2026-04-02,50,41,68\n"
	var hours strings.Builder
	hours.WriteString("time,soil_2in_c,air_c\n")
	for i := range 24 {
		hours.WriteString("2026-04-01T" + string(rune('0'+i/10)) + string(rune('0'+i%10)) + ":00," + string(rune('0'+i%8)) + "," + string(rune('0'+i%6)) + "\n")
	}
	tests := []struct {
		text string
		stat Statistic
		soil string // column and value in C, or the error
		air  string
	}{
		{daily, Mean, "soil_2in_f 10", "the log has no temperatures of air: name their column air_f or air_c"},
		{daily, Lowest, "soil_2in_min_f 5", "the log has no lows of a day for air: name their column air_min_f or air_min_c, or give readings of every hour"},
		{daily, Highest, "the log has no highs of a day for soil: name their column soil_2in_max_f or soil_2in_max_c, or give readings of every hour", "air_max_f 20"},
		{hours.String(), Mean, "soil_2in_c 3.5", "air_c 2.5"},
		{hours.String(), Lowest, "soil_2in_c 0", "air_c 0"},
		{hours.String(), Highest, "soil_2in_c 7", "air_c 5"},
	}
	for _, tt := range tests {
		station, err := mustRead(t, tt.text, "").Station("")
		if err != nil {
			t.Fatal(err)
		}
		soil, soilErr := station.Soil(mustLength(t, "2 in"), tt.stat)
		air, airErr := station.Air(tt.stat)
		if got := firstDay(soil, soilErr); got != tt.soil {
			t.Errorf("%s of soil: %s, want %s", tt.stat, got, tt.soil)
		}
		if got := firstDay(air, airErr); got != tt.air {
			t.Errorf("%s of air: %s, want %s", tt.stat, got, tt.air)
		}
	}
}

func firstDay(s Series, err error) string {
	if err != nil {
		return err.Error()
	}
	c := sensorColumn{unit: celsius}
	return s.Column + " " + strings.TrimSuffix(c.shown(s.Days[0].Value), " C")
}

// lastOf is the day of the last reading of all stations.
func lastOf(l *Log) (last time.Time) {
	for _, s := range l.stations {
		if s.Last().After(last) {
			last = s.Last()
		}
	}
	return last
}
