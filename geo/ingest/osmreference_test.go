package ingest

import (
	"bytes"
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"maps"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/paulmach/orb"

	"example.org/turfplat/geo"
)

var osmUpdate = flag.Bool("osm-update", false, "rewrite testdata/osm/reference.json from osmium and GDAL")

const osmReference = osmTestdata + "reference.json"

// osmFigures are what other programs make of an extract.
type osmFigures struct {
	TaggedNodes   int                `json:"tagged_nodes"`          // osmium: points
	TaggedWays    int                `json:"tagged_ways"`           // osmium: ways that became lines or areas
	ClosedWays    int                `json:"closed_ways"`           // osmium: areas of ways
	ClosedWaysM2  float64            `json:"closed_ways_m2"`        // their sum
	Multipolygons map[string]float64 `json:"multipolygons_m2"`      // osmium: areas of relations
	ByGDAL        map[string]float64 `json:"multipolygons_gdal_m2"` // GDAL: the same
}

type osmFiguresFile struct {
	Made  []string              `json:"made"`
	Files map[string]osmFigures `json:"files"`
}

// osmExceptions are objects on which other programs differ, and why.
var osmExceptions = map[string]string{
	"osm:way/275490781":    "the ring crosses itself: osmium makes no area of it; here that is judged once there is a frame",
	"osm:relation/7210136": "GDAL makes an area of a relation without tags whose way has none either",
}

// frameArea is the area of a geometry in a frame laid round it, m2.
func frameArea(g orb.Geometry) (float64, error) {
	var polygons orb.MultiPolygon
	switch g := g.(type) {
	case orb.Polygon:
		polygons = orb.MultiPolygon{g}
	case orb.MultiPolygon:
		polygons = g
	case orb.LineString:
		polygons = orb.MultiPolygon{{orb.Ring(g)}}
	}
	var sum float64
	frame := geo.NewFrame(geo.Center(func(yield func(orb.Point) bool) { yield(polygons[0][0][0]) }))
	for _, p := range polygons {
		r, err := geo.RegionOf(frame.Rings(p))
		if err != nil {
			return 0, err
		}
		sum += float64(frame.Area(r))
	}
	return sum, nil
}

// ownFigures are those of this reader.
func ownFigures(t *testing.T, c *Collection) osmFigures {
	t.Helper()
	own := osmFigures{Multipolygons: make(map[string]float64)}
	cut := make(map[string]bool)
	for _, p := range c.Problems {
		cut[p.Place.Label] = cut[p.Place.Label] || p.Code == "osm_line_cut"
	}
	for _, f := range c.Features {
		switch {
		case strings.HasPrefix(f.ID, "osm:node/"):
			own.TaggedNodes++
			continue
		case strings.HasPrefix(f.ID, "osm:relation/"):
			own.Multipolygons[f.ID] = mustArea(t, f)
			continue
		case strings.HasSuffix(f.ID, "/barrier") || cut[f.ID]:
			continue
		}
		own.TaggedWays++
		if line, ok := f.Geometry.(orb.LineString); ok && (len(line) < 4 || line[0] != line[len(line)-1]) || osmExceptions[f.ID] != "" {
			continue
		}
		own.ClosedWays++
		own.ClosedWaysM2 += mustArea(t, f)
	}
	return own
}

func mustArea(t *testing.T, f *Feature) float64 {
	t.Helper()
	area, err := frameArea(f.Geometry)
	if err != nil {
		t.Fatalf("%s: %v", f.ID, err)
	}
	return area
}

// readMapFile reads a file that must be one extract.
func readMapFile(t testing.TB, path string) *Collection {
	t.Helper()
	f, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	for c := range Read(f, filepath.Base(path), Limits{}) {
		return c
	}
	t.Fatal("nothing was read")
	return nil
}

