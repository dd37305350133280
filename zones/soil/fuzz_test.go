package soil

import (
	"math"
	"slices"
	"strings"
	"testing"

	"example.org/turfplat/geo/ingest"
)

// FuzzReadLog: whatever the bytes, a log is refused with a reason, or its days
// are in order, of this world, and give windows; and the same bytes give the
// same problems.
func FuzzReadLog(f *testing.F) {
	for _, seed := range []string{
		"time,soil_2in_f\n2026-04-01,50\n2026-04-02,59\n",
		"Logger\n\ntime;station;soil_5cm_c;air_max_f\n2026-04-01T00:30Z;a;10,5;70\n2026-04-01T00:00Z;a;10,5;\n2026-04-01T00:00Z;b;-9999;x\n",
		"\ufefftime\tsoil_5cm_min_c\r\n20260401\t\"1\"\"0\"\r\n",
		"date,clock,t\n2026-04-01,0130,1e308\n2026-04-01,24.0,-1e308\n2199-12-31,2400,12\n1850-01-01,0,12\n",
		"time,soil_2in_f,soil_2in_c\n", "time,soil_2in_f\n2026-04-01,\xff", "time,soil_2in_f\n\"", ",,,\n;;;\n\t\t\t\n", "time,soil_0in_f\n2026-04-01,1\n",
		"time,soil_5cm_c\n" + strings.Repeat("2026-04-01,7\n2026-01-01,7\n2027-04-01,7\n", 10),
	} {
		f.Add(seed, "")
	}
	f.Add("date,clock,t\n2026-04-01,1:30,7\n", "time=date+clock,temp=t,unit=c,depth=5cm,missing=7")
	f.Add("y,d,h,t\n2026,1,0.5,7\n", "time=y+d+h,temp=t,unit=f,depth=2in,statistic=min,air=t")
	f.Fuzz(func(t *testing.T, text, columns string) {
		var o Options
		if columns != "" {
			c, err := ParseColumns(columns)
			if err != nil {
				if strings.ContainsAny(err.Error(), "\n\r") {
					t.Fatalf("%q is refused with %q", columns, err)
				}
				return
			}
			o.Columns = c
		}
		o.Longitude = -93.1
		l, problems := ReadLog(strings.NewReader(text), "x.csv", o)
		if _, again := ReadLog(strings.NewReader(text), "x.csv", o); !slices.Equal(told(problems), told(again)) {
			t.Fatalf("%q, then %q", told(problems), told(again))
		}
		refused := slices.ContainsFunc(problems, func(p ingest.Problem) bool { return p.Severity == ingest.Refusal })
		if refused != (l == nil) {
			t.Fatalf("there is a log: %v, problems %v", l != nil, problems)
		}
		for _, p := range problems {
			if s := p.String() + p.Hint; strings.ContainsAny(s, "\n\r") || len(s) > 1000 {
				t.Fatalf("problem %q", s)
			}
		}
		if l != nil {
			checkLog(t, l)
		}
	})
}

func checkLog(t *testing.T, l *Log) {
	for _, name := range l.Stations() {
		station, err := l.Station(name)
		if err != nil {
			t.Fatal(err)
		}
		for _, stat := range []Statistic{Mean, Lowest, Highest} {
			var all []Series
			for _, depth := range station.Depths() {
				if s, err := station.Soil(depth, stat); err == nil {
					all = append(all, s)
				}
			}
			if s, err := station.Air(stat); err == nil {
				all = append(all, s)
			}
			for _, s := range all {
				checkSeries(t, s, l)
			}
		}
	}
}

func checkSeries(t *testing.T, s Series, l *Log) {
	for i, d := range s.Days {
		if math.IsNaN(float64(d.Value)) || d.Value < possibleLow-hair || d.Value > possibleHigh+hair || d.Readings < 1 {
			t.Fatalf("a day is %+v", d)
		}
		if i > 0 && !s.Days[i-1].Day.Before(d.Day) || d.Day.After(lastOf(l)) {
			t.Fatalf("days are out of order: %v", s.Days)
		}
	}
	r := Rule{Opens: 10, HasClose: true, Closes: 15, TrailDays: 5}
	if w := r.Window(s, date(2026, 1, 1), lastOf(l)); w.State == Unknown && w.Doubt == "" {
		t.Fatalf("nothing is known, and no reason is given: %+v", w)
	}
}
