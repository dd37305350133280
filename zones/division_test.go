package zones

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"example.org/turfplat/geo"
)

// zonesOf writes zones as people would list them.
func zonesOf(m Measurement) []string { return strings.Split(listed(m.Zones), "\n") }

func listed(zones []ZoneMeasure) string {
	var list []string
	for _, z := range zones {
		line := fmt.Sprintf("%s %s %q %.3f", z.Letter, z.ID, z.Name, z.AreaM2)
		if !z.Apply {
			line += " no application"
		}
		list = append(list, line)
	}
	return strings.Join(list, "\n")
}

func cutline(id string, l ...geo.XY) item { return lineString(kind(Cutline, id), l...) }

var lawn = covering(Turf, "lawn", rectangle(0, 0, 20, 10)) // 200 m2

func TestDivision(t *testing.T) {
	zone := func(id string, ring geo.Ring, more ...string) item { return polygon(kind(ZoneKind, id, more...), ring) }
	named := func(name string, ring geo.Ring) item {
		return polygon(fmt.Sprintf(`"kind":"zone","name":%q`, name), ring)
	}
	// A house in the middle of a lot with a drive to the south and a fence
	// strip to the north leaves a west lawn and an east lawn.
	split := covering(Hardscape, "drive", rectangle(9, -1, 11, 11))
	for _, tt := range []struct {
		name   string
		sketch sketch
		zones  []string
		told   string
	}{
		{"whole", sketch{lawn}, []string{`A zone/turf "Turf" 200.000`}, ""},
		{"traced", sketch{lawn, zone("front", rectangle(-1, -1, 5, 11), `"name":"Front"`)},
			[]string{`A zone/rest "Rest" 150.000`, `B zone/front "Front" 50.000`}, ""},
		{"traced without a name or an id", sketch{lawn, polygon(`"kind":"zone"`, rectangle(-1, -1, 5, 11)), polygon(`"kind":"zone"`, rectangle(15, -1, 22, 11)), polygon(`"kind":"keepout"`, rectangle(8, 1, 9, 2))},
			[]string{`A zone/rest "Rest" 99.000`, `B zone/zone "Zone" 50.000`, `C zone/zone-2 "Zone" 50.000`, `D zone/keepout "Keepout" 1.000 no application`}, ""},
		{"named without an id", sketch{lawn, named(`Bank, "east"`, rectangle(15, -1, 22, 11)), named("Böschung", rectangle(-1, -1, 4, 11)), named("#", rectangle(6, -1, 7, 11))},
			[]string{`A zone/rest "Rest" 100.000`, `B zone/bank-east "Bank, \"east\"" 50.000`, `C zone/böschung "Böschung" 40.000`, `D zone/zone "#" 10.000`}, ""},
		{"a name that is the id of another", sketch{lawn, named("Front", rectangle(-1, -1, 4, 11)), zone("front", rectangle(15, -1, 22, 11)), named("Rest", rectangle(6, -1, 7, 11))},
			[]string{`A zone/rest-2 "Rest" 100.000`, `B zone/front "front" 50.000`, `C zone/front-2 "Front" 40.000`, `D zone/rest "Rest" 10.000`}, ""},
		{"all of it traced", sketch{lawn, zone("w", rectangle(-1, -1, 8, 11)), zone("e", rectangle(8, -1, 21, 11))},
			[]string{`A zone/e "e" 120.000`, `B zone/w "w" 80.000`}, ""},
		{"same id twice", sketch{lawn, zone("z", rectangle(-1, -1, 8, 11)), zone("z", rectangle(8, -1, 21, 11)), cutline("c", xy(15, -1), xy(15, 11))},
			[]string{`A zone/z "z" 80.000`, `B zone/z-2-west "z, west" 70.000`, `C zone/z-2-east "z, east" 50.000`},
			`warning: yard.geojson: features[2] "z": has the id of an earlier feature, features[1] "z" (give each an id of its own)`},
		{"nested", sketch{lawn, zone("all", rectangle(-1, -1, 21, 11)), zone("play", rectangle(5, 5, 8, 8))},
			[]string{`A zone/all "all" 191.000`, `B zone/play "play" 9.000`}, ""},
		{"overlapping", sketch{lawn, zone("a", rectangle(-1, -1, 8, 11)), zone("b", rectangle(6, -1, 21, 11), `"name":"Back"`)},
			[]string{`A zone/b "Back" 120.000`, `B zone/a "a" 80.000`},
			`warning: yard.geojson: features[2] "Back": 215 ft2 also lie in zone "a", which is the smaller and keeps them`},
		{"zone beside the turf", sketch{lawn, zone("a", rectangle(30, 0, 40, 10))},
			[]string{`A zone/turf "Turf" 200.000`},
			`warning: yard.geojson: features[1] "a": zone lies on no turf (move it onto the lawn that it is meant for)`},
		{"zone of which keepouts and smaller zones leave nothing", sketch{lawn, covering(Keepout, "wet", rectangle(4, 4, 8, 9)), zone("a", rectangle(5, 5, 10, 8)), zone("b", rectangle(5, 5, 10, 8.5))},
			[]string{`A zone/rest "Rest" 173.000`, `B zone/a "a" 6.000`, `C zone/b "b" 1.000`, `D zone/wet "wet" 20.000 no application`}, ""},
		{"zone inside a keepout", sketch{lawn, covering(Keepout, "wet", rectangle(4, 4, 8, 9)), zone("a", rectangle(5, 5, 7, 8))},
			[]string{`A zone/rest "Rest" 180.000`, `B zone/wet "wet" 20.000 no application`},
			`warning: yard.geojson: features[2] "a": all turf of the zone lies in smaller zones, keepouts or setbacks`},
		{"keepout", sketch{lawn, covering(Keepout, "wet", rectangle(15, 5, 25, 15))},
			[]string{`A zone/rest "Rest" 175.000`, `B zone/wet "wet" 25.000 no application`}, ""},
		{"keepout across a zone, without a word", sketch{lawn, zone("all", rectangle(-1, -1, 21, 11)), covering(Keepout, "wet", rectangle(15, 5, 25, 15))},
			[]string{`A zone/all "all" 175.000`, `B zone/wet "wet" 25.000 no application`}, ""},
		{"apply false", sketch{lawn, zone("wild", rectangle(-1, -1, 15, 11), `"apply":false`)},
			[]string{`A zone/rest "Rest" 50.000`, `B zone/wild "wild" 150.000 no application`}, ""},
		{"cutline", sketch{lawn, cutline("c", xy(5, -1), xy(5, 11))},
			[]string{`A zone/turf-east "Turf, east" 150.000`, `B zone/turf-west "Turf, west" 50.000`}, ""},
		{"cutline the other way", sketch{lawn, cutline("c", xy(5, 11), xy(5, -1))},
			[]string{`A zone/turf-east "Turf, east" 150.000`, `B zone/turf-west "Turf, west" 50.000`}, ""},
		{"cutline from west to east", sketch{lawn, cutline("c", xy(-1, 4), xy(21, 4))},
			[]string{`A zone/turf-north "Turf, north" 120.000`, `B zone/turf-south "Turf, south" 80.000`}, ""},
		{"cutline that ends short", sketch{lawn, cutline("c", xy(5, 1), xy(5, 9))},
			[]string{`A zone/turf-east "Turf, east" 150.000`, `B zone/turf-west "Turf, west" 50.000`}, ""},
		{"cutline that misses", sketch{lawn, cutline("c", xy(25, -1), xy(25, 11))},
			[]string{`A zone/turf "Turf" 200.000`},
			`warning: yard.geojson: features[1] "c": cutline crosses no turf (draw it right across the lawn that it is to divide)`},
		{"cutline that slips over the edge", sketch{lawn, cutline("c", xy(20.3, -5), xy(19.9, 0.4), xy(20.3, 5))},
			[]string{`A zone/turf "Turf" 200.000`},
			`warning: yard.geojson: features[1] "c": cutline crosses no turf (draw it right across the lawn that it is to divide)`},
		{"cutline bent to a U", sketch{lawn, cutline("c", xy(5, 11), xy(5, 4), xy(15, 4), xy(15, 11))},
			[]string{`A zone/turf-south "Turf, south" 140.000`, `B zone/turf-north "Turf, north" 60.000`}, ""},
		{"cutline round the house", sketch{lawn, covering(Building, "house", rectangle(5, 3, 15, 7)), cutline("c", xy(10, -1), xy(10, 11))},
			[]string{`A zone/turf-east "Turf, east" 80.000`, `B zone/turf-west "Turf, west" 80.000`}, ""},
		{"cutline through one of two lawns", sketch{lawn, split, cutline("c", xy(-1, 4), xy(8, 4))},
			[]string{`A zone/turf "Turf" 90.000`, `B zone/turf-north "Turf, north" 54.000`, `C zone/turf-south "Turf, south" 36.000`}, ""},
		{"cutline through both of two lawns", sketch{lawn, split, cutline("c", xy(-1, 4), xy(21, 4))},
			[]string{`A zone/turf-north "Turf, north" 108.000`, `B zone/turf-south "Turf, south" 72.000`}, ""},
		{"cutlines that cross", sketch{lawn, cutline("a", xy(5, -1), xy(5, 11)), cutline("b", xy(-1, 4), xy(21, 4))},
			[]string{`A zone/turf-east-north "Turf, east, north" 90.000`, `B zone/turf-east-south "Turf, east, south" 60.000`,
				`C zone/turf-west-north "Turf, west, north" 30.000`, `D zone/turf-west-south "Turf, west, south" 20.000`}, ""},
		{"cutline that ends on another", sketch{lawn, cutline("a", xy(5, 4), xy(21, 4)), cutline("b", xy(5, -1), xy(5, 11))},
			[]string{`A zone/turf-east-north "Turf, east, north" 90.000`, `B zone/turf-east-south "Turf, east, south" 60.000`, `C zone/turf-west "Turf, west" 50.000`}, ""},
		{"cutline through zone and keepout", sketch{lawn, zone("front", rectangle(-1, -1, 10, 11)), covering(Keepout, "wet", rectangle(12, 0, 16, 10)), cutline("c", xy(-1, 5), xy(21, 5))},
			[]string{`A zone/front-north "front, north" 50.000`, `B zone/front-south "front, south" 50.000`,
				`C zone/rest-north "Rest, north" 30.000`, `D zone/rest-south "Rest, south" 30.000`,
				`E zone/wet-north "wet, north" 20.000 no application`, `F zone/wet-south "wet, south" 20.000 no application`}, ""},
	} {
		t.Run(tt.name, func(t *testing.T) {
			p := tt.sketch.plat(t)
			m := p.Measurement()
			if got := zonesOf(m); !slices.Equal(got, tt.zones) {
				t.Errorf("zones\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(tt.zones, "\n"))
			}
			if got := told(p.Site.Problems); got != tt.told {
				t.Errorf("told\n%s\nwant\n%s", got, tt.told)
			}
			checkIdentities(t, m)
			checkDisjoint(t, p)
			checkReadsBack(t, p, m)
		})
	}
}

func TestBentCutlineIsRefused(t *testing.T) {
	s := siteOf(t, sketch{lawn, cutline("c", xy(5, -1), xy(5, 8), xy(10, 8), xy(10, 4), xy(1, 4))}.file(home, ""))
	if Survey(s) != nil {
		t.Error("surveyed all the same")
	}
	want := `error: yard.geojson: features[1] "c": cutline turns back on itself, so that it has no two sides (draw it from edge to edge without a loop, or trace the part as a zone instead)`
	if got := told(s.Problems); got != want {
		t.Errorf("told\n%s\nwant\n%s", got, want)
	}
}

func TestZoneAttributes(t *testing.T) {
	m := sketch{lawn, polygon(kind(ZoneKind, "bank", `"exposure":"part"`, `"species":"red fescue"`, `"slope_percent":-33`), rectangle(-1, -1, 10, 11))}.measure(t)
	bank, rest := m.Zones[0], m.Zones[1]
	if bank.ID != "zone/bank" {
		bank, rest = rest, bank
	}
	if bank.Exposure != "part" || bank.Species != "red fescue" || bank.SlopePercent != 33 {
		t.Errorf("bank %+v", bank)
	}
	near(t, "surface of the bank", bank.SurfaceAreaM2, 100*math.Sqrt(1+0.33*0.33), 1e-8, 0)
	near(t, "surface of what is level", rest.SurfaceAreaM2, 100, 1e-8, 0)
}

func TestDoubtfulZoneAttributes(t *testing.T) {
	for _, tt := range []struct{ props, want string }{
		{`"exposure":"sunny"`, `warning: yard.geojson: features[1] "z": exposure "sunny" is not known, left aside (write full, part, shade or deep)`},
		{`"slope_percent":1e300`, `warning: yard.geojson: features[1] "z": slope_percent 1e300 is not a slope of -100 to 100 %, left aside (give the rise over a level 100, as a number alone)`},
		{`"slope_percent":"steep"`, `warning: yard.geojson: features[1] "z": slope_percent "steep" is not a slope of -100 to 100 %, left aside (give the rise over a level 100, as a number alone)`},
		{`"exposure":null`, ""},
	} {
		p := sketch{lawn, polygon(kind(ZoneKind, "z", tt.props), rectangle(-1, -1, 10, 11))}.plat(t)
		if got := told(p.Site.Problems); got != tt.want {
			t.Errorf("%s: told\n%s\nwant\n%s", tt.props, got, tt.want)
		}
		asJSON(t, p.Measurement())
	}
}

// The ids of zones that have a name do not hang on the order of the file.
func TestZoneIDsInAnyOrder(t *testing.T) {
	named := func(name string, ring geo.Ring) item {
		return polygon(fmt.Sprintf(`"kind":"zone","name":%q`, name), ring)
	}
	items := sketch{lawn, named("Bank", rectangle(-1, -1, 5, 11)), named("Back", rectangle(15, -1, 22, 11)), named("Bank", rectangle(7, -1, 8, 11)), named("Play", rectangle(10, 2, 13, 5))}
	turned := slices.Clone(items)
	slices.Reverse(turned)
	want := zonesOf(items.measure(t))
	if got := zonesOf(turned.measure(t)); !slices.Equal(got, want) {
		t.Errorf("turned round: %q, want %q", got, want)
	}
}

// What is said of a traced zone is said of the zones it becomes.
func TestSiteFileKeepsWhatIsSaidOfZones(t *testing.T) {
	p := sketch{lawn, polygon(kind(ZoneKind, "front", `"irrigated":true`, `"exposure":"full"`), rectangle(-1, -1, 10, 11)), cutline("c", xy(-1, 5), xy(21, 5))}.plat(t)
	written := 0
	for range 2 { // a second time changes nothing
		written = 0
		for _, f := range p.SiteFile().Features {
			if !isDerived(f) {
				continue
			}
			written++
			irrigated, stated := f.Properties.Bool("irrigated")
			if front := strings.HasPrefix(f.ID, "zone/front"); stated != front || irrigated != front {
				t.Errorf("%s: irrigated %t, stated %t", f.ID, irrigated, stated)
			}
		}
	}
	if written != 4 {
		t.Errorf("%d zones written, want 4", written)
	}
}

func TestZonesWrittenEarlier(t *testing.T) {
	p := sketch{lawn, cutline("c", xy(5, -1), xy(5, 11))}.plat(t)
	wanted := zonesOf(p.Measurement())
	c := p.SiteFile()

	t.Run("stand", func(t *testing.T) {
		again := Survey(NewSite(c, Reading{Key: builtInKey}))
		if got := zonesOf(again.Measurement()); !slices.Equal(got, wanted) {
			t.Errorf("zones %v, want %v", got, wanted)
		}
	})
	t.Run("are made anew", func(t *testing.T) {
		again := Survey(NewSite(c, Reading{Key: builtInKey, Afresh: true}))
		if got := zonesOf(again.Measurement()); !slices.Equal(got, wanted) {
			t.Errorf("zones %v, want %v", got, wanted)
		}
	})
	t.Run("are outdated when a keepout comes in", func(t *testing.T) {
		changed := *c
		changed.Features = slices.Concat(c.Features, collectionOf(t, sketch{covering(Keepout, "wet", rectangle(10, 0, 15, 5))}.file(home, "")).Features)
		again := Survey(NewSite(&changed, Reading{Key: builtInKey}))
		want := `warning: yard.geojson: features[0] "wet": 269 ft2 of the keepout lie in zone "Turf, east", which was written earlier (run zone again)`
		if got := told(again.Site.Problems); got != want {
			t.Errorf("told %s, want %s", got, want)
		}
	})
	t.Run("are outdated when turf grows", func(t *testing.T) {
		c.Features = append(c.Features, collectionOf(t, sketch{covering(Turf, "verge", rectangle(0, -5, 20, -3))}.file(home, "")).Features...)
		again := Survey(NewSite(c, Reading{Key: builtInKey}))
		want := append(slices.Clone(wanted), `C zone/rest "Rest" 40.000`)
		if got := zonesOf(again.Measurement()); !slices.Equal(got, want) {
			t.Errorf("zones %v, want %v", got, want)
		}
		if got := told(again.Site.Problems); got != "warning: yard.geojson: 431 ft2 of turf lie in none of the zones written earlier (run zone again)" {
			t.Errorf("told %s", got)
		}
	})
}

func TestLetters(t *testing.T) {
	for i, want := range map[int]string{0: "A", 1: "B", 25: "Z", 26: "AA", 27: "AB", 51: "AZ", 52: "BA", 701: "ZZ", 702: "AAA"} {
		if got := letter(i); got != want {
			t.Errorf("letter %d = %s, want %s", i, got, want)
		}
	}
}
