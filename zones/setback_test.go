package zones

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.org/turfplat/geo"
)

// Setbacks from water as published, in feet: Maryland lawn fertilizer law,
// summaries 2013-14; N.J.S.A. 58:10A-62 by a news report of 2013; a New Jersey
// municipal model ordinance; a notice of Collier County, Florida. The others
// are from memory.
func TestSetbackRules(t *testing.T) {
	for _, tt := range []struct {
		region, near     string
		setback, reduced float64
	}{
		{"", "water", 10, 0},
		{"", "drain", 10, 0},
		{"", "well", 50, 0},
		{"Maryland", "water", 15, 10},
		{"New Jersey", "water", 25, 10},
		{"New Jersey model ordinance", "water", 25, 10},
		{"Collier County", "water", 10, 0},
		{"New York", "water", 20, 3},
		{"Michigan", "water", 15, 3},
		{"New Hampshire", "water", 25, 0},
		{"Vermont", "water", 25, 0},
		{"Florida", "water", 10, 3},
		{"Maryland", "drain", 10, 0},
		{"Atlantis", "water", 10, 0},
		{"Minnesota", "water", 10, 0}, // has none of its own
	} {
		r := ruleOf(tt.region, tt.near)
		near(t, tt.region+" "+tt.near, r.setback, tt.setback*0.3048, 1e-12, 0)
		near(t, tt.region+" "+tt.near+" reduced", r.reduced, tt.reduced*0.3048, 1e-12, 1e-12)
		if r.source == "" {
			t.Errorf("%s %s has no source", tt.region, tt.near)
		}
	}
	for _, name := range []string{"maryland", " New York ", "FLORIDA", "Minnesota", "mn"} {
		if _, known := FindRegion(name); !known {
			t.Errorf("%q is not known", name)
		}
	}
	if region, known := FindRegion(""); known || region != "" {
		t.Errorf("no region is %q", region)
	}
}

func TestBadSetbackTablesAreNotRead(t *testing.T) {
	const header = "region,near,setback_ft,reduced_ft,reduced_for,dated,source\n"
	for _, row := range []string{"Maryland,sea,10,,,,s", "Maryland,water,far,,,,s", "Maryland,water,10,20,,,s", "Maryland,water,10,,,,", "x,water,10,,,,s"} {
		mustPanic(t, row, func() { mustReadRows("t", header+row, readSetback, columnsOf(header+row)...) })
	}
	for _, row := range []string{"sea,,water,", "water,a,water,", "water,,sea,"} {
		mustPanic(t, row, func() {
			mustReadRows("t", "kind,tags,near,note\n"+row, readShore, columnsOf("kind,tags,near,note\n"+row)...)
		})
	}
	mustPanic(t, "ragged", func() { mustReadRows("t", "a\nb,c", readSetback, columnsOf("a\nb,c")...) })
	mustPanic(t, "ragged", func() { mustReadRows("t", "a\nb,c", readShore, columnsOf("a\nb,c")...) })
}

