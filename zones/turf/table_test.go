package turf

import (
	"encoding/csv"
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestFind(t *testing.T) {
	for _, tt := range []struct{ name, want string }{
		{"Kentucky bluegrass", "Kentucky bluegrass"},
		{"kentucky BLUEGRASS", "Kentucky bluegrass"},
		{" Kentucky-bluegrass ", "Kentucky bluegrass"},
		{"tall fescues", "tall fescue"},
		{"turf type tall fescue", "tall fescue"},
		{"red fescue", "fine fescue"},
		{"Festuca rubra", "fine fescue"},
		{"bermuda", "bermudagrass"},
		{"Bermuda grass", "bermudagrass"},
		{"bermudagrasses", "bermudagrass"},
		{"couch", "bermudagrass"},
		{"zoysia", "zoysiagrass"},
		{"Saint Augustine grass", "St. Augustinegrass"},
		{"St Augustine", "St. Augustinegrass"},
		{"soft leaf buffalo", "St. Augustinegrass"},
		{"buffalo grass", "buffalograss"},
		{"kikuyu grass", "kikuyu"},
		{"paspalum", "seashore paspalum"},
		{"Paspalum notatum", "bahiagrass"},
		{"bent", "creeping bentgrass"},
		{"smooth-stalked meadow-grass", "Kentucky bluegrass"},
		{"", ""},
		{"grass", ""},
		{"clover", ""},
	} {
		s, ok := Default().Find(tt.name)
		if s.Name != tt.want || ok != (tt.want != "") {
			t.Errorf("%q: %q, %t; want %q", tt.name, s.Name, ok, tt.want)
		}
	}
}

func TestNearest(t *testing.T) {
	for _, tt := range []struct{ name, want string }{
		{"tall fesque", "tall fescue"},
		{"kentuky blue grass", "Kentucky bluegrass"},
		{"zoyzia", "zoysiagrass"},
		{"St. Agustine", "St. Augustinegrass"},
		{"centepede", "centipedegrass"},
		{"perenial rygrass", "perennial ryegrass"},
		{"clover", ""},
		{"", ""},
		{"ash", ""},
	} {
		if got := Default().Nearest(tt.name); got != tt.want {
			t.Errorf("%q: %q, want %q", tt.name, got, tt.want)
		}
	}
}

// Every grass is whole: a season, a rank, hours, and a full citation for each
// of its figures.
func TestBuiltInTableIsWhole(t *testing.T) {
	all := Default().Species()
	if len(all) != 13 {
		t.Errorf("%d species", len(all))
	}
	cited := make(map[string]bool)
	for _, s := range all {
		if s.ShadeRank < 1 || len(s.Sun) == 0 || len(s.LeastSun) == 0 || len(s.Mowing) == 0 || len(s.OnceN) == 0 {
			t.Errorf("%+v", s)
		}
		if wants, least := s.Sun[0], s.LeastSun[0]; wants.Least < least.Least {
			t.Errorf("%s wants %g hours and bears no less than %g", s.Name, wants.Least, least.Least)
		}
		for _, c := range columns {
			for _, f := range *c.figures(&s) {
				cited[f.Source] = true
				if f.Source == "" || Citation(f.Source) == f.Source || !(0 <= f.Least && f.Least <= f.Most) {
					t.Errorf("%s: %s %+v cites nothing that sources.csv has", s.Name, c.name, f)
				}
			}
		}
	}
	records, err := csv.NewReader(strings.NewReader(sourcesCSV)).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	for _, record := range records[1:] {
		if !cited[record[0]] {
			t.Errorf("sources.csv: no figure cites %q", record[0])
		}
	}
}

// The order of grasses by the shade they bear is published for both seasons
// (general pages for the cool ones; Lawns - Light Needed, Georgia, and NC State
// Extension, Selecting and Managing Lawn Grasses for Shade, for the warm ones).
func TestShadeRanks(t *testing.T) {
	rank := func(name string) int { return named(t, name)[0].ShadeRank }
	for _, order := range [][]string{
		{"fine fescue", "tall fescue", "Kentucky bluegrass"},
		{"St. Augustinegrass", "zoysiagrass", "centipedegrass", "bermudagrass"},
	} {
		for i, name := range order[1:] {
			if rank(name) <= rank(order[i]) {
				t.Errorf("%s is ranked %d, %s %d", order[i], rank(order[i]), name, rank(name))
			}
		}
	}
	if rank("bluegrass") != rank("ryegrass") || rank("centipede") != rank("bahia") {
		t.Error("grasses that are ranked equal are not")
	}
}

func TestSuitsAndBetter(t *testing.T) {
	for _, tt := range []struct {
		hours  float64
		season Season
		grass  string
		fit    Fit
		better []string
	}{
		{9, Cool, "Kentucky bluegrass", Thrives, []string{"fine fescue", "tall fescue", "Kentucky bluegrass", "perennial ryegrass", "creeping bentgrass"}},
		{5, Cool, "Kentucky bluegrass", Bears, []string{"fine fescue"}},
		{3.5, Cool, "tall fescue", Fails, []string{"fine fescue"}},
		{3.5, Cool, "fine fescue", Bears, []string{"fine fescue"}},
		{2, Cool, "fine fescue", Fails, nil},
		{8, Warm, "bermuda", Thrives, nil},
		{7.9, Warm, "bermuda", Bears, nil},
		{5.9, Warm, "bermuda", Fails, []string{"St. Augustinegrass", "zoysiagrass"}},
		{6, Warm, "zoysia", Thrives, []string{"St. Augustinegrass", "zoysiagrass"}},
		{3.9, Warm, "St. Augustine", Fails, nil},
		{4.5, "", "St. Augustine", Bears, []string{"fine fescue"}},
	} {
		s := named(t, tt.grass)[0]
		if got := s.Suits(tt.hours); got != tt.fit {
			t.Errorf("%s %s with %g h, want %s", s.Name, got, tt.hours, tt.fit)
		}
		if tt.hours >= 7 && tt.season == Warm {
			continue // the list is long
		}
		var better []string
		for _, b := range Default().Better(tt.hours, tt.season) {
			better = append(better, b.Name)
		}
		if !slices.Equal(better, tt.better) {
			t.Errorf("better with %g h: %q, want %q", tt.hours, better, tt.better)
		}
	}
	if got := (Species{}).Suits(5); got != Unknown {
		t.Errorf("a grass without hours %s", got)
	}
}

// With more sun no grass fares worse, and what is better suits.
func TestSunLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		less := rapid.Float64Range(0, 14).Draw(t, "hours")
		more := less + rapid.Float64Range(0, 5).Draw(t, "more")
		for _, s := range Default().Species() {
			if s.Suits(more) < s.Suits(less) {
				t.Errorf("%s %s with %g h and %s with %g h", s.Name, s.Suits(less), less, s.Suits(more), more)
			}
		}
		for _, season := range []Season{Cool, Warm} {
			for _, s := range Default().Better(less, season) {
				if s.Suits(less) < Bears || s.Season != season {
					t.Errorf("%s %s with %g h", s.Name, s.Suits(less), less)
				}
			}
		}
	})
}

