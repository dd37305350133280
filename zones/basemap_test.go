package zones

import (
	"bytes"
	"cmp"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/paulmach/orb"
	"pgregory.net/rapid"

	"example.org/turfplat/geo"
	"example.org/turfplat/geo/ingest"
)

// asLine writes a site file on one line.
func asLine(t failer, c *ingest.Collection) string {
	t.Helper()
	var b bytes.Buffer
	if err := c.WriteGeoJSONLine(&b); err != nil {
		t.Fatalf("cannot be written: %v", err)
	}
	return b.String()
}

// compiledFromAll makes the site file that a base map makes, the long way: all
// objects are laid into one frame with the outline, and those near it kept.
func compiledFromAll(t failer, objects, outline *ingest.Collection) string {
	t.Helper()
	all := *objects
	all.Features = nil
	for _, f := range outline.Features {
		props := f.Properties.Clone()
		props.Set("kind", Outline)
		if f.ID == "" {
			props.Set("id", "outline")
		}
		all.Features = append(all.Features, ingest.NewFeature(props, f.Geometry))
	}
	all.Features = append(all.Features, objects.Features...)
	made := NewSite(&all, Reading{Key: builtInKey})
	made.ID = idFromFile(outline.Source)
	name, _ := outline.Features[0].Properties.Text("name")
	if made.Name = made.ID; len(outline.Features) == 1 {
		made.Name = cmp.Or(name, made.ID)
	}
	return asLine(t, made.compile().File)
}

// lots are the parcels of a street, some with a hole, some in two pieces, some
// on both sides of the meridian of 180 degrees.
func lots(t *rapid.T, frame geo.Frame) []orb.Geometry {
	var all []orb.Geometry
	ring := func(r geo.Ring) orb.Ring { p := frame.Places(r); return append(p, p[0]) }
	hole := func(r geo.Ring) orb.Ring { h := ring(r); slices.Reverse(h); return h }
	for i := range rapid.IntRange(1, 6).Draw(t, "lots") {
		x := float64(i)*60 - 150
		w, h := rapid.Float64Range(15, 55).Draw(t, "width"), rapid.Float64Range(15, 80).Draw(t, "depth")
		shell := ring(rectangle(x, 0, x+w, h))
		switch rapid.IntRange(0, 2).Draw(t, "sort of lot") {
		case 0:
			all = append(all, orb.Polygon{shell})
		case 1:
			all = append(all, orb.Polygon{shell, hole(rectangle(x+3, 3, x+9, 9))})
		default:
			all = append(all, orb.MultiPolygon{{shell}, {ring(rectangle(x, h+10, x+w, h+20))}})
		}
	}
	return all
}

// parcelOf is a parcel by itself, as a reader yields it.
func parcelOf(t failer, id string, g orb.Geometry) *ingest.Collection {
	t.Helper()
	var props ingest.Properties
	props.Set("id", id)
	text := asLine(t, &ingest.Collection{Features: []*ingest.Feature{ingest.NewFeature(props, g)}})
	for c := range ingest.EachFeature(strings.NewReader(text), "parcels.geojson", ingest.DefaultLimits) {
		return c
	}
	t.Fatalf("no parcel in %s", text)
	return nil
}

// TestParcelsAreThoseMadeAlone: each site of a base map is, to the byte, what
// laying all objects would make of the parcel, and the sites do not depend on
// each other.
func TestParcelsAreThoseMadeAlone(t *testing.T) {
	check(t, 60, func(t *rapid.T) {
		middle := rapid.SampledFrom([]orb.Point{home, {180, -16.8}, {-179.9998, 66}}).Draw(t, "middle")
		frame := geo.NewFrame(middle)
		var all sketch
		for i := range rapid.IntRange(1, 4).Draw(t, "properties") {
			by := geo.XY{X: rapid.Float64Range(-200, 200).Draw(t, "east"), Y: rapid.Float64Range(-100, 150).Draw(t, "north")}
			for _, it := range drawPropertyOn(t, false) {
				if !strings.Contains(it.props, `"outline"`) {
					all = append(all, it.moved(by, fmt.Sprint("-", i)))
				}
			}
		}
		objects := collectionOf(t, all.file(middle, `"attribution":"invented"`))
		m := NewBaseMap(objects, Reading{Key: builtInKey})
		parcels := lots(t, frame)
		for _, i := range rapid.Permutation(order(len(parcels))).Draw(t, "order") {
			parcel := parcelOf(t, fmt.Sprint("lot-", i), parcels[i])
			made := m.Compile(parcel)
			if made.Site.Refused() {
				t.Fatalf("refused: %s", told(made.Site.Problems))
			}
			if got, want := asLine(t, made.File), compiledFromAll(t, objects, parcel); got != want {
				t.Errorf("lot %d is\n%s\nwant\n%s", i, got, want)
			}
		}
	})
}

func order(n int) []int {
	all := make([]int, n)
	for i := range all {
		all[i] = i
	}
	return all
}

// moved is an item elsewhere, under another id.
func (it item) moved(by geo.XY, suffix string) item {
	it.props = strings.Replace(it.props, `"id":"`, `"id":"`+suffix, 1)
	var lines []geo.Line
	for _, l := range it.lines {
		moved := make(geo.Line, len(l))
		for i, p := range l {
			moved[i] = geo.XY{X: p.X + by.X, Y: p.Y + by.Y}
		}
		lines = append(lines, moved)
	}
	it.lines = lines
	return it
}

// realOutlines pairs the real extracts with the outlines drawn in them.
var realOutlines = map[string][]string{
	"li_ruggell.osm":           {"ruggell-1.geojson", "ruggell-2.geojson"},
	"de_berlin_neukoelln.osm":  {"berlin.geojson"},
	"us_seattle_northgate.osm": {"northgate.geojson"},
}

