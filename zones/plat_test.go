package zones

import (
	"slices"
	"strings"
	"testing"

	"example.org/turfplat/geo"
)

// bowTie crosses itself in the middle of a square.
func bowTie(x, y, side float64) geo.Ring {
	return geo.Ring{xy(x, y), xy(x+side, y+side), xy(x+side, y), xy(x, y+side)}
}

var (
	lot   = covering(Outline, "lot", rectangle(0, 0, 30, 20)) // 600 m2
	house = covering(Building, "house", rectangle(5, 5, 15, 15))
)

// A platCase is a sketch and what is to be measured of it. All areas are
// hand-computed; those not listed are 0.
type platCase struct {
	name    string
	sketch  sketch
	areas   map[Kind]float64
	unknown float64
	traced  float64
	outside float64
	from    Kind
	told    string
}

var coverCases = []platCase{
	{
		name: "outline alone", sketch: sketch{lot},
		areas: map[Kind]float64{Turf: 600}, traced: 600, from: Outline,
		told: `warning: yard.geojson: no lawn is mapped: 6458 ft2 of turf are what is left of the outline (trace the lawn as kind turf, or what else is there, from a picture or on site)`,
	},
	{
		name: "turf alone", sketch: sketch{covering(Turf, "lawn", rectangle(0, 0, 30, 20)), house},
		areas: map[Kind]float64{Turf: 500, Building: 100}, traced: 600, from: Turf,
	},
	{
		name: "turf reaching over the outline", sketch: sketch{lot, house, covering(Turf, "lawn", rectangle(10, -5, 35, 10))},
		areas: map[Kind]float64{Turf: 20*10 - 5*5, Building: 100}, unknown: 600 - 100 - 175, traced: 375, outside: 375 - 200, from: Turf,
	},
	{
		name: "two outlines, apart", sketch: sketch{lot, covering(Outline, "verge", rectangle(0, -3, 30, -1)), house},
		areas: map[Kind]float64{Turf: 560, Building: 100}, traced: 660, from: Outline,
	},
	{
		name: "two outlines that overlap", sketch: sketch{lot, covering(Outline, "annex", rectangle(20, 10, 40, 20)), house},
		areas: map[Kind]float64{Turf: 600, Building: 100}, traced: 700, from: Outline,
	},
	{
		name: "every cover over the next", sketch: sketch{lot,
			covering(Building, "a", rectangle(0, 0, 10, 10)), covering(Pool, "b", rectangle(1, 0, 11, 10)), covering(Water, "c", rectangle(2, 0, 12, 10)),
			covering(Hardscape, "d", rectangle(3, 0, 13, 10)), covering(Bed, "e", rectangle(4, 0, 14, 10)), covering(Synthetic, "f", rectangle(5, 0, 15, 10)),
			covering(Bare, "g", rectangle(6, 0, 16, 10)), covering(Rough, "h", rectangle(7, 0, 17, 10)), covering(Turf, "i", rectangle(8, 0, 18, 10))},
		areas: map[Kind]float64{Building: 100, Pool: 10, Water: 10, Hardscape: 10, Bed: 10, Synthetic: 10, Bare: 10, Rough: 10, Turf: 10}, unknown: 420, traced: 100, from: Turf,
	},
	{
		name: "lawn with a hole", sketch: sketch{polygon(kind(Turf, "lawn"), rectangle(0, 0, 20, 20), rectangle(5, 5, 15, 15))},
		areas: map[Kind]float64{Turf: 300}, traced: 300, from: Turf,
	},
	{
		name: "drive as a line in feet", sketch: sketch{lot, lineString(kind(Hardscape, "drive", `"width_ft":10`), xy(10, 10), xy(10, -10))},
		areas: map[Kind]float64{Turf: 600 - 30.48, Hardscape: 30.48}, traced: 600, from: Outline,
	},
}

