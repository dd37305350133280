package zones

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"example.org/turfplat/geo"
)

// planted lists zones with their grass and area, in the order of their ids.
func planted(p *Plat) string {
	var list []string
	for _, z := range p.Zones {
		list = append(list, fmt.Sprintf("%s %q %.0f m2 %s", z.ID, z.Name, float64(p.Site.Frame.Area(z.Region)), z.Species))
	}
	slices.Sort(list)
	return strings.Join(list, "\n")
}

func TestGrassOfZones(t *testing.T) {
	grown := func(id, species string, ring geo.Ring) item {
		return polygon(kind(Turf, id, fmt.Sprintf(`"species":%q`, species)), ring)
	}
	line := func(more string, l ...geo.XY) item { return lineString(kind(Cutline, "c", more), l...) }
	fescue := grown("front", "tall fescue", rectangle(0, 0, 10, 10))
	couch := grown("back", "bermuda", rectangle(10, 0, 20, 10))
	plain := covering(Turf, "side", rectangle(10, 0, 20, 10))
	for _, tt := range []struct {
		name, site string
		sketch     sketch
		want       []string
		told       []string
	}{
		{"nothing said", "", sketch{lawn}, []string{`zone/turf "Turf" 200 m2 `}, nil},
		{"of the site", "zoysia", sketch{lawn, polygon(kind(ZoneKind, "z", `"species":"fine fescue"`), rectangle(-1, -1, 5, 11)), covering(Keepout, "wet", rectangle(15, 5, 25, 15))},
			[]string{`zone/rest "Rest" 125 m2 zoysia`, `zone/wet "wet" 25 m2 zoysia`, `zone/z "z" 50 m2 fine fescue`}, nil},
		{"of the one lawn", "", sketch{fescue}, []string{`zone/turf "Turf" 100 m2 tall fescue`}, nil},
		{"of two lawns", "", sketch{fescue, couch}, []string{`zone/turf-bermuda "Turf, bermuda" 100 m2 bermuda`, `zone/turf-tall-fescue "Turf, tall fescue" 100 m2 tall fescue`}, nil},
		{"of a lawn, and of the site", "zoysia", sketch{fescue, plain}, []string{`zone/turf-tall-fescue "Turf, tall fescue" 100 m2 tall fescue`, `zone/turf-zoysia "Turf, zoysia" 100 m2 zoysia`}, nil},
		{"of one lawn of two", "", sketch{fescue, plain}, []string{`zone/turf "Turf" 100 m2 `, `zone/turf-tall-fescue "Turf, tall fescue" 100 m2 tall fescue`}, nil},
		{"one grass by two names", "TTTF", sketch{fescue, plain}, []string{`zone/turf "Turf" 200 m2 tall fescue`}, nil},
		{"zone over two lawns", "", sketch{fescue, couch, covering(ZoneKind, "z", rectangle(4, -1, 21, 11))},
			[]string{`zone/rest "Rest" 40 m2 tall fescue`, `zone/z-bermuda "z, bermuda" 100 m2 bermuda`, `zone/z-tall-fescue "z, tall fescue" 60 m2 tall fescue`}, nil},
		{"zone of a stated grass over two lawns", "", sketch{fescue, couch, polygon(kind(ZoneKind, "z", `"species":"zoysia"`), rectangle(-1, -1, 21, 11))}, []string{`zone/z "z" 200 m2 zoysia`}, nil},
		{"zone that slips onto the next lawn", "", sketch{fescue, couch, covering(ZoneKind, "z", rectangle(9.6, -1, 21, 11))},
			[]string{`zone/rest "Rest" 96 m2 tall fescue`, `zone/z "z" 104 m2 bermuda`}, nil},
		{"strip along a lawn of another grass", "", sketch{grown("strip", "zoysia", rectangle(0, 10, 10, 10.4)), fescue}, []string{`zone/turf "Turf" 104 m2 tall fescue`}, nil},
		{"strip away from a lawn of another grass", "", sketch{grown("strip", "zoysia", rectangle(0, 12, 20, 12.4)), fescue}, []string{`zone/turf-tall-fescue "Turf, tall fescue" 100 m2 tall fescue`, `zone/turf-zoysia "Turf, zoysia" 8 m2 zoysia`}, nil},
		{"nothing but a strip", "", sketch{grown("strip", "zoysia", rectangle(0, 12, 30, 12.4))}, []string{`zone/turf "Turf" 12 m2 zoysia`}, nil},
		{"keepout over two lawns stays whole", "", sketch{fescue, couch, covering(Keepout, "wet", rectangle(5, -1, 15, 11))},
			[]string{`zone/rest-bermuda "Rest, bermuda" 50 m2 bermuda`, `zone/rest-tall-fescue "Rest, tall fescue" 50 m2 tall fescue`, `zone/wet "wet" 100 m2 `}, nil},
		{"small lawn in a large one", "", sketch{grown("all", "bermuda", rectangle(0, 0, 20, 10)), grown("play", "tall fescue", rectangle(5, 5, 8, 8))},
			[]string{`zone/turf-bermuda "Turf, bermuda" 191 m2 bermuda`, `zone/turf-tall-fescue "Turf, tall fescue" 9 m2 tall fescue`},
			[]string{"turf_overlap"}},
		{"by a cutline, one side", "zoysia", sketch{lawn, line(`"species_west":"tall fescue"`, xy(5, -1), xy(5, 11))}, []string{`zone/turf-east "Turf, east" 150 m2 zoysia`, `zone/turf-west "Turf, west" 50 m2 tall fescue`}, nil},
		{"by a cutline drawn the other way, both sides", "", sketch{lawn, line(`"species_west":"tall fescue","species_east":"bermuda"`, xy(5, 11), xy(5, -1))},
			[]string{`zone/turf-east "Turf, east" 150 m2 bermuda`, `zone/turf-west "Turf, west" 50 m2 tall fescue`}, nil},
		{"by a cutline, over that of the zone", "", sketch{lawn, polygon(kind(ZoneKind, "z", `"species":"zoysia"`), rectangle(-1, -1, 21, 11)), line(`"species_north":"bermuda"`, xy(-1, 4), xy(21, 4))},
			[]string{`zone/z-north "z, north" 120 m2 bermuda`, `zone/z-south "z, south" 80 m2 zoysia`}, nil},
		{"by a cutline that names no side", "", sketch{lawn, line(`"species":"bermuda"`, xy(5, -1), xy(5, 11))}, []string{`zone/turf-east "Turf, east" 150 m2 `, `zone/turf-west "Turf, west" 50 m2 `}, []string{"cutline_species"}},
		{"by a cutline that names its ends", "", sketch{lawn, line(`"species_north":"bermuda"`, xy(5, -1), xy(5, 11))}, []string{`zone/turf-east "Turf, east" 150 m2 `, `zone/turf-west "Turf, west" 50 m2 `}, []string{"cutline_species"}},
		{"by a cutline that names three sides", "", sketch{lawn, line(`"species_north":"bermuda","species_east":"zoysia","species_west":"bermuda"`, xy(5, -1), xy(5, 11))},
			[]string{`zone/turf-east "Turf, east" 150 m2 `, `zone/turf-west "Turf, west" 50 m2 `}, []string{"cutline_species"}},
	} {
		t.Run(tt.name, func(t *testing.T) {
			members := ""
			if tt.site != "" {
				members = fmt.Sprintf(`"site":{"species":%q}`, tt.site)
			}
			p := platOf(t, tt.sketch.file(home, members))
			if got, want := planted(p), strings.Join(tt.want, "\n"); got != want {
				t.Errorf("zones\n%s\nwant\n%s", got, want)
			}
			if got := codes(p.Site.Problems); !slices.Equal(got, tt.told) {
				t.Errorf("told %v, want %v: %s", got, tt.told, told(p.Site.Problems))
			}
			m := p.Measurement()
			checkIdentities(t, m)
			checkDisjoint(t, p)
			checkReadsBack(t, p, m)
		})
	}
}

// Zones that were written keep their grass; of which none was written have that
// of all turf, if it is one.
func TestGrassOfWrittenZones(t *testing.T) {
	for other, grass := range map[string]string{"bermuda": "bermuda", "tall fescue": ""} {
		written := func(id, more string, ring geo.Ring) item {
			return polygon(kind(ZoneKind, id, `"derived":true`+more), ring)
		}
		p := sketch{
			polygon(kind(Turf, "front", `"species":"bermuda"`), rectangle(0, 0, 10, 10)), polygon(kind(Turf, "back", fmt.Sprintf(`"species":%q`, other)), rectangle(10, 0, 30, 10)),
			written("zone/a", `,"species":"zoysia"`, rectangle(0, 0, 8, 10)), written("zone/b", "", rectangle(8, 0, 30, 10)),
		}.plat(t)
		want := "zone/a \"zone/a\" 80 m2 zoysia\nzone/b \"zone/b\" 220 m2 " + grass
		if got := planted(p); got != want {
			t.Errorf("zones\n%s\nwant\n%s", got, want)
		}
	}
}