// A straight shore takes a strip of turf: wider than is asked by no more than
// 1 %.
func TestSetbackZones(t *testing.T) {
	field := covering(Turf, "lawn", rectangle(0, 0, 40, 20)) // 800 m2
	lake := func(more ...string) item {
		return polygon(kind(Water, "lake", more...), rectangle(-20, -10, 0, 30))
	}
	inlet := func(id string, x, y float64) item {
		return pointAt(`"man_made":"manhole","manhole":"drain","id":"`+id+`"`, x, y)
	}
	pond := func(more ...string) item {
		return polygon(kind(Water, "pond", append(more, `"name":"Pond"`)...), rectangle(18, 8, 22, 12))
	}
	for _, tt := range []struct {
		name   string
		sketch sketch
		zones  []string
		told   string // the rules
	}{
		{"water beside the turf", sketch{field, lake(`"setback_m":3`)}, []string{"Turf 739.4", "Water setback 60.6 no application"}, ""},
		{"in feet", sketch{field, lake(`"setback_ft":10`)}, []string{"Turf 738.4", "Water setback 61.6 no application"}, ""},
		{"less than a proposal", sketch{field, lake(`"setback_m":1`)}, []string{"Turf 779.8", "Water setback 20.2 no application"}, ""},
		{"by the proposal", sketch{field, lake()}, []string{"Turf 738.4", "Water setback 61.6 no application"}, "10 ft (3.0 m) of water"},
		{"none wanted", sketch{field, lake(`"setback_m":0`)}, []string{"Turf 800.0"}, ""},
		{"by name", sketch{field, lake(`"setback_m":3`, `"name":"Mirror lake"`)}, []string{"Turf 739.4", "Mirror lake setback 60.6 no application"}, ""},
		{"out of reach", sketch{field, polygon(kind(Water, "w"), rectangle(-20, -10, -3.2, 30))}, []string{"Turf 800.0"}, ""},
		{"beyond the outline", sketch{covering(Outline, "lot", rectangle(0, 0, 40, 20)), polygon(kind(Water, "w", `"setback_m":5`), rectangle(-20, -10, -2, 30))},
			[]string{"Turf 739.0", "Water setback 61.0 no application"}, "no lawn is mapped"},
		{"a pool is no water", sketch{field, covering(Pool, "p", rectangle(18, 8, 22, 12))}, []string{"Turf 784.0"}, ""},
		{"a stream", sketch{field, lineString(`"waterway":"stream","id":"s"`, xy(-5, 10), xy(45, 10))}, []string{"Turf 493.7", "Water setback 246.3 no application"}, "10 ft (3.0 m) of water"},
		{"a ditch", sketch{field, lineString(`"waterway":"ditch","id":"s","width":"2"`, xy(-5, 10), xy(45, 10))}, []string{"Turf 473.7", "Drain setback 246.3 no application"}, "10 ft (3.0 m) of a drain or ditch"},
		{"storm drains together", sketch{field, inlet("a", 10, 10), inlet("b", 14, 10), inlet("c", 30, 10)}, []string{"Turf 717.7", "Drain setback 82.3 no application"}, "10 ft (3.0 m) of a drain or ditch"},
		{"a well", sketch{field, pointAt(`"man_made":"water_well","id":"w"`, 60, 10)}, []string{"Turf 800.0"}, ""},
		{"a hazard with a setback", sketch{field, pointAt(kind(Hazard, "h", `"setback_m":2`, `"name":"Hive"`), 20, 10)}, []string{"Turf 787.2", "Hive setback 12.8 no application"}, ""},
		{"a hazard without", sketch{field, pointAt(kind(Hazard, "h"), 20, 10)}, []string{"Turf 800.0"}, ""},
		{"before traced zones", sketch{field, lake(`"setback_m":3`), polygon(kind(ZoneKind, "west", `"name":"West"`), rectangle(0, 0, 20, 20))},
			[]string{"Rest 400.0", "West 339.4", "Water setback 60.6 no application"}, ""},
		{"after keepouts", sketch{field, lake(`"setback_m":3`), covering(Keepout, "k", rectangle(0, 0, 10, 10))},
			[]string{"Rest 669.7", "k 100.0 no application", "Water setback 30.3 no application"}, ""},
		{"wholly in a keepout", sketch{field, pond(`"setback_m":2`), covering(Keepout, "k", rectangle(10, 2, 30, 18))},
			[]string{"Rest 480.0", "k 304.0 no application"}, ""},
		{"a rim along a keepout", sketch{field, lake(`"setback_m":3`), covering(Keepout, "k", rectangle(0, -1, 2.8, 21))},
			[]string{"Rest 739.4", "k 60.6 no application"}, ""},
		{"not cut by cutlines", sketch{field, lake(`"setback_m":3`), cutline("c", xy(-1, 10), xy(41, 10))},
			[]string{"Turf, north 369.7", "Turf, south 369.7", "Water setback 60.6 no application"}, ""},
		{"two of a name", sketch{field, polygon(kind(Water, "b", `"name":"Brook"`, `"setback_m":1`), rectangle(-1, 0, 0, 20)), polygon(kind(Water, "a", `"name":"Brook"`, `"setback_m":1`), rectangle(40, 0, 41, 20))},
			[]string{"Turf 759.6", "Brook setback 40.4 no application"}, ""},
	} {
		t.Run(tt.name, func(t *testing.T) {
			p := tt.sketch.plat(t)
			m := p.Measurement()
			if got := zonesInBrief(m); !slices.Equal(got, tt.zones) {
				t.Errorf("zones %q, want %q", got, tt.zones)
			}
			if got := told(p.Site.Problems); got != "" != (tt.told != "") || !strings.Contains(got, tt.told) {
				t.Errorf("told %q, want %q", got, tt.told)
			}
			checkIdentities(t, m)
			checkDisjoint(t, p)
			checkReadsBack(t, p, m)
		})
	}
}

func zonesInBrief(m Measurement) []string {
	var list []string
	for _, z := range m.Zones {
		line := fmt.Sprintf("%s %.1f", z.Name, z.AreaM2)
		if !z.Apply {
			line += " no application"
		}
		list = append(list, line)
	}
	return list
}

