package soil

import (
	"math"
	"strconv"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"example.org/turfplat/zones/material"
)

// seriesOf makes days from the first of March 2026 on, a word a day; "." is a
// day that is not known.
func seriesOf(t testing.TB, text string) Series {
	t.Helper()
	var s Series
	for i, word := range strings.Fields(text) {
		if word == "." {
			continue
		}
		v, err := strconv.ParseFloat(word, 64)
		if err != nil {
			t.Fatal(err)
		}
		s.Days = append(s.Days, DayValue{Day: date(2026, 3, 1+i), Value: material.Temperature(v), Readings: 1})
	}
	return s
}

// TestWindow: when windows open and close, with gaps as they come. Days are
// numbered from the first of March; the log is looked at up to its end.
func TestWindow(t *testing.T) {
	const none = 0
	tests := []struct {
		name           string
		rule           Rule
		days           string
		state          State
		opened, closed int // days of March
		known          int // days in the mean that opened
		already        bool
		maybe, unknown int
		doubt          string
	}{
		{"rises", Rule{Opens: 10, TrailDays: 3}, "8 9 10 11 12", Open, 4, none, 3, false, none, 0, ""},
		{"waits", Rule{Opens: 20, TrailDays: 3}, "8 9 10 11 12", Waiting, none, none, 0, false, none, 0, ""},
		{"closes", Rule{Opens: 10, HasClose: true, Closes: 12, TrailDays: 3}, "8 9 10 11 12 13 14", Closed, 4, 6, 3, false, none, 0, ""},
		{"stays closed when it cools again", Rule{Opens: 10, HasClose: true, Closes: 12, TrailDays: 1}, "8 10 12 8 10", Closed, 2, 3, 1, false, none, 0, ""},
		{"stays open when it cools again", Rule{Opens: 10, TrailDays: 1}, "8 10 8 7", Open, 2, none, 1, false, none, 0, ""},
		{"too warm at once", Rule{Opens: 10, HasClose: true, Closes: 12, TrailDays: 1}, "8 13", Closed, 2, 2, 1, false, none, 0, ""},
		{"warm from the beginning", Rule{Opens: 10, TrailDays: 3}, "12 12 12", Open, 3, none, 3, true, 1, 0, "no mean of 3 days can be made from 2026-03-01 until it opened"},
		{"falls", Rule{Falling: true, Opens: 10, HasClose: true, Closes: 8, TrailDays: 3}, "12 11 10 9 8 7", Closed, 4, 6, 3, false, none, 0, ""},
		{"one day of five is not known", Rule{Opens: 10, TrailDays: 5}, "8 8 8 8 8 . 12 16", Open, 8, none, 4, false, none, 0, ""},
		{"two days of five are not known", Rule{Opens: 10, TrailDays: 5}, "9 9 9 9 9 . . 12 13 14 15", Open, 11, none, 4, false, 6, 0,
			"no mean of 5 days can be made from 2026-03-06 until it opened"},
		{"one day of three is not known", Rule{Opens: 10, TrailDays: 3}, "8 . 12 12 12", Open, 5, none, 3, true, 1, 0, "no mean of 3 days can be made from 2026-03-01 until it opened"},
		{"the day itself is not known", Rule{Opens: 10, TrailDays: 5}, "8 8 8 9 . 18", Open, 6, none, 4, false, 5, 0, "no mean of 5 days can be made from 2026-03-05 until it opened"},
		{"nothing is known of late", Rule{Opens: 10, TrailDays: 3}, "8 8 8 . .", Waiting, none, none, 0, false, none, 2, "no mean of 3 days can be made after 2026-03-03"},
		{"nothing is known since it opened", Rule{Opens: 10, TrailDays: 1}, "8 10 . .", Open, 2, none, 1, false, none, 2, "no mean of 1 days can be made after 2026-03-02"},
		{"nothing is known since it closed", Rule{Opens: 10, HasClose: true, Closes: 11, TrailDays: 1}, "8 10 11 . .", Closed, 2, 3, 1, false, none, 2, ""},
		{"too few days", Rule{Opens: 10, TrailDays: 5}, "12 . 12 . 12", Unknown, none, none, 0, false, none, 0, "no mean of 5 days can be made from 2026-03-01 to 2026-03-05"},
		{"no days", Rule{Opens: 10, TrailDays: 5}, "", Unknown, none, none, 0, false, none, 0, "no mean of 5 days can be made from 2026-03-01 to 2026-02-28"},
		{"exactly, in spite of rounding", Rule{Opens: 0.7, TrailDays: 7}, "0.1 0.3 0.5 0.7 0.9 1.1 1.3", Open, 7, none, 7, false, none, 0, ""},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			from, upTo := date(2026, 3, 1), date(2026, 3, len(strings.Fields(tt.days)))
			w := tt.rule.Window(seriesOf(t, tt.days), from, upTo)
			if w.State != tt.state || dayOfMarch(w.Opened.Day) != tt.opened || dayOfMarch(w.Closed.Day) != tt.closed {
				t.Errorf("state %d, opened %s, closed %s", w.State, dayText(w.Opened.Day), dayText(w.Closed.Day))
			}
			if w.Opened.Days != tt.known || w.Already != tt.already || dayOfMarch(w.MaybeSince) != tt.maybe || w.UnknownDays != tt.unknown || w.Doubt != tt.doubt {
				t.Errorf("of %d days, already %v, maybe since %s, %d unknown, %q", w.Opened.Days, w.Already, dayText(w.MaybeSince), w.UnknownDays, w.Doubt)
			}
		})
	}
}