func TestUsed(t *testing.T) {
	f := Figures{{2, 3, "a"}, {1, 3, "b"}, {10, 12, "c"}}
	if used, ok := f.Used(); used != f[0] || !ok {
		t.Errorf("used %v", used)
	}
	if _, ok := Figures(nil).Used(); ok {
		t.Error("there is something of nothing")
	}
}

func TestExactUnits(t *testing.T) {
	// NIST Handbook 44, appendix C: 1 lb = 0.45359237 kg, 1 ft = 0.3048 m.
	for _, tt := range []struct{ got, want float64 }{
		{poundPer1000KG * 1000, 4.88242763638305}, // g/m2
		{inchM, 0.0254},
	} {
		if math.Abs(tt.got-tt.want) > 1e-12 {
			t.Errorf("%.15g, want %.15g", tt.got, tt.want)
		}
	}
}

// The limits of a grass are the hours at which its fit changes, and no others.
func TestSunNeed(t *testing.T) {
	hours := func(h float64) *float64 { return &h }
	for _, tt := range []struct {
		name string
		need SunNeed
		want []float64
	}{
		{"both", SunNeed{Enough: hours(6), Least: hours(4)}, []float64{6, 4}},
		{"one figure", SunNeed{Enough: hours(6)}, []float64{6}},
		{"the least alone", SunNeed{Least: hours(4)}, []float64{4}},
		{"both the same", SunNeed{Enough: hours(6), Least: hours(6)}, []float64{6}},
		{"lives without sun", SunNeed{Enough: hours(3), Least: hours(0)}, []float64{3}},
		{"none", SunNeed{}, nil},
	} {
		got := tt.need.Limits()
		if !slices.Equal(got, tt.want) {
			t.Errorf("%s: limits %v, want %v", tt.name, got, tt.want)
		}
		for i, limit := range got {
			below, above := tt.need.Fit(limit-1e-9), tt.need.Fit(limit)
			if below >= above || i > 0 && above != tt.need.Fit(got[i-1]-1e-9) {
				t.Errorf("%s: %s below %g h, %s from there", tt.name, below, limit, above)
			}
		}
	}
	for _, s := range Default().Species() {
		if need, known := s.SunNeed(); !known || need.Grass != s.Name || need.EnoughSource == "" || need.LeastSource == "" || len(need.Limits()) == 0 {
			t.Errorf("%s needs %+v", s.Name, need)
		}
	}
}