// What lies across or beyond an outline, crossing rings or not.
var outlineCases = []platCase{
	{
		name: "house across the line", sketch: sketch{lot, covering(Building, "house", rectangle(25, 5, 35, 15))},
		areas: map[Kind]float64{Turf: 550, Building: 50}, traced: 600, from: Outline,
	},
	{
		name: "bow tie outside", sketch: sketch{lot, house, covering(Building, "barn", bowTie(50, 5, 10))},
		areas: map[Kind]float64{Turf: 500, Building: 100}, traced: 600, from: Outline,
	},
	{
		name: "bow tie in a corner that an outline leaves out",
		sketch: sketch{covering(Outline, "lot", geo.Ring{xy(0, 0), xy(30, 0), xy(30, 10), xy(15, 10), xy(15, 20), xy(0, 20)}),
			covering(Bed, "bed", bowTie(20, 12, 6)), covering(Keepout, "wet", bowTie(20, 12, 6))},
		areas: map[Kind]float64{Turf: 450}, traced: 450, from: Outline,
		told: `warning: yard.geojson: features[2] "wet": keepout lies on no turf (move it onto the lawn that it is meant for)
warning: yard.geojson: no lawn is mapped: 4844 ft2 of turf are what is left of the outline (trace the lawn as kind turf, or what else is there, from a picture or on site)`,
	},
	{
		name: "bow tie from map data", sketch: sketch{lot, polygon(`"building":"yes","id":"osm:way/1"`, bowTie(10, 5, 10))},
		areas: map[Kind]float64{Turf: 550, Building: 50}, traced: 600, from: Outline,
		told: `warning: yard.geojson: features[1] "osm:way/1": ring crosses itself (538 ft2 at stake): read as all that it goes round near [-93.0998099, 44.95009]
warning: yard.geojson: no lawn is mapped: 5920 ft2 of turf are what is left of the outline (trace the lawn as kind turf, or what else is there, from a picture or on site)`,
	},
}

// What is measured with a warning.
var doubtfulCases = []platCase{
	{
		name: "lawn of 3 m2", sketch: sketch{covering(Turf, "lawn", rectangle(0, 0, 2, 1.5))},
		areas: map[Kind]float64{Turf: 3}, traced: 3, from: Turf,
		told: `warning: yard.geojson: features[0] "lawn": 32 ft2 of turf is very little for a lawn near [-93.1, 44.95] (are the coordinates degrees, and is all of it traced?)`,
	},
	{
		name: "turf outside the outline", sketch: sketch{lot, house, covering(Turf, "verge", rectangle(0, -8, 30, -1))},
		areas: map[Kind]float64{Turf: 500, Building: 100}, traced: 600, from: Outline,
		told: `warning: yard.geojson: features[2] "verge": turf lies wholly outside the outline and is set aside near [-93.1, 44.949928] (give the outline of the property that it is on)`,
	},
	{
		name: "turf outside the outline that a map shows", sketch: sketch{lot, house, covering(Bed, "roses", rectangle(0, -8, 30, -1)), polygon(kind(Turf, "verge", `"source":"imported"`), rectangle(0, -8, 30, -1))},
		areas: map[Kind]float64{Turf: 500, Building: 100}, traced: 600, from: Outline,
	},
	{
		name: "bed and tree far off", sketch: sketch{covering(Turf, "lawn", rectangle(0, 0, 30, 20)), covering(Bed, "roses", rectangle(0, 3020, 10, 3030)), pointAt(kind(Tree, "oak"), -1200, 0), pointAt(kind(Tree, "elm"), -900, 0)},
		areas: map[Kind]float64{Turf: 600, Bed: 100}, traced: 600, from: Turf,
		told: `warning: yard.geojson: features[1] "roses": lies 3 km from the property and changes nothing on it near [-93.1, 44.9771751] (look for a vertex far off, or leave it out)
warning: yard.geojson: features[2] "oak": lies 1 km from the property and changes nothing on it near [-93.1152062, 44.949999] (look for a vertex far off, or leave it out)`,
	},
	{
		name: "bed far outside the outline", sketch: sketch{lot, house, covering(Bed, "roses", rectangle(0, 3020, 10, 3030))},
		areas: map[Kind]float64{Turf: 500, Building: 100}, traced: 600, from: Outline,
		told: `warning: yard.geojson: features[2] "roses": lies 3 km from the property and changes nothing on it near [-93.1, 44.9771751] (look for a vertex far off, or leave it out)`,
	},
	{
		name: "covers only", sketch: sketch{covering(Building, "house", rectangle(0, 0, 10, 10))},
		areas: map[Kind]float64{Building: 100}, from: Outline,
		told: "warning: yard.geojson: nothing is turf, only covers are measured (trace the lawn as kind turf, or the property's edge as kind outline)",
	},
	{
		name: "no turf left", sketch: sketch{lot, covering(Hardscape, "yard", rectangle(-1, -1, 31, 21))},
		areas: map[Kind]float64{Hardscape: 600}, traced: 600, from: Outline,
		told: "warning: yard.geojson: no turf is left when all else is taken off",
	},
	{
		name: "lawn traced twice", sketch: sketch{covering(Turf, "a", rectangle(0, 0, 20, 10)), covering(Turf, "b", rectangle(15, 0, 40, 10))},
		areas: map[Kind]float64{Turf: 400}, traced: 400, from: Turf,
		told: `warning: yard.geojson: features[0] "a": 538 ft2 were traced as turf in "b" as well and count once`,
	},
	{
		name:   "bed traced as turf",
		sketch: sketch{polygon(kind(Turf, "lawn", `"name":"Back lawn"`), rectangle(0, 0, 30, 20)), polygon(kind(Turf, "in", `"name":"Rose bed"`), rectangle(5, 5, 9, 9))},
		areas:  map[Kind]float64{Turf: 600}, traced: 600, from: Turf,
		told: `warning: yard.geojson: features[1] "Rose bed": 172 ft2 were traced as turf in "Back lawn" as well and count once ("Rose bed" lies wholly in "Back lawn": if it is a bed, give it kind bed)`,
	},
}