// TestOSMReference: counts and areas of the real extracts are those of other
// programs.
func TestOSMReference(t *testing.T) {
	paths := needFiles(t, "osm/*.osm")
	var reference osmFiguresFile
	if err := json.Unmarshal(testFile(t, "reference.json"), &reference); err != nil {
		t.Fatal(err)
	}
	for _, path := range paths {
		name := filepath.Base(path)
		t.Run(name, func(t *testing.T) {
			want, known := reference.Files[name]
			if !known {
				t.Fatal("no figures")
			}
			compareFigures(t, ownFigures(t, readMapFile(t, path)), want)
		})
	}
}

func compareFigures(t *testing.T, got, want osmFigures) {
	t.Helper()
	if got.TaggedNodes != want.TaggedNodes || got.TaggedWays != want.TaggedWays || got.ClosedWays != want.ClosedWays {
		t.Errorf("got %d nodes, %d ways, %d closed, want %d, %d, %d", got.TaggedNodes, got.TaggedWays, got.ClosedWays, want.TaggedNodes, want.TaggedWays, want.ClosedWays)
	}
	sameArea(t, "closed ways", got.ClosedWaysM2, want.ClosedWaysM2)
	for _, other := range []map[string]float64{want.Multipolygons, want.ByGDAL} {
		for _, id := range slices.Sorted(maps.Keys(other)) {
			if osmExceptions[id] == "" {
				sameArea(t, id, got.Multipolygons[id], other[id])
			}
		}
		for id := range got.Multipolygons {
			if _, ok := other[id]; !ok {
				t.Errorf("%s is no area to others", id)
			}
		}
	}
}

func sameArea(t *testing.T, what string, got, want float64) {
	t.Helper()
	if math.Abs(got-want) > 1e-6*want {
		t.Errorf("%s: got %.6f m2, want %.6f", what, got, want)
	}
}

// TestOSMCrosscheck asks osmium and GDAL anew.
func TestOSMCrosscheck(t *testing.T) {
	for _, program := range []string{"osmium", "ogr2ogr"} {
		if _, err := exec.LookPath(program); err != nil {
			t.Skip(program + " is not installed")
		}
	}
	paths := needFiles(t, "osm/*.osm")
	reference := osmFiguresFile{Files: make(map[string]osmFigures), Made: []string{
		"osmium-tool 1.15.0: osmium sort -o SORTED.osm.pbf FILE; osmium export -f geojsonseq -x print_record_separator=false -u type_id SORTED.osm.pbf",
		"GDAL 3.6.2: ogr2ogr -f GeoJSON -lco COORDINATE_PRECISION=9 OUT SORTED.osm.pbf multipolygons",
		"areas of their polygons in a frame (geo.Frame) round each",
	}}
	for _, path := range paths {
		t.Run(filepath.Base(path), func(t *testing.T) {
			sorted := filepath.Join(t.TempDir(), "sorted.osm.pbf")
			run(t, "osmium", "sort", "-o", sorted, path)
			figures := osmiumFigures(t, sorted)
			figures.ByGDAL = gdalFigures(t, sorted)
			reference.Files[filepath.Base(path)] = figures
			fromXML, fromPBF := readMapFile(t, path), readMapFile(t, sorted)
			compareFigures(t, ownFigures(t, fromXML), figures)
			if !slices.Equal(drawn(fromXML), drawn(fromPBF)) {
				t.Error("read differently from XML and from PBF")
			}
		})
	}
	if *osmUpdate {
		text, err := json.MarshalIndent(reference, "", "  ")
		if err == nil {
			err = os.WriteFile(osmReference, append(text, '\n'), 0o644)
		}
		if err != nil {
			t.Error(err)
		}
	}
}

func run(t *testing.T, name string, args ...string) []byte {
	t.Helper()
	var out, errs bytes.Buffer
	c := exec.Command(name, args...)
	c.Stdout, c.Stderr = &out, &errs
	if err := c.Run(); err != nil {
		t.Fatalf("%s: %v\n%s", name, err, &errs)
	}
	return out.Bytes()
}

