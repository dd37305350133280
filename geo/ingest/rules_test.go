package ingest

import (
	"bytes"
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/paulmach/orb"
	"pgregory.net/rapid"
)

// readAll reads every site of a text called x.
func readAll(text string) []*Collection {
	return slices.Collect(GeoJSON(strings.NewReader(text), "x", Limits{}))
}

// readOne reads a text that must hold one site.
func readOne(t rapid.TB, text string) *Collection {
	t.Helper()
	sites := readAll(text)
	if len(sites) != 1 {
		t.Fatalf("got %d sites, want 1, of %.200s", len(sites), text)
	}
	return sites[0]
}

// said gives problems as lines: severity, code, message.
func said(problems []Problem) []string {
	var lines []string
	for _, p := range problems {
		lines = append(lines, fmt.Sprintf("%v %s: %v", p.Severity, p.Code, p))
	}
	return lines
}

func checkSaid(t *testing.T, problems []Problem, want ...string) {
	t.Helper()
	if got := said(problems); !slices.Equal(got, want) {
		t.Errorf("got problems\n\t%s\nwant\n\t%s", strings.Join(got, "\n\t"), strings.Join(want, "\n\t"))
	}
}

// written gives a site as text on one line.
func written(t rapid.TB, c *Collection) string {
	t.Helper()
	var b bytes.Buffer
	if err := c.WriteGeoJSONLine(&b); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

// geometryRules are geometries and what is said of each; repaired is what is
// written back, empty if that is the geometry as it stands.
var geometryRules = []struct {
	name, geometry string
	want           []string
	repaired       string
}{
	{name: "point", geometry: `{"type":"Point","coordinates":[1,2]}`},
	{name: "numbers keep their spelling", geometry: `{"type":"Point","coordinates":[1.50,-2e-1,0.0,7]}`},
	{name: "multipoint", geometry: `{"type":"MultiPoint","coordinates":[[1,2],[1,2]]}`},
	{name: "line", geometry: `{"type":"LineString","coordinates":[[1,2],[3,4]]}`},
	{name: "lines", geometry: `{"type":"MultiLineString","coordinates":[[[1,2],[3,4]],[[5,6],[7,8]]]}`},
	{name: "polygon with a hole", geometry: `{"type":"Polygon","coordinates":[[[0,0],[9,0],[9,9],[0,0]],[[2,1],[3,2],[3,1],[2,1]]]}`},
	{name: "polygons", geometry: `{"type":"MultiPolygon","coordinates":[[[[0,0],[1,0],[1,1],[0,0]]],[[[5,5],[6,5],[6,6],[5,5]]]]}`},
	{name: "collection", geometry: `{"type":"GeometryCollection","geometries":[{"type":"Point","coordinates":[1,2]}]}`},
	{name: "members of a geometry live on", geometry: `{"bbox":[1,2,1,2],"type":"Point","source":"tape","coordinates":[1,2]}`},
	{name: "an even figure of eight is not judged here", geometry: `{"type":"Polygon","coordinates":[[[0,0],[1,1],[1,0],[0,1],[0,0]]]}`},
	{name: "nor is one that is even but for rounding", geometry: `{"type":"Polygon","coordinates":[[[0.5,0.9],[0.8,1.9],[0.5,0.4],[0.6,1.4],[0.2,0.4],[0.5,0.9]]]}`},
	{name: "nor is its reverse", geometry: `{"type":"Polygon","coordinates":[[[0.5,0.9],[0.2,0.4],[0.6,1.4],[0.5,0.4],[0.8,1.9],[0.5,0.9]]]}`},
	{name: "across the antimeridian", geometry: `{"type":"Polygon","coordinates":[[[179,0],[-179,0],[-179,1],[179,1],[179,0]]]}`},

	{name: "unclosed", geometry: `{"type":"Polygon","coordinates":[[[0,0,5],[1,0,6],[1,1,7]]]}`,
		want:     []string{`warning ring_unclosed: x: features[0]: ring is not closed, closed it near [0, 0]`},
		repaired: `{"type":"Polygon","coordinates":[[[0,0,5],[1,0,6],[1,1,7],[0,0,5]]]}`},
	{name: "clockwise shell", geometry: `{"type":"Polygon","coordinates":[[[0,0,5],[1,1.0,6],[1,0,7],[0,0,8]]],"by":"hand"}`,
		want:     []string{`warning ring_winding: x: features[0]: ring runs the wrong way round, turned it near [0, 0]`},
		repaired: `{"type":"Polygon","coordinates":[[[0,0,8],[1,0,7],[1,1.0,6],[0,0,5]]],"by":"hand"}`},
	{name: "shell and hole wrong", geometry: `{"type":"Polygon","coordinates":[[[0,0],[9,9],[9,0],[0,0]],[[2,1],[3,1],[3,2],[2,1]]]}`,
		want:     []string{`warning ring_winding: x: features[0]: ring runs the wrong way round, turned it (2 rings) near [0, 0]`},
		repaired: `{"type":"Polygon","coordinates":[[[0,0],[9,0],[9,9],[0,0]],[[2,1],[3,2],[3,1],[2,1]]]}`},
	{name: "clockwise across the antimeridian", geometry: `{"type":"Polygon","coordinates":[[[179,0],[179,1],[-179,1],[-179,0],[179,0]]]}`,
		want:     []string{`warning ring_winding: x: features[0]: ring runs the wrong way round, turned it near [179, 0]`},
		repaired: `{"type":"Polygon","coordinates":[[[179,0],[-179,0],[-179,1],[179,1],[179,0]]]}`},
	{name: "clockwise across the antimeridian from the east", geometry: `{"type":"Polygon","coordinates":[[[-179,0],[179,0],[179,1],[-179,1],[-179,0]]]}`,
		want:     []string{`warning ring_winding: x: features[0]: ring runs the wrong way round, turned it near [-179, 0]`},
		repaired: `{"type":"Polygon","coordinates":[[[-179,0],[-179,1],[179,1],[179,0],[-179,0]]]}`},
	{name: "repeated positions", geometry: `{"type":"Polygon","coordinates":[[[0,0],[1,0],[1,0,3],[1,0],[1,1],[0,0]]]}`,
		want:     []string{`warning position_repeated: x: features[0]: position is given twice in a row, dropped the second (2 times) near [1, 0]`},
		repaired: `{"type":"Polygon","coordinates":[[[0,0],[1,0],[1,1],[0,0]]]}`},
	{name: "repeated position of a line", geometry: `{"type":"LineString","coordinates":[[0,0],[0,0],[1,0]]}`,
		want:     []string{`warning position_repeated: x: features[0]: position is given twice in a row, dropped the second near [0, 0]`},
		repaired: `{"type":"LineString","coordinates":[[0,0],[1,0]]}`},
	{name: "only the second polygon needs repair", geometry: `{"type":"MultiPolygon","coordinates":[ [[[0,0],[1,0],[1,1],[0,0]]], [[[5,5],[6,5],[6,6]]] ]}`,
		want:     []string{`warning ring_unclosed: x: features[0]: ring is not closed, closed it near [5, 5]`},
		repaired: `{"type":"MultiPolygon","coordinates":[[[[0,0],[1,0],[1,1],[0,0]]],[[[5,5],[6,5],[6,6],[5,5]]]]}`},
	{name: "repair within a collection", geometry: `{"type":"GeometryCollection","geometries":[{"type":"Point","coordinates":[1,2]},{"type":"Polygon","coordinates":[[[0,0],[1,0],[1,1]]]}]}`,
		want:     []string{`warning ring_unclosed: x: features[0]: ring is not closed, closed it near [0, 0]`},
		repaired: `{"type":"GeometryCollection","geometries":[{"type":"Point","coordinates":[1,2]},{"type":"Polygon","coordinates":[[[0,0],[1,0],[1,1],[0,0]]]}]}`},
	{name: "past the antimeridian", geometry: `{"type":"Polygon","coordinates":[[[179.5,0],[180.5,0,4],[180.5,1],[179.5,1],[179.5,0]]]}`,
		want:     []string{`warning longitude_wrapped: x: features[0]: longitude 180.5 is outside -180..180, took off one turn (2 positions) near [180.5, 0]`},
		repaired: `{"type":"Polygon","coordinates":[[[179.5,0],[-179.5,0,4],[-179.5,1],[179.5,1],[179.5,0]]]}`},
	{name: "point past the antimeridian to the west", geometry: `{"type":"Point","coordinates":[-181.25,2,3]}`,
		want:     []string{`warning longitude_wrapped: x: features[0]: longitude -181.25 is outside -180..180, took off one turn near [-181.25, 2]`},
		repaired: `{"type":"Point","coordinates":[178.75,2,3]}`},
	{name: "line past the antimeridian", geometry: `{"type":"LineString","coordinates":[[180,2],[359.9,2]]}`,
		want:     []string{`warning longitude_wrapped: x: features[0]: longitude 359.9 is outside -180..180, took off one turn near [359.9, 2]`},
		repaired: `{"type":"LineString","coordinates":[[180,2],[-0.1,2]]}`},
	{name: "points past the antimeridian", geometry: `{"type":"MultiPoint","coordinates":[[1,2],[190,2]]}`,
		want:     []string{`warning longitude_wrapped: x: features[0]: longitude 190 is outside -180..180, took off one turn near [190, 2]`},
		repaired: `{"type":"MultiPoint","coordinates":[[1,2],[-170,2]]}`},

	{name: "null", geometry: `null`,
		want: []string{`warning geometry_missing: x: features[0]: has no geometry, skipped`}},
	{name: "empty", geometry: `{"type":"Polygon","coordinates":[]}`,
		want: []string{`warning geometry_empty: x: features[0]: has an empty geometry, skipped`}},
	{name: "empty ring only", geometry: `{"type":"Polygon","coordinates":[[]]}`,
		want: []string{`warning geometry_empty: x: features[0]: has an empty geometry, skipped`}},
	{name: "null coordinates", geometry: `{"type":"Point","coordinates":null}`,
		want: []string{`warning geometry_empty: x: features[0]: has an empty geometry, skipped`}},
	{name: "empty collection", geometry: `{"type":"GeometryCollection","geometries":[]}`,
		want: []string{`warning geometry_empty: x: features[0]: has an empty geometry, skipped`}},
	{name: "type twice", geometry: `{"type":"Polygon","type":"Point","coordinates":[1,2]}`,
		want:     []string{`warning member_repeated: x: features[0]: member "type" is given twice, took the last`},
		repaired: `{"type":"Polygon","type":"Point","coordinates":[1,2]}`},

	{name: "one number", geometry: `{"type":"LineString","coordinates":[[1,2],[3]]}`,
		want: []string{`error position_short: x: features[0]: position has one number, needs longitude and latitude at coordinates[1]`}},
	{name: "no number", geometry: `{"type":"MultiPoint","coordinates":[[1,2],[]]}`,
		want: []string{`error position_short: x: features[0]: position has no numbers, needs longitude and latitude at coordinates[1]`}},
	{name: "string for a number", geometry: `{"type":"Point","coordinates":["1",2]}`,
		want: []string{`error position_text: x: features[0]: position holds "1" in place of a number at coordinates`}},
	{name: "null for a number", geometry: `{"type":"Polygon","coordinates":[[[0,0],[1,null],[null,1],[0,0]]]}`,
		want: []string{`error position_text: x: features[0]: position holds null in place of a number at coordinates[0][1] (2 places)`}},
	{name: "null for a height", geometry: `{"type":"Point","coordinates":[1,2,null]}`,
		want: []string{`error position_text: x: features[0]: position holds null in place of a number at coordinates`}},
	{name: "number beyond doubles", geometry: `{"type":"Point","coordinates":[1e999,2]}`,
		want: []string{`error number_range: x: features[0]: number 1e999 is too large at coordinates`}},
	{name: "too shallow", geometry: `{"type":"Polygon","coordinates":[[0,0],[1,0]]}`,
		want: []string{`error coordinates_shape: x: features[0]: coordinates are nested wrongly (a Polygon is a list of rings, each a list of positions) at coordinates[0][0] (4 places)`}},
	{name: "too deep", geometry: `{"type":"Point","coordinates":[[1,2]]}`,
		want: []string{`error coordinates_shape: x: features[0]: coordinates are nested wrongly (a Point is one position) at coordinates`}},
	{name: "coordinates an object", geometry: `{"type":"Polygon","coordinates":{}}`,
		want: []string{
			`error coordinates_shape: x: features[0]: coordinates are nested wrongly (a Polygon is a list of rings, each a list of positions) at coordinates`,
			`error polygon_empty: x: features[0]: polygon has no rings at coordinates`}},
	{name: "swapped axes", geometry: `{"type":"LineString","coordinates":[[44.9,-93.1],[44.8,-93.2]]}`,
		want: []string{`error axes_swapped: x: features[0]: latitude -93.1 is outside -90..90: are longitude and latitude swapped? (2 positions) near [44.9, -93.1]`}},
	{name: "latitude", geometry: `{"type":"Point","coordinates":[100,91]}`,
		want: []string{`error latitude_range: x: features[0]: latitude 91 is outside -90..90 near [100, 91]`}},
	{name: "longitude", geometry: `{"type":"Point","coordinates":[361,1]}`,
		want: []string{`error longitude_range: x: features[0]: longitude 361 is outside -180..180 near [361, 1]`}},
	{name: "projected", geometry: `{"type":"Point","coordinates":[482345.123,4971234.5]}`,
		want: []string{`error degrees_projected: x: features[0]: 482345.123 looks like projected metres, not degrees near [482345.123, 4971234.5]`}},
	{name: "line of one point", geometry: `{"type":"MultiLineString","coordinates":[[[1,2],[3,4]],[[1,2]]]}`,
		want: []string{`error line_short: x: features[0]: line has fewer than two different points at coordinates[1]`}},
	{name: "two different points", geometry: `{"type":"Polygon","coordinates":[[[0,0],[1,1],[0,0],[0,0]]]}`,
		want: []string{
			`warning position_repeated: x: features[0]: position is given twice in a row, dropped the second near [0, 0]`,
			`error ring_short: x: features[0]: ring has only two different points near [0, 0]`}},
	{name: "one point", geometry: `{"type":"Polygon","coordinates":[[[1,2]]]}`,
		want: []string{
			`warning ring_unclosed: x: features[0]: ring is not closed, closed it near [1, 2]`,
			`error ring_short: x: features[0]: ring has only one point near [1, 2]`}},
	{name: "on one line", geometry: `{"type":"Polygon","coordinates":[[[0.1,0.3],[0.2,0.6],[0.3,0.9],[0.1,0.3]]]}`,
		want: []string{`error ring_flat: x: features[0]: ring encloses nothing, its points are all on one line near [0.1, 0.3]`}},
	{name: "empty hole", geometry: `{"type":"Polygon","coordinates":[[[0,0],[1,0],[1,1],[0,0]],[]]}`,
		want: []string{`error ring_short: x: features[0]: ring has no points at coordinates[1]`}},
	{name: "empty polygon among others", geometry: `{"type":"MultiPolygon","coordinates":[[],[[[0,0],[1,0],[1,1],[0,0]]]]}`,
		want: []string{`error polygon_empty: x: features[0]: polygon has no rings at coordinates[0]`}},
	{name: "unknown type", geometry: `{"type":"Circle","coordinates":[1,2]}`,
		want: []string{`error geometry_type: x: features[0]: geometry type "Circle" is unknown`}},
	{name: "type not a string", geometry: `{"type":[],"coordinates":[1,2]}`,
		want: []string{`error geometry_type: x: features[0]: geometry type an array is unknown`}},
	{name: "no type", geometry: `{"coordinates":[1,2]}`,
		want: []string{`error geometry_type: x: features[0]: geometry has no type`}},
	{name: "no coordinates", geometry: `{"type":"Point"}`,
		want: []string{`error coordinates_missing: x: features[0]: geometry has no coordinates`}},
	{name: "not an object", geometry: `[1,2]`,
		want: []string{`error geometry_object: x: features[0]: geometry is an array, not an object`}},
	{name: "geometries an object", geometry: `{"type":"GeometryCollection","geometries":{}}`,
		want: []string{`error coordinates_shape: x: features[0]: geometries is an object, not an array`}},
	{name: "null within a collection", geometry: `{"type":"GeometryCollection","geometries":[null]}`,
		want: []string{`error geometry_object: x: features[0]: geometry is null, not an object`}},
	{name: "collections too deep", geometry: strings.Repeat(`{"type":"GeometryCollection","geometries":[`, 9) + `1` + strings.Repeat(`]}`, 9),
		want: []string{`error geometry_nested: x: features[0]: geometry collections stand in each other too deep`}},
	{name: "coordinate system of its own", geometry: `{"type":"Point","crs":{"type":"name","properties":{"name":"EPSG:26915"}},"coordinates":[1,2]}`,
		want: []string{`error crs_unknown: x: features[0]: is in the coordinate system "EPSG:26915", not in WGS 84 longitude and latitude`}},
}

func inCollection(geometry string) string {
	return `{"type":"FeatureCollection","features":[` +
		`{"type":"Feature","properties":null,"geometry":` + geometry + `},` +
		`{"type":"Feature","properties":null,"geometry":{"type":"Point","coordinates":[7,7]}}]}` + "\n"
}

func TestGeometryRules(t *testing.T) {
	for _, tt := range geometryRules {
		t.Run(tt.name, func(t *testing.T) {
			c := readOne(t, inCollection(tt.geometry))
			checkSaid(t, c.Problems, tt.want...)
			if len(c.Features) != 2 || c.Features[1].Geometry == nil {
				t.Fatalf("the next feature is lost: %v", c.Features)
			}
			if c.Refused() != (c.Features[0].Geometry == nil && !strings.Contains(strings.Join(tt.want, ""), "skipped")) {
				t.Errorf("refused is %v, but the geometry is %v", c.Refused(), c.Features[0].Geometry)
			}
			want := tt.repaired
			if want == "" {
				want = tt.geometry
			}
			if got := written(t, c); got != inCollection(want) {
				t.Errorf("wrote\n\t%swant\n\t%s", got, inCollection(want))
			}
		})
	}
}

// TestGeometryValues: positions, parts and holes arrive where they belong.
func TestGeometryValues(t *testing.T) {
	for _, tt := range []struct {
		text string
		want orb.Geometry
	}{
		{`{"type":"Point","coordinates":[1.5,-2,9]}`, orb.Point{1.5, -2}},
		{`{"coordinates": [ [ 1 , 2 ] , [3,4] ], "type":"MultiPoint"}`, orb.MultiPoint{{1, 2}, {3, 4}}},
		{`{"type":"LineString","coordinates":[[1,2],[3,4],[1,2]]}`, orb.LineString{{1, 2}, {3, 4}, {1, 2}}},
		{`{"type":"MultiLineString","coordinates":[[[1,2],[3,4]],[[5,6],[7,8]]]}`, orb.MultiLineString{{{1, 2}, {3, 4}}, {{5, 6}, {7, 8}}}},
		{`{"type":"Polygon","coordinates":[[[0,0],[9,0],[9,9]],[[2,1],[3,1],[3,2],[2,1]]]}`,
			orb.Polygon{{{0, 0}, {9, 0}, {9, 9}, {0, 0}}, {{2, 1}, {3, 2}, {3, 1}, {2, 1}}}},
		{`{"type":"MultiPolygon","coordinates":[[[[0,0],[1,0],[1,1],[0,0]]],[[[5,5],[6,5],[6,6],[5,5]]]]}`,
			orb.MultiPolygon{{{{0, 0}, {1, 0}, {1, 1}, {0, 0}}}, {{{5, 5}, {6, 5}, {6, 6}, {5, 5}}}}},
		{`{"type":"GeometryCollection","geometries":[` + point + `,{"type":"Point","coordinates":[]},{"type":"GeometryCollection","geometries":[{"type":"Point","coordinates":[181,4]}]}]}`,
			orb.Collection{orb.Point{1, 2}, orb.Collection{orb.Point{-179, 4}}}},
	} {
		if got := readOne(t, tt.text).Features[0].Geometry; !orb.Equal(got, tt.want) {
			t.Errorf("%s: got %v, want %v", tt.text, got, tt.want)
		}
	}
}

// TestRepairedReadsBack: what was repaired reads back as the same geometry,
// and nothing is left to repair.
func TestRepairedReadsBack(t *testing.T) {
	for _, tt := range geometryRules {
		c := readOne(t, inCollection(tt.geometry))
		if tt.repaired == "" || c.Refused() {
			continue
		}
		again := readOne(t, written(t, c))
		sameGeometries(t, again, c)
		for _, p := range again.Problems {
			if p.Code != "member_repeated" {
				t.Errorf("%s: read back: %v", tt.name, p)
			}
		}
	}
}
