package program

import (
	"encoding/csv"
	"fmt"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"
	"time"

	"example.org/turfplat/zones/soil"
)

// U.S. Climate Reference Network, daily data of 2020, 63 stations.
const network = "../../../shared/data/soil/uscrn_daily_2020_share.csv"

const networkColumns = "time=lst_date,station=wban,temp=soil_temp_5_daily,unit=c,depth=5cm,air_max=t_daily_max,air_min=t_daily_min"

// networkLog returns the network's log, with its days moved by so many months,
// and the 5 cm means of each station by day.
func networkLog(t *testing.T, months int) (*soil.Log, map[string]map[string]float64) {
	t.Helper()
	text, err := os.ReadFile(network)
	if err != nil {
		t.Skip("no soil temperatures of the network beside the project")
	}
	rows, err := csv.NewReader(strings.NewReader(string(text))).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	means := make(map[string]map[string]float64)
	var moved strings.Builder
	w := csv.NewWriter(&moved)
	w.Write(rows[0])
	for _, r := range rows[1:] {
		d, err := time.Parse(time.DateOnly, r[1])
		if err != nil {
			t.Fatal(err)
		}
		// Days from the season's first keep their number in the other half year.
		d = date(2020, 1+time.Month(months), 1).AddDate(0, 0, d.YearDay()-1)
		r[1] = isoDay(d)
		w.Write(r)
		if v, err := strconv.ParseFloat(r[9], 64); err == nil {
			if means[r[0]] == nil {
				means[r[0]] = make(map[string]float64)
			}
			means[r[0]][r[1]] = v
		}
	}
	w.Flush()
	columns, err := soil.ParseColumns(networkColumns)
	if err != nil {
		t.Fatal(err)
	}
	log, problems := soil.ReadLog(strings.NewReader(moved.String()), "network.csv", soil.Options{Columns: columns})
	if log == nil {
		t.Fatal(problems)
	}
	return log, means
}

// The pre-emergent opens at each station on the day whose five-day mean first
// reaches 55 F, and the plan names the reading; in the south, with the days
// moved by half a year, on the same day of the season. The expected day is found
// here by looking at every five days that are all known; a station with gaps may
// open earlier on four of five, which is checked as well.
func TestPreEmergentAtEveryStation(t *testing.T) {
	const warm = (55.0 - 32) * 5 / 9
	p := read(t, head+"  - {id: pre, does: spread, use: pre_emergent, when: {soil: {at_least: 55 F, depth: 2 in, days: 5}},\n"+
		"     override: {rule: frozen, reason: some stations are frozen on the day of the plan}}\n")
	for _, half := range []struct {
		name     string
		months   int
		latitude float64
	}{{"north", 0, 40}, {"south", 6, -35}} {
		log, means := networkLog(t, half.months)
		first := season{2020, half.latitude < 0}.first()
		opened := 0
		for _, name := range log.Stations() {
			st, err := log.Station(name)
			if err != nil {
				t.Fatal(err)
			}
			on := yard()
			on.Latitude = half.latitude
			s := stepOf(t, lay(t, p, on, Occasion{Today: first.AddDate(0, 0, 300), Soil: st}), "pre")
			want, mean := firstWarm(means[name], first, 300, warm)
			switch {
			case want.IsZero():
				if s.Status == Ready {
					t.Errorf("%s %s: ready, though no mean reaches it", half.name, name)
				}
			case !s.timing.span.from.Equal(want):
				t.Errorf("%s %s: opens on %s, want %s", half.name, name, isoDay(s.timing.span.from), isoDay(want))
			default:
				opened++
				if reading := fmt.Sprintf("5-day mean %.1f F on %s", mean*9/5+32, isoDay(want)); s.Status != Ready || !strings.Contains(s.Dates, reading) {
					t.Errorf("%s %s: %s, %q without %q", half.name, name, s.Status, s.Dates, reading)
				}
			}
		}
		if opened < 55 {
			t.Errorf("%s: only %d stations open", half.name, opened)
		}
	}
}