func TestSetbackIDs(t *testing.T) {
	field := covering(Turf, "lawn", rectangle(0, 0, 40, 20))
	at := func(props string, x float64) item { return polygon(props, rectangle(x, 8, x+2, 10)) }
	m := sketch{field,
		at(kind(Water, "pond", `"name":"Pond"`), 5), at(kind(Water, "x"), 14), at(`"natural":"water","name":"Old pit"`, 23),
		at(kind(Water, "b2", `"name":"Brook"`), 30), at(kind(Water, "b1", `"name":"Brook"`), 34)}.measure(t)
	var ids []string
	for _, z := range m.Zones {
		ids = append(ids, z.ID)
	}
	slices.Sort(ids)
	if want := []string{"zone/b1-setback", "zone/old-pit-setback", "zone/pond-setback", "zone/turf", "zone/water-setback"}; !slices.Equal(ids, want) {
		t.Errorf("ids %q, want %q", ids, want)
	}
}

// drawShore draws a property with water, drains and wells and no cutlines.
func drawShore(t *rapid.T) sketch {
	d := &drawing{T: t, coarse: rapid.Bool().Draw(t, "coarse")}
	d.frame()
	d.house()
	setback := func() string { return fmt.Sprintf(`"setback_m":%g`, d.size(0.5, 8)) }
	d.several("pond", 3, func(id string) { d.add(polygon(kind(Water, id, setback()), d.blob(25, 1, 8))) })
	d.several("brook", 1, func(id string) { d.add(lineString(kind(Water, id, `"width_m":1`, setback()), d.way(3)...)) })
	d.several("drain", 2, func(id string) {
		at := d.at(20)
		d.add(pointAt(`"man_made":"manhole","manhole":"drain","id":"`+id+`"`, at.X, at.Y))
	})
	d.several("part", 2, func(id string) { d.add(covering(ZoneKind, id, d.blob(15, 3, 15))) })
	d.several("wet", 1, func(id string) { d.add(covering(Keepout, id, d.blob(15, 2, 6))) })
	return d.sketch
}

// Setbacks lie in the turf, the zones tile it exactly, and nothing is applied
// closer to water than is asked.
func TestSetbackLaws(t *testing.T) {
	check(t, 100, func(t *rapid.T) {
		s := drawShore(t)
		p := s.plat(t)
		m := p.Measurement()
		checkIdentities(t, m)
		checkDisjoint(t, p)
		checkReadsBack(t, p, m)
		turf := p.Ground.Cover(Turf)
		for _, z := range p.Zones {
			out, err := geo.Difference(z.Region, turf)
			if err != nil {
				t.Fatal(err)
			}
			near(t, "zone outside the turf", float64(p.Site.Frame.Area(out)), 0, 0, lawAbs)
		}
		checkNothingCloser(t, p)
	})
}

// checkNothingCloser looks for applied turf round places at the edge of water.
func checkNothingCloser(t *rapid.T, p *Plat) {
	for _, o := range slices.Concat(p.Site.Objects, p.Site.Beyond) {
		_, distance, _ := p.Site.setbackOf(o)
		if distance == 0 {
			continue
		}
		edge := slices.Clone(o.Points)
		for _, ring := range ringsOf(o.Ground) {
			edge = append(edge, ring...)
		}
		for range 20 {
			at := rapid.SampledFrom(edge).Draw(t, "place at the edge")
			sin, cos := math.Sincos(rapid.Float64Range(0, 2*math.Pi).Draw(t, "bearing"))
			probe := geo.XY{X: at.X + distance*0.999*sin, Y: at.Y + distance*0.999*cos}
			for _, z := range p.Zones {
				if z.Apply && z.Region.Contains(probe) {
					t.Errorf("%v in zone %q is closer than %g m to %s", probe, z.Name, distance, o.ID)
				}
			}
		}
	}
}

// No edge moves by a micrometre: what a setback is laid round is one and the same
// line or ring, however it was traced.
func TestSetbacksDependOnTheGroundAlone(t *testing.T) {
	check(t, 50, func(t *rapid.T) {
		s := drawShore(t)
		want, got := s.measure(t), s.retraced(t).measure(t)
		checkZones(t, got.Zones, want.Zones, 1e-9, func(ZoneMeasure) float64 { return 0 })
	})
}

// The property by the harbour keeps its setback, whatever the region, and the
// wider the rule the more of it.
func TestRealShore(t *testing.T) {
	dir := realData(t, "sites")
	file, err := os.ReadFile(filepath.Join(dir, "sydney.geojson"))
	if err != nil {
		t.Fatal(err)
	}
	last := 0.0
	for _, region := range []string{"", "Maryland", "New York", "Vermont"} {
		p := Survey(NewSite(collectionOf(t, file), Reading{Key: builtInKey, Region: region}))
		if p == nil {
			t.Fatal("refused")
		}
		m := p.Measurement()
		checkIdentities(t, m)
		i := slices.IndexFunc(m.Zones, func(z ZoneMeasure) bool { return z.Name == "Sydney Harbour setback" })
		if i < 0 || m.Zones[i].Apply || m.Zones[i].AreaM2 <= last {
			t.Fatalf("%q: zones\n%s", region, listed(m.Zones))
		}
		last = m.Zones[i].AreaM2
	}
}
