package ingest

import (
	"bytes"
	"maps"
	"os"
	"path/filepath"
	"testing"
)

// asFound are the real files: how many features, and how often each problem.
var asFound = map[string]struct {
	features int
	problems map[string]int
}{
	"at_vienna_trees_west.geojson":           {1386, nil},
	"au_colac_trees.geojson":                 {3418, nil},
	"li_north_osm_trees.geojson":             {7917, nil},
	"fi_town_buildings.geojson":              {2171, nil},
	"id_jakarta_buildings.geojson":           {7689, nil},
	"li_north_areas_with_holes.geojson":      {131, nil},
	"li_north_buildings.geojson":             {11649, nil},
	"li_north_grass_and_parks.geojson":       {1175, nil},
	"us_alexandria_buildings_height.geojson": {84, map[string]int{"crs_old": 1, "ring_winding": 1}},
	"aberdeen.geojson":                       {88, nil},
	"berlin.geojson":                         {379, map[string]int{"ring_unclosed": 3, "ring_winding": 2}},
	"northgate.geojson":                      {228, map[string]int{"ring_unclosed": 1}},
	"ruggell-1.geojson":                      {160, nil},
	"ruggell-2.geojson":                      {127, nil},
	"sydney.geojson":                         {101, map[string]int{"ring_unclosed": 4}},
}

// TestRealFiles: nothing in them is refused, all of it is placed, and it
// writes back the same.
func TestRealFiles(t *testing.T) {
	files := needFiles(t, "*/*.geojson")
	for _, path := range files {
		name := filepath.Base(path)
		t.Run(name, func(t *testing.T) {
			text, err := os.ReadFile(path)
			if err != nil {
				t.Fatal(err)
			}
			c := readOne(t, string(text))
			problems := make(map[string]int)
			for _, p := range c.Problems {
				problems[p.Code]++
			}
			want, known := asFound[name]
			if !known || c.Refused() {
				t.Fatalf("known %v, problems %v", known, problems)
			}
			if len(c.Features) != want.features || !maps.Equal(problems, want.problems) {
				t.Errorf("got %d features, problems %v, want %v", len(c.Features), problems, want)
			}
			for _, f := range c.Features {
				if f.Geometry == nil {
					t.Errorf("%v has no geometry", c.Place(f))
				}
			}
			checkWrites(t, c)
			checkCopied(t, c, text)
		})
	}
}

// checkCopied: a site without problems in these files, which have a feature a
// line already, is written byte for byte.
func checkCopied(t *testing.T, c *Collection, text []byte) {
	t.Helper()
	if len(c.Problems) > 0 {
		return
	}
	var b bytes.Buffer
	if err := c.WriteGeoJSON(&b); err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(b.Bytes(), text) {
		t.Error("written differently")
	}
}