func TestCoversOfPlats(t *testing.T) {
	for _, tt := range slices.Concat(coverCases, outlineCases, doubtfulCases) {
		t.Run(tt.name, tt.check)
	}
}

func (tt platCase) check(t *testing.T) {
	p := tt.sketch.plat(t)
	m := p.Measurement()
	for _, k := range CoverKinds {
		near(t, string(k), m.Covers[k].AreaM2, tt.areas[k], 1e-8, 1e-6)
		if _, there := m.Covers[k]; there != (tt.areas[k] > 0 || k == Turf) {
			t.Errorf("%s listed: %t", k, there)
		}
	}
	near(t, "unknown", m.Unknown.AreaM2, tt.unknown, 1e-8, 1e-6)
	near(t, "traced turf", m.TracedTurf.AreaM2, tt.traced, 1e-8, 0)
	near(t, "traced turf outside", m.TracedTurf.OutsideOutlineM2, tt.outside, 1e-8, 1e-6)
	if m.TracedTurf.From != tt.from {
		t.Errorf("turf from %s, want %s", m.TracedTurf.From, tt.from)
	}
	if got := told(p.Site.Problems); got != tt.told {
		t.Errorf("told\n%s\nwant\n%s", got, tt.told)
	}
	checkIdentities(t, m)
}

func TestRefusedPlats(t *testing.T) {
	for _, tt := range []struct {
		name   string
		sketch sketch
		want   string
	}{
		{"fence only", sketch{lineString(kind(Fence, "f"), xy(0, 0), xy(9, 9))}, "error: yard.geojson: there is neither turf nor an outline to find it in (trace the lawn as kind turf, or the property's edge as kind outline)"},
		{"lawn that crosses itself", sketch{covering(Turf, "lawn", bowTie(0, 0, 10))},
			`error: yard.geojson: features[0] "lawn": ring crosses itself (538 ft2 at stake) near [-93.0999366, 44.950045] (move the vertex, or run again with --repair to take all that the ring goes round)`},
		{"outline that crosses itself", sketch{covering(Outline, "lot", bowTie(0, 0, 10)), house},
			`error: yard.geojson: features[0] "lot": ring crosses itself (538 ft2 at stake) near [-93.0999366, 44.950045] (move the vertex, or run again with --repair to take all that the ring goes round)`},
		{"bed that crosses itself inside the outline", sketch{lot, covering(Bed, "bed", bowTie(5, 5, 4))},
			`error: yard.geojson: features[1] "bed": ring crosses itself (86 ft2 at stake) near [-93.0999113, 44.950063] (move the vertex, or run again with --repair to take all that the ring goes round)`},
		{"two faults, both told", sketch{lot, covering(Bed, "bed", bowTie(5, 5, 4)), covering(Pool, "pool", bowTie(15, 5, 4))},
			`error: yard.geojson: features[1] "bed": ring crosses itself (86 ft2 at stake) near [-93.0999113, 44.950063] (move the vertex, or run again with --repair to take all that the ring goes round)
error: yard.geojson: features[2] "pool": ring crosses itself (86 ft2 at stake) near [-93.0997846, 44.950063] (move the vertex, or run again with --repair to take all that the ring goes round)`},
		{"vertices far off", sketch{covering(Turf, "lawn", geo.Ring{xy(0, 0), xy(30, 0), xy(400_000, 0), xy(0, 400_000)})},
			`error: yard.geojson: features[0] "lawn": 80082 km2 of turf is no lawn near [-93.1, 44.95] (look for a vertex far off)
warning: yard.geojson: the site is 412.3 km across: measured along geodesics (look for a vertex far off, unless it is meant to be so large)`},
		{"3,000 km2 of turf", sketch{covering(Turf, "lawn", rectangle(0, 0, 60_000, 50_000))},
			`error: yard.geojson: features[0] "lawn": 3000 km2 of turf is no lawn near [-93.1, 44.95] (look for a vertex far off)
warning: yard.geojson: the site is 60.2 km across: measured along geodesics (look for a vertex far off, unless it is meant to be so large)`},
	} {
		t.Run(tt.name, func(t *testing.T) {
			s := siteOf(t, tt.sketch.file(home, ""))
			if p := Survey(s); p != nil {
				t.Error("surveyed all the same")
			}
			if got := told(s.Problems); got != tt.want {
				t.Errorf("told\n%s\nwant\n%s", got, tt.want)
			}
		})
	}
}