func dayOfMarch(day time.Time) int {
	if day.IsZero() {
		return 0
	}
	return day.Day()
}

// TestWindowBounds: days before the first count in means, and in nothing else;
// days after the last do not count at all.
func TestWindowBounds(t *testing.T) {
	r := Rule{Opens: 10, TrailDays: 3}
	s := seriesOf(t, "12 12 12 12 8 8 8 11 12 13")
	if w := r.Window(s, date(2026, 3, 5), date(2026, 3, 8)); w.State != Open || w.Opened.Day.Day() != 5 || !w.Already {
		t.Errorf("from the 5th, the days before keep the mean up: %+v", w)
	}
	if w := r.Window(s, date(2026, 3, 6), date(2026, 3, 8)); w.State != Waiting || w.Now.Day.Day() != 8 {
		t.Errorf("to the 8th it is not there: %+v", w)
	}
	if w := r.Window(s, date(2026, 3, 6), date(2026, 3, 10)); w.Opened.Day.Day() != 9 || w.Opened.Reading.Value != 12 {
		t.Errorf("on the 9th, at 12 C: %+v", w.Opened)
	}
}

// TestBegins: a rule of cooling looks from midsummer on, in either half of the
// world.
func TestBegins(t *testing.T) {
	for _, tt := range []struct {
		season  time.Time
		falling bool
		want    string
	}{
		{date(2026, 1, 1), false, "2026-01-01"}, {date(2026, 1, 1), true, "2026-07-01"},
		{date(2026, 7, 1), false, "2026-07-01"}, {date(2026, 7, 1), true, "2027-01-01"},
	} {
		if got := isoDay(Rule{Falling: tt.falling}.Begins(tt.season)); got != tt.want {
			t.Errorf("season %s, falling %v: %s, want %s", isoDay(tt.season), tt.falling, got, tt.want)
		}
	}
}