// osmiumFigures reads osmium's ids: n and w for nodes and ways, a for areas,
// twice the number of the way or twice that of the relation and one.
func osmiumFigures(t *testing.T, path string) osmFigures {
	t.Helper()
	lines := run(t, "osmium", "export", "-f", "geojsonseq", "-x", "print_record_separator=false", "-u", "type_id", path)
	figures, ways := osmFigures{Multipolygons: make(map[string]float64)}, make(map[int64]bool)
	for _, f := range readOne(t, string(lines)+"\n{}\n").Features {
		number, err := strconv.ParseInt(f.ID[1:], 10, 64)
		switch {
		case err != nil:
			t.Fatal(err)
		case f.ID[0] == 'n':
			figures.TaggedNodes++
		case f.ID[0] == 'w':
			ways[number] = true
		case number%2 == 0:
			ways[number/2] = true
			figures.ClosedWays++
			figures.ClosedWaysM2 += mustArea(t, f)
		default:
			figures.Multipolygons[osmID(osmRelation, number/2)] = mustArea(t, f)
		}
	}
	figures.TaggedWays = len(ways)
	return figures
}

func gdalFigures(t *testing.T, path string) map[string]float64 {
	t.Helper()
	text := run(t, "ogr2ogr", "-f", "GeoJSON", "-lco", "COORDINATE_PRECISION=9", "/vsistdout/", path, "multipolygons")
	areas := make(map[string]float64)
	for _, f := range readOne(t, string(text)).Features {
		if id, ok := f.Properties.Text("osm_id"); ok {
			area, err := frameArea(f.Geometry)
			if crossing := new(geo.CrossingError); err != nil && !errors.As(err, &crossing) {
				t.Fatal(err)
			}
			areas["osm:relation/"+id] = area
		}
	}
	return areas
}

// TestRealMaps: every problem of the real extracts, counted.
func TestRealMaps(t *testing.T) {
	paths := needFiles(t, "osm/*.osm")
	for _, path := range paths {
		name := filepath.Base(path)
		t.Run(name, func(t *testing.T) {
			c := readMapFile(t, path)
			counts := make(map[string]int)
			for _, p := range c.Problems {
				counts[p.Code]++
				if p.Severity == Warning && p.Place.Label == "" {
					t.Errorf("without a name: %v", p)
				}
			}
			want, known := realMaps[name]
			if got := fmt.Sprint(len(c.Features), counts); !known || c.Refused() || got != want {
				t.Errorf("got %s, want %s", got, want)
			}
			checkWrites(t, c)
		})
	}
}

// realMaps are the features and problems of the real extracts.
var realMaps = map[string]string{
	"au_fremantle.osm":          "94 map[osm_relation_other:1]",
	"au_sydney_park.osm":        "1524 map[osm_barrier:1 osm_relation_cut:1 osm_relation_other:1 osm_relation_untagged:1 osm_untagged:1]",
	"de_berlin_neukoelln.osm":   "1521 map[osm_relation_cut:1 osm_relation_other:1 osm_untagged:1 osm_way_cut:1]",
	"de_hamlet.osm":             "49 map[line_short:7 osm_relation_cut:1 osm_relation_open:2 osm_untagged:1]",
	"fi_small_town.osm":         "481 map[osm_line_cut:23 osm_relation_other:1 osm_way_cut:32]",
	"gb_aberdeen.osm":           "583 map[osm_relation_other:1]",
	"li_ruggell.osm":            "903 map[osm_relation_other:1]",
	"us_oakland.osm":            "530 map[osm_relation_other:1]",
	"us_seattle_northgate.osm":  "917 map[osm_relation_cut:1 osm_relation_other:1 osm_untagged:1]",
	"us_tempe_pools.osm":        "523 map[osm_relation_other:1]",
	"us_wisconsin_lakeside.osm": "249 map[osm_relation_cut:1 osm_relation_other:1 osm_untagged:1]",
}