func TestRepair(t *testing.T) {
	s := NewSite(collectionOf(t, sketch{lot, covering(Bed, "bed", bowTie(5, 5, 4))}.file(home, "")), Reading{Key: builtInKey, Repair: true})
	p := Survey(s)
	if p == nil {
		t.Fatal(told(s.Problems))
	}
	near(t, "bed", p.Measurement().Covers[Bed].AreaM2, 8, 1e-8, 0)
	if got := told(s.Problems); !strings.Contains(got, "warning") || !strings.Contains(got, "86 ft2 at stake): read as all that it goes round") {
		t.Errorf("told %s", got)
	}
}

func TestWideSiteIsMeasuredWithAWarning(t *testing.T) {
	p := sketch{covering(Outline, "estate", rectangle(0, 0, 12_000, 1_000))}.plat(t)
	m := p.Measurement()
	near(t, "turf", m.Covers[Turf].AreaM2, 12e6, 1e-6, 0)
	if got := codes(p.Site.Problems); !slices.Equal(got, []string{"site_large", "turf_residual"}) {
		t.Errorf("told %s", told(p.Site.Problems))
	}
}

// A wide line may lie far from the outline and reach over it all the same.
func TestWideLineBeyondTheOutline(t *testing.T) {
	road := lineString(kind(Hardscape, "road", `"width_m":120`), xy(-50, -55), xy(80, -55))
	m := sketch{lot, road}.measure(t)
	near(t, "hardscape", m.Covers[Hardscape].AreaM2, 30*5, 1e-7, 0)
}

func TestObjectsBeyondTheOutlineAreKept(t *testing.T) {
	p := sketch{lot, covering(Building, "barn", rectangle(50, 5, 60, 15)), covering(Bed, "bed", rectangle(35, 5, 40, 15)),
		lineString(kind(Fence, "fence"), xy(40, 0), xy(50, 0)), pointAt(kind(Tree, "oak"), 45, 0)}.plat(t)
	var beyond []string
	for _, o := range p.Site.Beyond {
		beyond = append(beyond, o.ID)
	}
	if !slices.Equal(beyond, []string{"barn", "bed"}) {
		t.Errorf("beyond: %v", beyond)
	}
	if len(p.Site.Of(Fence)) != 1 || len(p.Site.Of(Tree)) != 1 {
		t.Error("fences and trees outside cast their shade inside, and must stay")
	}
}

func TestDeductionsGoFromTheHighestCoverDown(t *testing.T) {
	m := sketch{lot, house, // 100 m2
		covering(Bed, "small", rectangle(14, 14, 17, 17)),      // 9 less 1 under the house
		covering(Bed, "large", rectangle(10, 10, 20, 20)),      // 100 less 25 under the house and 8 in the small one
		covering(Hardscape, "path", rectangle(20, -5, 22, 25)), // 40 inside
		covering(Rough, "meadow", rectangle(0, 0, 5, 5)),
		covering(Pool, "pool", rectangle(50, 0, 60, 10))}.measure(t)
	want := []Deduction{{"house", Building, 100, ""}, {"path", Hardscape, 40, ""}, {"small", Bed, 8, ""}, {"large", Bed, 67, ""}, {"meadow", Rough, 25, ""}}
	if len(m.Deductions) != len(want) {
		t.Fatalf("deductions %v, want %v", m.Deductions, want)
	}
	for i, w := range want {
		d := m.Deductions[i]
		near(t, w.Feature, d.AreaM2, w.AreaM2, 1e-7, 0)
		if d.Feature != w.Feature || d.Kind != w.Kind {
			t.Errorf("deduction %d is %v, want %v", i, d, w)
		}
	}
}

// Turf that was traced away from the house leaves nothing to deduct there.
func TestDeductionsComeOffTracedTurfOnly(t *testing.T) {
	m := sketch{lot, house, covering(Turf, "lawn", rectangle(10, 0, 30, 20))}.measure(t)
	if len(m.Deductions) != 1 {
		t.Fatalf("deductions %v", m.Deductions)
	}
	near(t, "house", m.Deductions[0].AreaM2, 50, 1e-7, 0)
}

// A point of a bed takes its round of ground: a disc of the area of a circle.
func TestShrub(t *testing.T) {
	m := sketch{lot, pointAt(`"natural":"shrub","id":"s"`, 20, 10)}.measure(t)
	near(t, "bed", m.Covers[Bed].AreaM2, 3.14159265358979*0.36, 1e-6, 0)
}
