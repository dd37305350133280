package zones

import (
	"bytes"
	"flag"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/paulmach/orb"
	"pgregory.net/rapid"

	"example.org/turfplat/geo/ingest"
	"example.org/turfplat/zones/sun"
)

var yards = flag.Int("yards", 40, "on how many properties the laws of zones by sun are tried")

// Zones tile the turf of any property, can be walked, read back the same, and
// are the same when the file that they were written into is zoned again.
func TestZonesBySunLaws(t *testing.T) {
	check(t, *yards, func(t *rapid.T) {
		file := drawPropertyOn(t, rapid.Bool().Draw(t, "coarse")).file(home, "")
		checkLit(t, file)
	})
}

// The zones of any property add up to their turf, lie apart, and no piece is
// under the limits of patches; half of them are divided by exposure, half by
// what their grass needs.
func TestZonesBySunTileTheTurf(t *testing.T) {
	worst := 0.0
	check(t, *yards, func(t *rapid.T) {
		file := drawPropertyOn(t, rapid.Bool().Draw(t, "coarse")).file(home, `"site":{"species":"fine fescue"}`)
		survey := litPlat
		if rapid.Bool().Draw(t, "by grass") {
			survey = grassPlat
		}
		p := survey(t, file)
		worst = max(worst, checkSum(t, p))
		checkDisjoint(t, p)
		checkWalkable(t, p, platAfresh(t, file))
	})
	t.Logf("zones and turf differ by %.1g of it at most", worst)
}

// checkSum proves that zones add up to the turf, and returns by how much of it
// they do not.
func checkSum(t failer, p *Plat) float64 {
	t.Helper()
	turf, sum := float64(p.Site.Frame.Area(p.Ground.Cover(Turf))), 0.0
	for _, z := range p.Zones {
		sum += float64(p.Site.Frame.Area(z.Region))
	}
	if turf == 0 {
		if sum != 0 {
			t.Errorf("zones of %g m2 on no turf", sum)
		}
		return 0
	}
	off := math.Abs(sum-turf) / turf
	if off > 1e-6 {
		t.Errorf("zones are %.9f m2, the turf is %.9f", sum, turf)
	}
	return off
}

func checkLit(t failer, file []byte) {
	t.Helper()
	p := litPlat(t, file)
	m := p.Measurement()
	checkIdentities(t, m)
	checkDisjoint(t, p)
	checkWalkable(t, p, platAfresh(t, file))
	var written bytes.Buffer
	if err := p.SiteFile().WriteGeoJSON(&written); err != nil {
		t.Fatalf("site file: %v", err)
	}
	checkSameZones(t, platOf(t, written.Bytes()).Measurement().Zones, m.Zones, 1e-6)
	again := litPlat(t, written.Bytes()).Measurement()
	checkSameZones(t, again.Zones, m.Zones, 1e-3) // the frame and the file's decimals move cells' middles by a micrometre
}

func platAfresh(t failer, file []byte) *Plat {
	t.Helper()
	p := Survey(NewSite(collectionOf(t, file), Reading{Key: builtInKey, Afresh: true}))
	if p == nil {
		t.Fatalf("refused: %s", file)
	}
	return p
}

// The sites of open map data, as they are and with all that nothing covers for
// turf, so that it reaches up to the walls.
func TestRealSitesBySun(t *testing.T) {
	for _, name := range realSites(t) {
		t.Run(filepath.Base(name), func(t *testing.T) {
			file, err := os.ReadFile(name)
			if err != nil {
				t.Fatal(err)
			}
			checkLit(t, file)

			bare := collectionOf(t, file)
			traced := NewSite(bare, Reading{Key: builtInKey}).Of(Turf)
			bare.Features = slices.DeleteFunc(bare.Features, func(f *ingest.Feature) bool {
				return slices.ContainsFunc(traced, func(o *Object) bool { return o.Feature == f })
			})
			var written bytes.Buffer
			if err := bare.WriteGeoJSON(&written); err != nil {
				t.Fatal(err)
			}
			checkLit(t, written.Bytes())
		})
	}
}

// A little change, such as a house found to be a foot higher, or the lawn traced
// anew, leaves the ids of zones as they are.
func TestZoneIDsBySunAreStable(t *testing.T) {
	ids := func(height string, east float64) []string {
		house := polygon(kind(Building, "house", `"height_m":`+height), rectangle(5, -10, 35, 0))
		var ids []string
		for _, z := range litPlat(t, sketch{house, covering(Turf, "lawn", rectangle(0, 0, east, 20))}.file(home, "")).Zones {
			ids = append(ids, z.ID)
		}
		slices.Sort(ids)
		return ids
	}
	want := ids("8", 40)
	for _, got := range [][]string{ids("8.3", 40), ids("7.7", 40), ids("8", 41)} {
		if !slices.Equal(got, want) {
			t.Errorf("ids %v, want %v", got, want)
		}
	}
}

