package soil

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"example.org/turfplat/zones/material"
)

// TestHeatOfDay: the method of the mean of the day's extremes, in degrees
// Fahrenheit as published.
func TestHeatOfDay(t *testing.T) {
	tests := []struct {
		highest, lowest, base int
		want                  float64
		source                string
	}{
		{70, 40, 50, 5, "worked example of an extension sheet: (70 + 40) / 2 - 50"},
		{75, 27, 50, 1, "worked example of an extension sheet: (75 + 27) / 2 - 50"},
		{48, 30, 50, 0, "computed: a mean under the base adds nothing"},
		{60, 40, 32, 18, "computed, base 32 as in the model of Michigan State University"},
		{50, 50, 50, 0, "computed: at the base"},
	}
	for _, tt := range tests {
		got := HeatOfDay(fahrenheit(tt.highest), fahrenheit(tt.lowest), fahrenheit(tt.base)) * 9 / 5
		if math.Abs(got-tt.want) > 1e-9 {
			t.Errorf("%d/%d F, base %d: %v, want %v (%s)", tt.highest, tt.lowest, tt.base, got, tt.want, tt.source)
		}
	}
}

// airOf makes days of highs, ten degrees over their lows, as seriesOf.
func airOf(t *testing.T, text string) (highs, lows []DayValue) {
	highs = seriesOf(t, text).Days
	for _, d := range highs {
		d.Value -= 10
		lows = append(lows, d)
	}
	return highs, lows
}

// TestSumDegrees: sums over days, short gaps filled in on a straight line, long
// ones not.
func TestSumDegrees(t *testing.T) {
	tests := []struct {
		name, highs string // base 10 C: a high of 16 adds 1
		from, upTo  int    // March
		want        string // sums of the days
		filled      int
		ended       string
	}{
		{"whole", "16 17 18 10", 1, 4, "1 3 6 6", 0, ""},
		{"from a later day", "16 17 18 10", 2, 4, "2 5 5", 0, ""},
		{"up to an earlier day", "16 17 18 10", 1, 2, "1 3", 0, ""},
		{"one day filled in", "16 . 18", 1, 3, "1 3 6", 1, ""},
		{"three days filled in", "16 . . . 20", 1, 5, "1 3 6 10 15", 3, ""},
		{"four days are too many", "16 . . . . 21", 1, 6, "1", 0, "the air of 2026-03-02 is not known, nor of enough days about it"},
		{"the last day waits for the next", "16 17 .", 1, 3, "1 3", 0, "the air of 2026-03-03 is not known, nor of enough days about it"},
		{"the day before the first serves to fill it in", "16 . 18", 2, 3, "2 5", 1, ""},
		{"nothing before the first", ". 16 17", 1, 3, "", 0, "the air of 2026-03-01 is not known, nor of enough days about it"},
		{"a day after the last is not looked at", "16 . 18", 1, 2, "1", 0, "the air of 2026-03-02 is not known, nor of enough days about it"},
		{"it begins after it ends", "16", 2, 1, "", 0, ""},
	}
	for _, tt := range tests {
		highs, lows := airOf(t, tt.highs)
		got := SumDegrees(highs, lows, 10, date(2026, 3, tt.from), date(2026, 3, tt.upTo))
		var sums []string
		for _, d := range got.Days {
			sums = append(sums, strconv.FormatFloat(math.Round(d.Sum*1e9)/1e9, 'f', -1, 64))
		}
		if text := strings.Join(sums, " "); text != tt.want || got.Filled != tt.filled || got.Ended != tt.ended {
			t.Errorf("%s: %q, %d filled in, %q", tt.name, text, got.Filled, got.Ended)
		}
	}
}

// TestReaches: the first day whose sum is as much, in spite of rounding.
func TestReaches(t *testing.T) {
	highs, lows := airOf(t, "15.1 15.1 15.1 15.1")
	sums := SumDegrees(highs, lows, 10, date(2026, 3, 1), date(2026, 3, 4))
	if d, ok := sums.Reaches(0.3); !ok || d.Day.Day() != 3 {
		t.Errorf("0.3 on %v, %v", d, ok)
	}
	if d, ok := sums.Reaches(0.5); ok {
		t.Errorf("0.5 on %v", d)
	}
}

// TestDegreeDaysAtStations: sums of real air at each station, against the sum
// of whole tenths of a degree, where no day is missing.
func TestDegreeDaysAtStations(t *testing.T) {
	text := realFile(t, stationsFile)
	highs, lows := stationTenths(t, text, "t_daily_max"), stationTenths(t, text, "t_daily_min")
	l := mustRead(t, string(text), stationsColumns)
	from, upTo, compared := date(2020, 2, 15), date(2020, 5, 31), 0
	for _, name := range l.Stations() {
		station, err := l.Station(name)
		if err != nil {
			t.Fatal(err)
		}
		high, highErr := station.Air(Highest)
		low, lowErr := station.Air(Lowest)
		if highErr != nil || lowErr != nil {
			t.Fatal(highErr, lowErr)
		}
		got := SumDegrees(high.Days, low.Days, material.Temperature(10), from, upTo)
		want, whole := 0, true // in twentieths of a degree
		for day := from; !day.After(upTo); day = day.AddDate(0, 0, 1) {
			h, hk := highs[name][isoDay(day)]
			w, wk := lows[name][isoDay(day)]
			whole = whole && hk && wk
			want += max(0, h+w-200)
		}
		if !whole {
			continue
		}
		compared++
		if sum := got.Days[len(got.Days)-1].Sum; got.Ended != "" || got.Filled != 0 || math.Abs(sum-float64(want)/20) > 1e-9 {
			t.Errorf("station %s: %v, %d filled, %q, want %v", name, sum, got.Filled, got.Ended, float64(want)/20)
		}
	}
	if compared < 50 {
		t.Errorf("only %d stations are whole", compared)
	}
}