func TestRealParcels(t *testing.T) {
	extracts, sites := realData(t, "osm"), realData(t, "sites")
	for name, outlines := range realOutlines {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			objects := readReal(t, filepath.Join(extracts, name))
			m := NewBaseMap(objects, Reading{Key: builtInKey})
			for _, file := range outlines {
				lot := outlineOf(t, readReal(t, filepath.Join(sites, file)))
				made := m.Compile(lot)
				if len(made.took) < 20 {
					t.Errorf("%s: only %d objects", file, len(made.took))
				}
				if asLine(t, made.File) != compiledFromAll(t, objects, lot) {
					t.Errorf("%s: is not what laying all objects makes of it", file)
				}
			}
		})
	}
}

func readReal(t *testing.T, name string) *ingest.Collection {
	t.Helper()
	f, err := os.Open(name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	for c := range ingest.Read(f, name, ingest.DefaultLimits) {
		return c
	}
	t.Fatalf("%s holds nothing", name)
	return nil
}

// outlineOf is the outline of a site by itself.
func outlineOf(t *testing.T, c *ingest.Collection) *ingest.Collection {
	t.Helper()
	for _, f := range c.Features {
		if kind, _ := f.Properties.Text("kind"); kind == string(Outline) {
			return &ingest.Collection{Source: c.Source, Features: []*ingest.Feature{f}}
		}
	}
	t.Fatalf("%s has no outline", c.Source)
	return nil
}

// smallLot is a parcel of 20 by 30 m at home.
func smallLot(t failer) *ingest.Collection {
	t.Helper()
	return parcelOf(t, "7", orb.Polygon{append(geo.NewFrame(home).Places(rectangle(0, 0, 20, 30)), geo.NewFrame(home).Place(geo.XY{}))})
}

func TestParcelProblems(t *testing.T) {
	house := covering(Building, "house", rectangle(5, 5, 10, 10))
	bowTie := func(x float64) item {
		return covering(Bed, "bow", geo.Ring{{X: x}, {X: x + 4, Y: 4}, {X: x + 4}, {X: x, Y: 4.5}})
	}
	for _, tt := range []struct {
		name   string
		map_   sketch
		parcel *ingest.Collection
		want   []string
	}{
		{"nothing to say", sketch{house}, smallLot(t), []string{}},
		{"nothing mapped", sketch{covering(Building, "far", rectangle(50, 5, 60, 10))}, smallLot(t), []string{OutlineBare}},
		{"no house", sketch{covering(Bed, "bed", rectangle(5, 5, 10, 10))}, smallLot(t), []string{OutlineUnbuilt}},
		{"turf says enough", sketch{covering(Turf, "lawn", rectangle(5, 5, 10, 10))}, smallLot(t), []string{}},
		{"a crossing on the lot", sketch{house, bowTie(12)}, smallLot(t), []string{"ring_crosses"}},
		{"a crossing next door", sketch{house, bowTie(30)}, smallLot(t), []string{}},
		{"a crossing far off", sketch{house, bowTie(3000)}, smallLot(t), []string{}},
		{"an outline on the map", sketch{house, covering(Outline, "town", rectangle(-500, -500, 500, 500))}, smallLot(t), []string{}},
		{"a point", sketch{house}, parcelOf(t, "p", home), []string{"outline_missing"}},
		{"no geometry", sketch{house}, parcelOf(t, "p", nil), []string{"outline_missing"}},
		{"a crossing parcel", sketch{house}, parcelOf(t, "p", orb.Polygon{{{0, 0}, {1e-4, 1e-4}, {1e-4, 0}, {0, 1.2e-4}, {0, 0}}}), []string{"ring_crosses"}},
	} {
		t.Run(tt.name, func(t *testing.T) {
			m := NewBaseMap(collectionOf(t, tt.map_.file(home, "")), Reading{Key: builtInKey})
			made := m.Parcel(tt.parcel, "id")
			if got := codes(made.Site.Problems); !slices.Equal(got, tt.want) {
				t.Errorf("told %s, want %v", told(made.Site.Problems), tt.want)
			}
			for _, p := range made.Site.Problems {
				if p.Code != "ring_crosses" && p.Place.String() != `parcels.geojson: features[0] "`+tt.parcel.Features[0].ID+`"` {
					t.Errorf("stands at %v", p.Place)
				}
			}
			if !made.Site.Refused() && len(Survey(NewSite(made.File, Reading{Key: builtInKey})).Site.Of(Outline)) != 1 {
				t.Error("is not a site of one outline")
			}
		})
	}
}

// TestParcelHeader: a parcel's site has its own id and name beside what else
// the map says of sites.
func TestParcelHeader(t *testing.T) {
	for _, tt := range []struct{ member, want string }{
		{"", `{"id":"A & 1","name":"A & 1"}`},
		{`"site":null`, `{"id":"A & 1","name":"A & 1"}`},
		{`"site":7`, `{"id":"A & 1","name":"A & 1"}`},
		{`"site":{"id":"town","units":"metric","x":1.50}`, `{"id":"A & 1","name":"A & 1","units":"metric","x":1.50}`},
	} {
		m := NewBaseMap(collectionOf(t, sketch{covering(Building, "house", rectangle(5, 5, 10, 10))}.file(home, tt.member)), Reading{Key: builtInKey})
		header, _ := m.Parcel(smallLot(t), "A & 1").File.Member("site")
		if string(header) != tt.want {
			t.Errorf("with %s the header is %s, want %s", tt.member, header, tt.want)
		}
	}
}