func TestSeasonOfTheGrass(t *testing.T) {
	sydney := orb.Point{151.2, -33.87}
	zone := func(species string, west, east float64) item {
		return polygon(kind(ZoneKind, species, `"species":"`+species+`"`), rectangle(west, -1, east, 11))
	}
	for _, tt := range []struct {
		name   string
		at     orb.Point
		sketch sketch
		want   sun.Season
	}{
		{"nothing known", home, sketch{lawn}, sun.Cool(home.Lat())},
		{"south of the equator", sydney, sketch{lawn}, sun.Cool(sydney.Lat())},
		{"warm-season grass", sydney, sketch{lawn, zone("couch", -1, 21)}, sun.Warm(sydney.Lat())},
		{"of both seasons", home, sketch{lawn, zone("bermuda", -1, 10), zone("tall fescue", 10, 21)}, sun.Cool(home.Lat())},
		{"moss and zoysia", home, sketch{lawn, zone("moss", -1, 10), zone("zoysia", 10, 21)}, sun.Warm(home.Lat())},
	} {
		request := inSun()
		request.Season = nil
		p := Survey(NewSite(collectionOf(t, tt.sketch.file(tt.at, "")), Reading{Key: builtInKey, Sun: request}))
		if p == nil || p.Sun == nil {
			t.Fatalf("%s: refused", tt.name)
		}
		if p.Sun.Season != tt.want {
			t.Errorf("%s: %v, want %v", tt.name, p.Sun.Season, tt.want)
		}
	}
}

// A bank hides the sun where it stands behind it. A bearing that is left aside
// is one that nobody knows.
func TestSlopesCount(t *testing.T) {
	hours := func(aspect string) float64 {
		bank := polygon(kind(ZoneKind, "bank", `"slope_percent":40`+aspect), rectangle(-1, -1, 21, 11))
		return litPlat(t, sketch{lawn, bank}.file(home, "")).Zones[0].Sun.Hours
	}
	north, south, unknown := hours(`,"aspect_deg":0`), hours(`,"aspect_deg":180`), hours("")
	if !(north < unknown-0.1) || !(south < unknown-0.1) { // the sun rises and sets behind either
		t.Errorf("facing north %.2f h, south %.2f h, unknown %.2f h", north, south, unknown)
	}
	if beyond := hours(`,"aspect_deg":540`); beyond != unknown {
		t.Errorf("facing 540 degrees %.2f h, unknown %.2f h", beyond, unknown)
	}
}

func TestTurfTooLargeForSun(t *testing.T) {
	far := sketch{covering(Turf, "near", rectangle(0, 0, 40, 20)), covering(Turf, "far", rectangle(4000, 3000, 4040, 3020))}
	s := NewSite(collectionOf(t, far.file(home, "")), Reading{Key: builtInKey, Sun: inSun()})
	if Survey(s) != nil {
		t.Error("surveyed all the same")
	}
	if got := told(s.Problems); !strings.Contains(got, "turf spread over 4.0 km by 3.0 km is too much for hours of sun") {
		t.Errorf("told %s", got)
	}
}

func TestNoTurfNoSun(t *testing.T) {
	p := litPlat(t, sketch{covering(Outline, "lot", rectangle(0, 0, 10, 10)), covering(Hardscape, "court", rectangle(-1, -1, 11, 11))}.file(home, ""))
	if p.Sun != nil || len(p.Zones) > 0 {
		t.Errorf("sun %v, zones %v", p.Sun, p.Zones)
	}
}

// Zones that were written stay as they are, and their sun is that which they
// were divided by; another season tells of those it does not suit.
func TestSunOfWrittenZones(t *testing.T) {
	house := polygon(kind(Building, "house", `"height_m":8`), rectangle(5, -10, 35, 0))
	first := litPlat(t, sketch{house, covering(Turf, "lawn", rectangle(0, 0, 40, 20))}.file(home, ""))
	var written bytes.Buffer
	if err := first.SiteFile().WriteGeoJSON(&written); err != nil {
		t.Fatal(err)
	}
	s := NewSite(collectionOf(t, written.Bytes()), Reading{Key: builtInKey, Sun: inSun()})
	again := Survey(s)
	if again == nil || again.Sun == nil {
		t.Fatalf("no sun: %s", told(s.Problems))
	}
	checkSameZones(t, again.Measurement().Zones, first.Measurement().Zones, 1e-3)
	if got := told(s.Problems); strings.Contains(got, "was written as") {
		t.Errorf("told %s", got)
	}
	winter := inSun()
	winter.Season = func(float64) sun.Season {
		return sun.Season{From: sun.Date{Month: 12, Day: 21}, To: sun.Date{Month: 12, Day: 21}}
	}
	s = NewSite(collectionOf(t, written.Bytes()), Reading{Key: builtInKey, Sun: winter})
	if again = Survey(s); len(again.Zones) != len(first.Zones) {
		t.Errorf("%d zones in winter, %d were written", len(again.Zones), len(first.Zones))
	}
	if got := told(s.Problems); !strings.Contains(got, "was written as full sun, but gets") {
		t.Errorf("told %s", got)
	}
}
