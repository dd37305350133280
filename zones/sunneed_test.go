package zones

import (
	"bytes"
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"example.org/turfplat/geo"
	"example.org/turfplat/zones/sun"
	"example.org/turfplat/zones/turf"
)

// grassPlat surveys a site divided by what its grasses need of sun.
func grassPlat(t failer, file []byte) *Plat {
	t.Helper()
	request := inSun()
	request.ByGrass = true
	s := NewSite(collectionOf(t, file), Reading{Key: builtInKey, Sun: request, Afresh: true})
	p := Survey(s)
	if p == nil {
		t.Fatalf("refused: %s\n%s", told(s.Problems), file)
	}
	return p
}

func TestZonesByWhatGrassNeeds(t *testing.T) {
	back := func(more ...string) item {
		return polygon(kind(ZoneKind, "back", append(more, `"name":"Back"`)...), rectangle(-1, -1, 41, 21))
	}
	for _, tt := range []struct {
		name   string
		sketch sketch
		want   string
		told   []string
	}{
		{"wants 6 h", shadedLawn(back(`"species":"tall fescue"`)), "zone/back-enough-sun Back, enough sun full; zone/back-too-little-sun Back, too little sun shade", []string{"species_shaded"}},
		{"wants 8 h", shadedLawn(back(`"species":"bermuda"`)), "zone/back-enough-sun Back, enough sun full; zone/back-short-of-sun Back, short of sun full; zone/back-too-little-sun Back, too little sun part", []string{"species_shaded"}},
		{"makes do with 3 h", shadedLawn(back(`"species":"fine fescue"`)), "zone/back-enough-sun Back, enough sun full; zone/back-short-of-sun Back, short of sun shade", nil}, // the strips of 3 to 4 h and of less are each narrower than 1.5 m
		{"nobody says which", shadedLawn(back()), "zone/back-full Back, full sun full; zone/back-shade Back, shade shade", []string{"species_missing"}},
		{"not in the table", shadedLawn(back(`"species":"moss"`)), "zone/back-full Back, full sun full; zone/back-shade Back, shade shade", []string{"species_unknown"}},
		{"a stated exposure is left whole", shadedLawn(back(`"species":"bermuda"`, `"exposure":"full"`)), "zone/back Back full", nil},
		{"in the open", sketch{covering(Turf, "lawn", rectangle(0, 0, 40, 20)), back(`"species":"bermuda"`)}, "zone/back Back full", nil},
	} {
		t.Run(tt.name, func(t *testing.T) {
			file := tt.sketch.file(home, "")
			p := grassPlat(t, file)
			slices.SortStableFunc(p.Zones, func(a, b Zone) int {
				return slices.Index(sun.Exposures, sun.Exposure(a.Exposure)) - slices.Index(sun.Exposures, sun.Exposure(b.Exposure))
			})
			if got := exposed(p.Zones); got != tt.want {
				t.Errorf("zones\n%s\nwant\n%s", got, tt.want)
			}
			if got := codes(p.Site.Problems); !slices.Equal(got, tt.told) {
				t.Errorf("told %v, want %v: %s", got, tt.told, told(p.Site.Problems))
			}
			checkJudged(t, p)
			m := p.Measurement()
			checkIdentities(t, m)
			checkDisjoint(t, p)
			checkWalkable(t, p, platOf(t, file))
			checkReadsBack(t, p, m)
		})
	}
}

// checkJudged proves that each zone is judged by the figures of its own grass,
// and that one parted from another has the hours that its name says.
func checkJudged(t failer, p *Plat) {
	t.Helper()
	for _, z := range p.Zones {
		grass, known := turf.Default().Find(z.Species)
		if known != (z.Sun.Need != nil) && z.Sun.Known {
			t.Errorf("%s of %q is judged by %v", z.ID, z.Species, z.Sun.Need)
		}
		if z.Sun.Need == nil {
			continue
		}
		if z.Sun.Need.Grass != grass.Name {
			t.Errorf("%s of %q is judged by %s", z.ID, z.Species, z.Sun.Need.Grass)
		}
		if got := grass.Suits(z.Sun.Hours); got != z.Sun.Fit && nearestLimit(*z.Sun.Need, z.Sun.Hours) > 0.05 && len(z.Region.Pieces()) == 1 {
			t.Errorf("%s gets %.2f h, %s for %s, told as %s", z.ID, z.Sun.Hours, got, grass.Name, z.Sun.Fit)
		}
	}
}

func nearestLimit(n turf.SunNeed, hours float64) float64 {
	least := math.Inf(1)
	for _, limit := range n.Limits() {
		least = min(least, math.Abs(hours-limit))
	}
	return least
}

// The same ground parts at other hours for another grass: the more sun a grass
// wants, the less of a lawn has enough.
func TestGrassThatWantsMoreSunHasLess(t *testing.T) {
	enough := func(species string) float64 {
		file := shadedLawn(polygon(kind(ZoneKind, "back", `"species":"`+species+`"`), rectangle(-1, -1, 41, 21))).file(home, "")
		p, area := grassPlat(t, file), geo.Area(0)
		for _, z := range p.Zones {
			if z.Sun.Fit == turf.Thrives {
				area += p.Site.Frame.Area(z.Region)
			}
		}
		return float64(area)
	}
	little, more, most := enough("fine fescue"), enough("tall fescue"), enough("bermuda")
	if !(little > more+5 && more > most+5) { // 4, 6 and 8 h
		t.Errorf("enough sun on %.1f, %.1f and %.1f m2", little, more, most)
	}
}

// The band of doubt lies round the limits of the grass, not of exposure.
func TestDoubtIsThatOfTheGrass(t *testing.T) {
	file := shadedLawn(polygon(kind(ZoneKind, "back", `"species":"bermuda"`), rectangle(-1, -1, 41, 21))).file(home, "")
	p := grassPlat(t, file)
	near := map[float64]int{} // cells of the band by the limit they lie at
	for cell, h := range p.Sun.Hours.Values {
		if !p.Sun.Doubtful.Contains(p.Sun.Hours.Center(cell)) {
			continue
		}
		for _, limit := range []float64{8, 6, 4, 2} {
			if math.Abs(h-limit) <= 0.3 {
				near[limit]++
			}
		}
	}
	if near[8] < 20 || near[4]+near[2] > 0 {
		t.Errorf("cells of the band by limit: %v", near)
	}
}

// Whatever the property and its grasses: zones tile the turf, can be walked, read
// back the same and are the same when their file is zoned again.
func TestZonesByGrassLaws(t *testing.T) {
	check(t, *yards, func(t *rapid.T) {
		site := rapid.SampledFrom([]string{"", `"site":{"species":"fine fescue"}`, `"site":{"species":"zoysia"}`}).Draw(t, "site")
		file := drawPropertyOn(t, rapid.Bool().Draw(t, "coarse")).file(home, site)
		p := grassPlat(t, file)
		m := p.Measurement()
		checkIdentities(t, m)
		checkDisjoint(t, p)
		checkWalkable(t, p, platAfresh(t, file))
		checkJudged(t, p)
		var written bytes.Buffer
		if err := p.SiteFile().WriteGeoJSON(&written); err != nil {
			t.Fatalf("site file: %v", err)
		}
		checkSameZones(t, platOf(t, written.Bytes()).Measurement().Zones, m.Zones, 1e-6)
		checkSameZones(t, grassPlat(t, written.Bytes()).Measurement().Zones, m.Zones, 1e-3)
	})
}
