package zones

import (
	"math"
	"slices"
	"strings"
	"testing"

	"example.org/turfplat/geo"
	"example.org/turfplat/zones/sun"
)

// inSun asks for the turf to be divided by its sun from April to October.
func inSun() *SunRequest {
	return &SunRequest{Season: sun.Cool, Limits: sun.DefaultLimits(), MinElevation: sun.LeastElevation}
}

// litPlat surveys a site with its sun, which must not be refused.
func litPlat(t failer, file []byte) *Plat {
	t.Helper()
	s := NewSite(collectionOf(t, file), Reading{Key: builtInKey, Sun: inSun(), Afresh: true})
	p := Survey(s)
	if p == nil {
		t.Fatalf("refused: %s\n%s", told(s.Problems), file)
	}
	return p
}

// exposed writes zones with their exposure and hours.
func exposed(zones []Zone) string {
	var list []string
	for _, z := range zones {
		list = append(list, z.ID+" "+strings.TrimSpace(z.Name+" "+z.Exposure))
	}
	return strings.Join(list, "; ")
}

// checkWalkable proves that no piece of a zone that its sun parted from
// another is under 14 m2, or too narrow for a disc of 1.5 m, unless it is a
// whole piece of the turf before.
func checkWalkable(t failer, p, before *Plat) {
	t.Helper()
	area := func(r geo.Region) float64 { return float64(p.Site.Frame.Area(r)) }
	for _, z := range p.Zones {
		for _, piece := range z.Region.Pieces() {
			core, err := piece.Buffer(-0.75)
			if err != nil {
				t.Fatalf("buffer: %v", err)
			}
			if area(piece) >= 14 && !core.Empty() {
				continue
			}
			whole := func(o Zone) bool {
				return slices.ContainsFunc(o.Region.Pieces(), func(r geo.Region) bool {
					return r.Bounds().Grown(1e-5).Meets(piece.Bounds()) && math.Abs(area(r)-area(piece)) < 1e-4
				})
			}
			if !slices.ContainsFunc(before.Zones, whole) {
				t.Errorf("piece of %s, %.2f m2, cannot be walked", z.ID, area(piece))
			}
		}
	}
}

// shadedLawn is 40 m by 20 m of turf north of a block 8 m high, at 45 degrees
// of latitude. Part sun and deep shade are strips too narrow there.
func shadedLawn(more ...item) sketch {
	house := polygon(kind(Building, "house", `"height_m":8`), rectangle(5, -10, 35, 0))
	return append(sketch{house, covering(Turf, "lawn", rectangle(0, 0, 40, 20))}, more...)
}

func TestExposures(t *testing.T) {
	front := func(props ...string) item {
		return polygon(kind(ZoneKind, "back", append(props, `"name":"Back"`)...), rectangle(-1, -1, 41, 21))
	}
	for _, tt := range []struct {
		name   string
		sketch sketch
		want   string
		told   []string // codes
	}{
		{"turf of no name", shadedLawn(), "zone/turf-full Turf, full sun full; zone/turf-shade Turf, shade shade", nil},
		{"traced", shadedLawn(front()), "zone/back-full Back, full sun full; zone/back-shade Back, shade shade", nil},
		{"in the open", sketch{covering(Turf, "lawn", rectangle(0, 0, 40, 20)), front()}, "zone/back Back full", nil},
		{"stated as the sun has it", sketch{covering(Turf, "lawn", rectangle(0, 0, 40, 20)), front(`"exposure":"full"`)}, "zone/back Back full", nil},
		{"stated otherwise", sketch{covering(Turf, "lawn", rectangle(0, 0, 40, 20)), front(`"exposure":"shade"`)}, "zone/back Back shade", []string{"exposure_differs"}},
		{"nothing applied", shadedLawn(front(`"apply":false`)), "zone/back Back", nil},
		{"grass that bears little shade", shadedLawn(front(`"species":"bermuda"`, `"exposure":"part"`), covering(Bed, "bed", rectangle(-1, 3, 41, 21))), "zone/back Back part", []string{"species_shaded"}},
		{"grass that is not known", sketch{covering(Turf, "lawn", rectangle(0, 0, 40, 20)), front(`"species":"moss"`)}, "zone/back Back full", []string{"species_unknown"}},
	} {
		t.Run(tt.name, func(t *testing.T) {
			file := tt.sketch.file(home, "")
			p := litPlat(t, file)
			slices.SortStableFunc(p.Zones, func(a, b Zone) int {
				return slices.Index(sun.Exposures, sun.Exposure(a.Exposure)) - slices.Index(sun.Exposures, sun.Exposure(b.Exposure))
			})
			if got := exposed(p.Zones); got != tt.want {
				t.Errorf("zones\n%s\nwant\n%s", got, tt.want)
			}
			got := slices.DeleteFunc(codes(p.Site.Problems), func(c string) bool { return c == "height_assumed" })
			if !slices.Equal(got, tt.told) {
				t.Errorf("told %v, want %v: %s", got, tt.told, told(p.Site.Problems))
			}
			m := p.Measurement()
			checkIdentities(t, m)
			checkDisjoint(t, p)
			checkWalkable(t, p, platOf(t, file))
			checkReadsBack(t, p, m)
		})
	}
}
