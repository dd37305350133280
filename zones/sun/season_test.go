package sun

import (
	"math"
	"slices"
	"strings"
	"testing"
	"time"
)

func TestParseSeason(t *testing.T) {
	for _, tt := range []struct {
		text string
		want Season
		days int
		said string
	}{
		{"04-15..10-15", Season{From: Date{4, 15}, To: Date{10, 15}}, 184, "15 April to 15 October"},
		{"06-21..06-21", Season{From: Date{6, 21}, To: Date{6, 21}}, 1, "21 June"},
		{"11-01..02-28", Season{From: Date{11, 1}, To: Date{2, 28}}, 120, "1 November to 28 February"},
		{"12-31..01-01", Season{From: Date{12, 31}, To: Date{1, 1}}, 2, "31 December to 1 January"},
		{"12-01..02-29", Season{From: Date{12, 1}, To: Date{2, 28}}, 90, "1 December to 28 February"},
		{"01-01..12-31", Season{From: Date{1, 1}, To: Date{12, 31}}, 365, "1 January to 31 December"},
		{"07-02..07-01", Season{From: Date{7, 2}, To: Date{7, 1}}, 365, "2 July to 1 July"},
	} {
		got, err := ParseSeason(tt.text)
		if err != nil || got != tt.want || len(got.days()) != tt.days || got.String() != tt.said {
			t.Errorf("%s: %+v (%v), %d days, %v; want %+v", tt.text, got, got, len(got.days()), err, tt)
		}
	}
}

func TestParseSeasonRefuses(t *testing.T) {
	for _, tt := range []struct{ text, says string }{
		{"", `"" is no season: write FROM..TO as month-day, such as 04-15..10-15`},
		{"06-21", `"06-21" is no season`},
		{"04-15..", `"" is no day of the year: write month-day, such as 04-15`},
		{"04-31..10-15", `"04-31" is no day of the year`},
		{"4-15..10-15", `"4-15" is no day of the year`},
		{"15-04..15-10", `"15-04" is no day of the year`},
		{"2026-04-15..2026-10-15", `"2026-04-15" is no day of the year`},
		{"04-15..10-15..11-01", `"10-15..11-01" is no day of the year`},
		{"summer", `"summer" is no season`},
	} {
		if _, err := ParseSeason(tt.text); err == nil || !strings.Contains(err.Error(), tt.says) {
			t.Errorf("%q: %v, want %s", tt.text, err, tt.says)
		}
	}
}

func FuzzParseSeason(f *testing.F) {
	for _, s := range []string{"04-15..10-15", "06-21..06-21", "11-01..02-29", "", "..", "99-99..00-00", "\x00..\xff"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		season, err := ParseSeason(s)
		if err != nil {
			return
		}
		sum := 0.0
		for _, d := range season.days() {
			sum += d.share
		}
		if math.Abs(sum-1) > 1e-9 || season.String() == "" {
			t.Errorf("%q: %v, shares add up to %g", s, season, sum)
		}
	})
}

// Months in which a lawn of each kind counts; six months on in the south.
func TestPresets(t *testing.T) {
	for _, tt := range []struct {
		name   string
		season Season
		first  Date
		months []time.Month
		said   string
	}{
		{"cool, north", Cool(45), Date{4, 1}, []time.Month{4, 5, 6, 9, 10}, "1 April to 31 October without July, August"},
		{"warm, north", Warm(33), Date{5, 1}, []time.Month{5, 6, 7, 8, 9}, "1 May to 30 September"},
		{"cool, south", Cool(-38), Date{10, 1}, []time.Month{10, 11, 12, 3, 4}, "1 October to 30 April without January, February"},
		{"warm, south", Warm(-33), Date{11, 1}, []time.Month{11, 12, 1, 2, 3}, "1 November to 30 March"},
	} {
		var months []time.Month
		for _, d := range tt.season.days() {
			if !slices.Contains(months, d.Month) {
				months = append(months, d.Month)
			}
		}
		if tt.season.From != tt.first || !slices.Equal(months, tt.months) || tt.season.String() != tt.said {
			t.Errorf("%s: %v, months %v; want from %v, %v, %q", tt.name, tt.season, months, tt.first, tt.months, tt.said)
		}
	}
}

func TestSeasonWeights(t *testing.T) {
	s := Season{From: Date{6, 30}, To: Date{7, 2}}
	s.Weights[time.June-1], s.Weights[time.July-1] = 2, 1
	days := s.days()
	if len(days) != 3 || days[0].share != 0.5 || days[1].share != 0.25 || days[2].share != 0.25 {
		t.Errorf("shares %+v, want 0.5, 0.25, 0.25", days)
	}
	if want := "30 June to 2 July, weighted by month"; s.String() != want {
		t.Errorf("%q, want %q", s, want)
	}
	s.Weights = [12]float64{time.January - 1: 1}
	if days := s.days(); len(days) != 0 {
		t.Errorf("no day of the season weighs anything, but %v count", days)
	}
}

// Leaves at 40 degrees come out over three weeks from 15 April and are down by
// the end of October; four days later in spring for each degree towards the
// pole; six months on in the south. Common practice, no source.
func TestInLeaf(t *testing.T) {
	for _, tt := range []struct {
		date Date
		lat  float64
		want float64
	}{
		{Date{4, 15}, 40, 0},
		{Date{4, 25}, 40, 10.0 / 21},
		{Date{5, 6}, 40, 1},
		{Date{7, 15}, 40, 1},
		{Date{10, 10}, 40, 1},
		{Date{10, 24}, 40, 1 - 14.0/21},
		{Date{10, 31}, 40, 0},
		{Date{1, 15}, 40, 0},
		{Date{5, 5}, 45, 0},
		{Date{5, 5}, 40, 20.0 / 21},
		{Date{3, 16}, 30, 10.0 / 21},
		{Date{3, 16}, 20, 10.0 / 21}, // no earlier than at 30
		{Date{5, 27}, 65, 10.0 / 21}, // no later than at 48
		{Date{10, 25}, -40, 10.0 / 21},
		{Date{1, 15}, -40, 1},
		{Date{7, 15}, -40, 0},
	} {
		if got := leaves.inLeaf(tt.date, tt.lat); math.Abs(got-tt.want) > 1e-12 {
			t.Errorf("%v at %g: %.4f in leaf, want %.4f", tt.date, tt.lat, got, tt.want)
		}
	}
}
