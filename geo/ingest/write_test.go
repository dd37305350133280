package ingest

import (
	"bytes"
	"errors"
	"math"
	"strings"
	"testing"

	"github.com/paulmach/orb"
)

// lonely is a site of one derived feature.
func lonely(g orb.Geometry) *Collection {
	return &Collection{Source: "x", Features: []*Feature{NewFeature(Properties{}, g)}}
}

func TestWriteNewGeometry(t *testing.T) {
	square := orb.Ring{{0, 0}, {1, 0}, {1, 1}, {0, 1}, {0, 0}}
	for _, tt := range []struct {
		name     string
		geometry orb.Geometry
		want     string
	}{
		{"nothing", nil, `null`},
		{"point", orb.Point{1.0 / 3, -2}, `{"type":"Point","coordinates":[0.3333333333333,-2]}`},
		{"points", orb.MultiPoint{{1, 2}, {1, 2}}, `{"type":"MultiPoint","coordinates":[[1,2],[1,2]]}`},
		{"no points", orb.MultiPoint{}, `null`},
		{"line", orb.LineString{{1, 2}, {1, 2 + 1e-14}, {3, 4}}, `{"type":"LineString","coordinates":[[1,2],[3,4]]}`},
		{"line that vanishes", orb.LineString{{1, 2}, {1, 2 + 1e-14}}, `null`},
		{"lines of which one vanishes", orb.MultiLineString{{{1, 2}}, {{1, 2}, {3, 4}}}, `{"type":"MultiLineString","coordinates":[[[1,2],[3,4]]]}`},
		{"clockwise, unclosed", orb.Polygon{{{0, 0}, {0, 1}, {1, 1}}}, `{"type":"Polygon","coordinates":[[[0,0],[1,1],[0,1],[0,0]]]}`},
		{"ring with positions that round to one", orb.Polygon{{{0, 0}, {1, 0}, {1, 1e-14}, {1, 1}, {1e-14, 0}}},
			`{"type":"Polygon","coordinates":[[[0,0],[1,0],[1,1],[0,0]]]}`},
		{"hole that runs as its shell", orb.Polygon{square, {{.2, .2}, {.4, .2}, {.4, .4}, {.2, .2}}},
			`{"type":"Polygon","coordinates":[[[0,0],[1,0],[1,1],[0,1],[0,0]],[[0.2,0.2],[0.4,0.4],[0.4,0.2],[0.2,0.2]]]}`},
		{"hole that vanishes", orb.Polygon{square, {{.2, .2}, {.2 + 1e-14, .2}, {.2, .2 + 1e-14}, {.2, .2}}},
			`{"type":"Polygon","coordinates":[[[0,0],[1,0],[1,1],[0,1],[0,0]]]}`},
		{"shell that vanishes", orb.MultiPolygon{{{{.2, .2}, {.2, .2}}, square}, {square}},
			`{"type":"MultiPolygon","coordinates":[[[[0,0],[1,0],[1,1],[0,1],[0,0]]]]}`},
		{"nothing left", orb.Polygon{{}}, `null`},
		{"ring", square, `{"type":"Polygon","coordinates":[[[0,0],[1,0],[1,1],[0,1],[0,0]]]}`},
		{"bound", orb.Bound{Min: orb.Point{0, 0}, Max: orb.Point{1, 1}}, `{"type":"Polygon","coordinates":[[[0,0],[1,0],[1,1],[0,1],[0,0]]]}`},
		{"collection", orb.Collection{orb.Point{1, 2}, nil, orb.LineString{}}, `{"type":"GeometryCollection","geometries":[{"type":"Point","coordinates":[1,2]}]}`},
		{"past the antimeridian", orb.LineString{{179, 0}, {180.5, 0}}, `{"type":"LineString","coordinates":[[179,0],[-179.5,0]]}`},
	} {
		t.Run(tt.name, func(t *testing.T) {
			got := written(t, lonely(tt.geometry))
			want := collection(`{"type":"Feature","properties":null,"geometry":`+tt.want+`}`) + "\n"
			if got != want {
				t.Errorf("got %swant %s", got, want)
			}
			for _, p := range readOne(t, got).Problems {
				if p.Code != "geometry_missing" && p.Code != "decimals_few" {
					t.Errorf("reads back with %v", p)
				}
			}
		})
	}
}

func TestWriteOffTheGlobe(t *testing.T) {
	for _, p := range []orb.Point{{math.NaN(), 0}, {0, math.Inf(1)}, {0, 90.5}, {361, 0}} {
		err := lonely(orb.MultiPoint{{0, 0}, p}).WriteGeoJSON(&bytes.Buffer{})
		if err == nil || !strings.HasPrefix(err.Error(), "x: features[0]: position [") {
			t.Errorf("%v: got error %v", p, err)
		}
	}
}

// TestChangedFeature: what was changed is written anew, the rest as it was.
func TestChangedFeature(t *testing.T) {
	c := readOne(t, `{"type":"FeatureCollection","bbox":[1,2,1,2],"site":{ "id" : "s" },"features":[`+
		`{"by":"hand","bbox":[1,2,1,2],"geometry":{"type":"Point","coordinates":[1.0,2,3]},"id":7,"type":"Feature","properties":{"b":1.50,"a":"\u00e9"}},`+
		`{"bbox":[1,2,1,2],"type":"Feature","properties":{},"geometry":`+point+`}]}`)
	c.Features[0].Properties.Set("kind", "tree")
	c.Features[1].Geometry = orb.Point{5, 6}
	c.SetMember("site", map[string]int{"revision": 2})
	c.SetMember("summary", nil)
	c.Features = append(c.Features, NewFeature(c.Features[0].Properties, orb.Point{7, 8}))
	c.Features = append(c.Features, &Feature{})
	var b bytes.Buffer
	if err := c.WriteGeoJSON(&b); err != nil {
		t.Fatal(err)
	}
	want := `{"type":"FeatureCollection","site":{"revision":2},"summary":null,"features":[
{"by":"hand","bbox":[1,2,1,2],"geometry":{"type":"Point","coordinates":[1.0,2,3]},"id":7,"type":"Feature","properties":{"b":1.50,"a":"\u00e9","kind":"tree"}},
{"type":"Feature","properties":{},"geometry":{"type":"Point","coordinates":[5,6]}},
{"type":"Feature","properties":{"b":1.50,"a":"\u00e9","kind":"tree"},"geometry":{"type":"Point","coordinates":[7,8]}},
{"type":"Feature","properties":null,"geometry":null}
]}
`
	if b.String() != want {
		t.Errorf("got\n%swant\n%s", &b, want)
	}
}

func TestWriteWithoutFeatures(t *testing.T) {
	var b bytes.Buffer
	if err := new(Collection).WriteGeoJSON(&b); err != nil {
		t.Fatal(err)
	}
	if got, want := b.String(), `{"type":"FeatureCollection","features":[]}`+"\n"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
}

type fullDisk struct{}

func (fullDisk) Write([]byte) (int, error) { return 0, errors.New("disk full") }

func TestWriteError(t *testing.T) {
	if err := readOne(t, string(tracedSite(400))).WriteGeoJSON(fullDisk{}); err == nil || err.Error() != "disk full" {
		t.Errorf("got error %v", err)
	}
}