// TestTrend: days on a straight line have its slope, whatever is missing; days
// to a temperature are counted up.
func TestTrend(t *testing.T) {
	tests := []struct {
		days   string
		perDay material.Temperature
		known  bool
		to     material.Temperature
		n      int
		ok     bool
	}{
		{"5 6 7 8 9 10 11", 1, true, 14.5, 4, true},
		{"5 6 . 8 9 10 11", 1, true, 13, 2, true},
		{"99 5 5.5 6 6.5 7 7.5 8", 0.5, true, 9, 2, true}, // the first is of a week before
		{"5 6 . . 9 10 11", 0, false, 13, 0, false},       // too few
		{"11 10 9 8 7 6 5", -1, true, 9, 0, false},        // leads away
		{"11 10 9 8 7 6 5", -1, true, 2, 3, true},
		{"5 5 5 5 5 5 5", 0, true, 9, 0, false},
		{"5 5 5 5 5 5 5", 0, true, 5, 0, false},
		{"5.0 5.01 5.02 5.03 5.04 5.05 5.06", 0.01, true, 9, 0, false}, // would take a year
	}
	for _, tt := range tests {
		s := seriesOf(t, tt.days)
		last := s.Days[len(s.Days)-1]
		got := trend(s.Days, last.Day)
		if got.Known != tt.known || math.Abs(float64(got.PerDay-tt.perDay)) > 1e-12 {
			t.Errorf("%s: %+v, want %v a day", tt.days, got, tt.perDay)
		}
		if n, ok := got.DaysTo(last.Value, tt.to); n != tt.n || ok != tt.ok {
			t.Errorf("%s to %v: %d, %v, want %d, %v", tt.days, tt.to, n, ok, tt.n, tt.ok)
		}
	}
}

// TestWindowLaws: whatever the days, a warmer threshold never opens sooner, a
// cooling rule is the warming one of the temperatures turned upside down, more
// of the log changes nothing that was decided, and no gap makes a mean of fewer
// days than it should have.
func TestWindowLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var s, turned Series
		for i := range rapid.IntRange(0, 60).Draw(t, "days") {
			if rapid.IntRange(0, 9).Draw(t, "gap") == 0 {
				continue
			}
			v := material.Temperature(rapid.IntRange(-50, 300).Draw(t, "tenths")) / 10
			s.Days = append(s.Days, DayValue{Day: date(2026, 3, 1+i), Value: v})
			turned.Days = append(turned.Days, DayValue{Day: date(2026, 3, 1+i), Value: -v})
		}
		r := Rule{Opens: material.Temperature(rapid.IntRange(0, 25).Draw(t, "opens")), HasClose: true, TrailDays: rapid.IntRange(1, 8).Draw(t, "length")}
		r.Closes = r.Opens + 5
		from, upTo := date(2026, 3, 1), date(2026, 4, 29)
		w := r.Window(s, from, upTo)

		warmer := r
		warmer.Opens++
		if later := warmer.Window(s, from, upTo); !later.Opened.Day.IsZero() && (w.Opened.Day.IsZero() || later.Opened.Day.Before(w.Opened.Day)) {
			t.Errorf("%v C opens on %s, %v C on %s", r.Opens, dayText(w.Opened.Day), warmer.Opens, dayText(later.Opened.Day))
		}
		down := Rule{Falling: true, Opens: -r.Opens, HasClose: true, Closes: -r.Closes, TrailDays: r.TrailDays}
		if d := down.Window(turned, from, upTo); d.State != w.State || !d.Opened.Day.Equal(w.Opened.Day) || !d.Closed.Day.Equal(w.Closed.Day) {
			t.Errorf("upside down: %+v, upright %+v", d, w)
		}
		if cut := r.Window(s, from, date(2026, 3, 30)); !cut.Opened.Day.IsZero() && cut.Opened != w.Opened || !cut.Closed.Day.IsZero() && cut.Closed != w.Closed {
			t.Errorf("to the 30th %+v, to the end %+v", cut, w)
		}
		for _, at := range []Trailing{w.Opened, w.Closed, w.Now} {
			if !at.Day.IsZero() && (5*at.Days < 4*r.TrailDays || at.Days > r.TrailDays || !at.Reading.Day.Equal(at.Day)) {
				t.Errorf("a mean of %d days is of %+v", r.TrailDays, at)
			}
		}
	})
}
