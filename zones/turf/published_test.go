package turf

import (
	"encoding/json"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// published reads a file of published check values that lies beside the
// project, found by walking up from here.
func published(t *testing.T, name string, into any) {
	t.Helper()
	for dir := ".."; len(dir) < 40; dir = filepath.Join("..", dir) {
		text, err := os.ReadFile(filepath.Join(dir, "shared", "checks", name))
		if err != nil {
			continue
		}
		if err := json.Unmarshal(text, into); err != nil {
			t.Fatal(err)
		}
		return
	}
	t.Skipf("no shared/checks/%s beside the project", name)
}

// checkHolds asks that one of the figures is a published range, in the unit
// that factor turns to SI, to within rounding of floating point.
func checkHolds(t *testing.T, what string, figures Figures, least, most, factor float64) {
	t.Helper()
	for _, f := range figures {
		if math.Abs(f.Least/factor-least) < 1e-9*most && math.Abs(f.Most/factor-most) < 1e-9*most {
			return
		}
	}
	t.Errorf("%s: %g-%g is not among %v", what, least, most, figures)
}

// named finds the grasses that a published list means.
func named(t *testing.T, name string) []Species {
	t.Helper()
	groups := map[string][]string{
		"cool_season":          {"Kentucky bluegrass", "tall fescue", "perennial ryegrass"},
		"warm_season":          {"bermudagrass", "St. Augustinegrass"},
		"zoysia_and_centipede": {"zoysiagrass", "centipedegrass"},
		"fescues":              {"tall fescue", "fine fescue"},
		"fescues_ryegrass":     {"tall fescue", "fine fescue", "perennial ryegrass"},
		"zoysia_wide":          {"zoysiagrass"},
		"zoysia_thin":          {"zoysiagrass"},
	}
	names, group := groups[name]
	if !group {
		names = []string{strings.ReplaceAll(name, "_", " ")}
	}
	var found []Species
	for _, n := range names {
		s, ok := Default().Find(n)
		if !ok {
			t.Errorf("%q is not in the table", n)
		}
		found = append(found, s)
	}
	return found
}

type limits struct {
	AnnualN []struct {
		Source string
		Max    map[string]float64
		Range  map[string][2]float64
	} `json:"annual_N_lb_per_1000ft2"`
	Single []struct {
		Where    string
		MaxN     float64 `json:"max_N"`
		MaxTotal float64 `json:"max_total_N"`
	} `json:"single_application"`
	Mowing []struct {
		Source  string
		Heights map[string][2]float64
	} `json:"mowing_in"`
	Shade struct {
		Georgia struct {
			Needs map[string]string
			Any   float64 `json:"minimum_any_grass_h"`
			Vigor float64 `json:"vigorous_h"`
		}
		PennState struct {
			FineFescue float64 `json:"fine_fescue_min_direct_h"`
		} `json:"penn_state"`
		Australia struct {
			Couch   [2]float64 `json:"couch_h"`
			Zoysia  [2]float64 `json:"zoysia_h"`
			Buffalo [2]float64 `json:"soft_leaf_buffalo_h"`
		}
	}
}

// Nitrogen: University of Maryland Extension 2023; Virginia DCR; University of
// Illinois 1995; Landschoot, Penn State. At one time: Illinois 1995; Maryland
// and New Jersey laws; a Long Island recommendation.
func TestPublishedNitrogen(t *testing.T) {
	var l limits
	published(t, "turf_limits.json", &l)
	for _, list := range l.AnnualN {
		for name, most := range list.Max {
			for _, s := range named(t, name) {
				checkHolds(t, s.Name+", "+list.Source, s.YearN, 0, most, poundPer1000KG)
			}
		}
		for name, r := range list.Range {
			for _, s := range named(t, name) {
				checkHolds(t, s.Name+", "+list.Source, s.YearN, r[0], r[1], poundPer1000KG)
			}
		}
	}
	for _, rule := range l.Single {
		for _, s := range Default().Species() {
			checkHolds(t, s.Name+", "+rule.Where, s.OnceN, 0, rule.MaxN+rule.MaxTotal, poundPer1000KG)
		}
	}
}

// Heights of cut: K-State 2014; Sorochan, University of Tennessee 2014; a trade
// association's list; a Florida lawn comparison table.
func TestPublishedMowing(t *testing.T) {
	var l limits
	published(t, "turf_limits.json", &l)
	count := 0
	for _, list := range l.Mowing {
		for name, r := range list.Heights {
			for _, s := range named(t, name) {
				count++
				checkHolds(t, s.Name+", "+list.Source, s.Mowing, r[0], r[1], 0.0254)
			}
		}
	}
	if count < 24 {
		t.Errorf("only %d heights", count)
	}
}

// Hours of sun: Lawns - Light Needed, a Georgia horticulture column; Landschoot,
// Penn State 2001; pages of Australian growers.
func TestPublishedSun(t *testing.T) {
	var l limits
	published(t, "turf_limits.json", &l)
	least := map[string][2]float64{"full to very light shade": {6, 8}, "full to light shade": {6, 6}, "full to partial shade": {4, 4}, "light to partial shade": {4, 4}}
	for name, words := range l.Shade.Georgia.Needs {
		r, known := least[words]
		if !known {
			t.Errorf("%s: %q is not understood", name, words)
		}
		for _, s := range named(t, name) {
			checkHolds(t, s.Name+", Georgia", s.LeastSun, r[0], r[1], 1)
		}
	}
	find := func(name string) Species { return named(t, name)[0] }
	checkHolds(t, "bluegrass, any grass", find("bluegrass").LeastSun, l.Shade.Georgia.Any, l.Shade.Georgia.Any, 1)
	checkHolds(t, "bluegrass, vigour", find("bluegrass").Sun, l.Shade.Georgia.Vigor, l.Shade.Georgia.Vigor, 1)
	checkHolds(t, "fine fescue, Penn State", find("fine fescue").LeastSun, l.Shade.PennState.FineFescue, l.Shade.PennState.FineFescue, 1)
	for name, r := range map[string][2]float64{"couch": l.Shade.Australia.Couch} {
		checkHolds(t, name+", growers", find(name).Sun, r[0], r[1], 1)
	}
	for name, r := range map[string][2]float64{"zoysia": l.Shade.Australia.Zoysia, "soft-leaf buffalo": l.Shade.Australia.Buffalo} {
		checkHolds(t, name+", growers", find(name).LeastSun, r[0], r[1], 1)
	}
}

// Seeding rates and seed counts: K-State 2019; Cornell, Safe Sports Fields;
// Colorado State University Extension 2024; University of Illinois 1995; a UK
// gardening reference; pages that are not extension's.
func TestPublishedSeeding(t *testing.T) {
	var rates struct {
		Seeds map[string]any `json:"seeds_per_lb"`
		Rows  []struct {
			Species, Unit, Source string
			New, Overseed         *[2]float64
			NewMetric             *[2]float64 `json:"new_g_per_m2"`
		}
	}
	published(t, "seeding.json", &rates)
	// Mixtures, and a grass that is no lawn grass, belong to no species.
	none := map[string]bool{
		"Kentucky bluegrass + perennial ryegrass 80-90/10-20": true, "annual ryegrass overseed of bermuda": true,
		"perennial ryegrass mixtures": true, "fescue+bent mixture": true, "general UK lawn mix": true,
	}
	alias := map[string]string{
		"bermudagrass hulled": "bermudagrass", "bermudagrass (seeded)": "bermudagrass", "buffalograss (burs)": "buffalograss", "bents": "bentgrass",
		"perennial ryegrass overseed of bermuda": "perennial ryegrass", "smooth-stalked meadow grass (Kentucky bluegrass)": "smooth-stalked meadow grass",
	}
	factors := map[string]float64{"lb/1000 ft2": 0.45359237 / 92.90304, "g/m2": 0.001}
	for _, row := range rates.Rows {
		if none[row.Species] {
			continue
		}
		name := row.Species
		if a, ok := alias[name]; ok {
			name = a
		}
		s := named(t, name)[0]
		what := fmt.Sprintf("%s, %s", row.Species, row.Source)
		if row.New != nil {
			checkHolds(t, what, s.Seeding, row.New[0], row.New[1], factors[row.Unit])
			checkRounded(t, what, s.Seeding, *row.NewMetric)
		}
		if row.Overseed != nil {
			checkHolds(t, what, s.Overseed, row.Overseed[0], row.Overseed[1], factors[row.Unit])
		}
	}
	for name, count := range rates.Seeds {
		switch count := count.(type) {
		case float64:
			checkHolds(t, name+", seeds", named(t, name)[0].Seeds, count, count, 1/0.45359237)
		case []any:
			checkHolds(t, name+", seeds", named(t, name)[0].Seeds, count[0].(float64), count[1].(float64), 1/0.45359237)
		}
	}
	checkHolds(t, "bluegrass, Cornell", named(t, "bluegrass")[0].Seeds, 1.5e6, 1.5e6, 1/0.45359237)
	checkHolds(t, "ryegrass, Cornell", named(t, "ryegrass")[0].Seeds, 250e3, 250e3, 1/0.45359237)
}

// checkRounded asks that one of the rates is a range in g/m2, printed to 0.01.
func checkRounded(t *testing.T, what string, figures Figures, want [2]float64) {
	t.Helper()
	for _, f := range figures {
		if math.Abs(1000*f.Least-want[0]) <= 0.0051 && math.Abs(1000*f.Most-want[1]) <= 0.0051 {
			return
		}
	}
	t.Errorf("%s: %v g/m2 is not among %v", what, want, figures)
}

// Nitrogen in Florida (Florida-friendly guidelines EP221, by region), that in
// shade (Oklahoma State Extension HLA-6608), and pure live seed (LSU AgCenter),
// in lb/1000 ft2.
func TestPublishedRegionalFigures(t *testing.T) {
	year := func(s Species) Figures { return s.YearN }
	seed := func(s Species) Figures { return s.Seeding }
	shadeYear := func(s Species) Figures { return s.ShadeYearN }
	shadeOnce := func(s Species) Figures { return s.ShadeOnceN }
	for _, tt := range []struct {
		name    string
		figures func(Species) Figures
		ranges  [][2]float64
	}{
		{"bermudagrass", year, [][2]float64{{3, 5}, {4, 6}, {5, 7}}},
		{"zoysiagrass", year, [][2]float64{{3, 5}, {3, 6}, {4, 6}}},
		{"St. Augustinegrass", year, [][2]float64{{2, 4}, {2, 5}, {4, 6}}},
		{"centipedegrass", year, [][2]float64{{1, 2}, {2, 3}, {2, 3}}},
		{"bahiagrass", year, [][2]float64{{2, 3}, {2, 4}, {2, 4}}},
		{"bermudagrass", shadeYear, [][2]float64{{0, 3}}},
		{"zoysiagrass", shadeYear, [][2]float64{{2, 3}}},
		{"tall fescue", shadeYear, [][2]float64{{2, 3}}},
		{"tall fescue", shadeOnce, [][2]float64{{0.5, 0.5}}},
		{"bermudagrass", seed, [][2]float64{{0.75, 1}}},
		{"zoysiagrass", seed, [][2]float64{{1, 2}}},
		{"centipedegrass", seed, [][2]float64{{0.5, 1}}},
		{"bahiagrass", seed, [][2]float64{{5, 10}}},
	} {
		for _, r := range tt.ranges {
			checkHolds(t, tt.name, tt.figures(named(t, tt.name)[0]), r[0], r[1], 0.45359237/92.90304)
		}
	}
}