// firstWarm is the first of so many days of a season whose trailing mean of
// five days, of which the last and three others are known at least, reaches a
// temperature.
func firstWarm(means map[string]float64, first time.Time, last int, warm float64) (time.Time, float64) {
	for n := 0; n <= last; n++ {
		end := first.AddDate(0, 0, n)
		sum, known := 0.0, 0
		for back := 0; back < 5; back++ {
			if v, ok := means[isoDay(end.AddDate(0, 0, -back))]; ok {
				sum += v
				known++
			}
		}
		_, lastKnown := means[isoDay(end)]
		if mean := sum / float64(known); known >= 4 && lastKnown && mean >= warm-1e-12*math.Abs(warm) {
			return end, mean
		}
	}
	return time.Time{}, 0
}

// On the days before it opens the plan waits and tells the trend; past the
// closing temperature the step is skipped and says when that was.
func TestWaitingAndClosedBySoil(t *testing.T) {
	log, means := networkLog(t, 0)
	st, err := log.Station("53974") // in Kansas
	if err != nil {
		t.Fatal(err)
	}
	p := read(t, head+"  - {id: pre, does: spread, use: pre_emergent, when: {soil: {at_least: 55 F, depth: 2 in, days: 5, closes: 65 F}}}\n")
	open, _ := firstWarm(means["53974"], date(2020, 1, 1), 300, (55.0-32)*5/9)
	closed, _ := firstWarm(means["53974"], date(2020, 1, 1), 300, (65.0-32)*5/9)
	before := stepOf(t, lay(t, p, yard(), Occasion{Today: open.AddDate(0, 0, -1), Soil: st}), "pre")
	if before.Status != Waiting || !strings.Contains(before.Why, "F, ") || !strings.Contains(before.Why, "for soil at 2 in warmed to 55 F") {
		t.Errorf("the day before: %s %s", before.Status, before.Why)
	}
	inside := stepOf(t, lay(t, p, yard(), Occasion{Today: closed.AddDate(0, 0, -1), Soil: st}), "pre")
	if inside.Status != Ready {
		t.Errorf("the last day: %s %s", inside.Status, inside.Why)
	}
	after := stepOf(t, lay(t, p, yard(), Occasion{Today: closed, Soil: st}), "pre")
	if after.Status != Skipped || !strings.Contains(after.Why, "its time ended on "+isoDay(closed)) {
		t.Errorf("the day it closes: %s %s", after.Status, after.Why)
	}
}

// Degree days open a window: days about 75/45 F and base 50 F give 10 a
// day (mean of highest and lowest less the base; Michigan State University and
// Virginia Tech turf notes).
func TestDegreeDays(t *testing.T) {
	var log strings.Builder
	log.WriteString("time,soil_2in_f,air_max_f,air_min_f\n")
	for n := range 31 {
		fmt.Fprintf(&log, "2026-03-%02d,%d,%d,%d\n", n+1, 50+n%3, 74+n%3, 46-n%3)
	}
	p := read(t, head+"  - {id: a, does: spread, when: {degree_days: {base: 50 F, from: 03-01, at_least: 150, closes: 200}}}\n")
	for _, tt := range []struct {
		on     string
		status Status
		why    string
	}{
		{"2026-03-14", Waiting, "140 on 2026-03-14"},
		{"2026-03-15", Ready, "until "},
		{"2026-03-20", Skipped, "its time ended on 2026-03-20"},
	} {
		s := stepOf(t, lay(t, p, yard(), Occasion{Today: day(t, tt.on), Soil: station(t, []byte(log.String()))}), "a")
		if s.Status != tt.status || !strings.Contains(s.Why, tt.why) {
			t.Errorf("%s: %s %q, want %s %q", tt.on, s.Status, s.Why, tt.status, tt.why)
		}
	}
}
