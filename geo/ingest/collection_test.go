package ingest

import (
	"crypto/sha256"
	"strings"
	"testing"

	"github.com/paulmach/orb"
)

const point = `{"type":"Point","coordinates":[1,2]}`

// feature is a feature object at point with more members before its geometry.
func feature(members string) string {
	return `{"type":"Feature",` + members + `,"geometry":` + point + `}`
}

func collection(features ...string) string {
	return `{"type":"FeatureCollection","features":[` + strings.Join(features, ",") + `]}`
}

// documentRules are whole documents and what is said of each.
var documentRules = []struct {
	name, text string
	features   int
	want       []string
}{
	{"collection", collection(feature(`"properties":{}`)), 1, nil},
	{"collection without features", collection(), 0, nil},
	{"feature", feature(`"properties":{}`), 1, nil},
	{"geometry", point, 1, nil},
	{"byte order mark and blank lines", "\ufeff\r\n \n" + point + "\r\n\n", 1, nil},
	{"pretty-printed", "{\n \"type\": \"Point\",\n \"coordinates\": [\n1,\n2]\n}\n", 1, nil},
	{"properties missing", `{"type":"Feature","geometry":` + point + `}`, 1, nil},
	{"escaped names", `{"t\u0079pe":"FeatureCollection","features":[]}`, 0, nil},
	{"CRS84", `{"type":"FeatureCollection","crs":{"type":"name","properties":{"name":"urn:ogc:def:crs:OGC:1.3:CRS84"}},"features":[]}`, 0,
		[]string{`note crs_old: x: names its coordinate system ("urn:ogc:def:crs:OGC:1.3:CRS84"), which is no longer needed`}},
	{"EPSG 4326", `{"type":"FeatureCollection","crs":{"type":"name","properties":{"name":"urn:ogc:def:crs:EPSG::4326"}},"features":[]}`, 0,
		[]string{`note crs_old: x: names its coordinate system ("urn:ogc:def:crs:EPSG::4326"), which is no longer needed`}},
	{"EPSG 4979 as address", `{"type":"FeatureCollection","crs":{"type":"name","properties":{"name":"http://www.opengis.net/def/crs/EPSG/0/4979"}},"features":[]}`, 0,
		[]string{`note crs_old: x: names its coordinate system ("http://www.opengis.net/def/crs/EPSG/0/4979"), which is no longer needed`}},
	{"no coordinate system", `{"type":"FeatureCollection","crs":null,"features":[]}`, 0, nil},
	{"projected coordinate system", `{"type":"FeatureCollection","crs":{"type":"name","properties":{"name":"urn:ogc:def:crs:EPSG::3857"}},"features":[]}`, 0,
		[]string{`error crs_unknown: x: is in the coordinate system "urn:ogc:def:crs:EPSG::3857", not in WGS 84 longitude and latitude`}},
	{"linked coordinate system", `{"type":"FeatureCollection","crs":{"type":"link"},"features":[]}`, 0,
		[]string{`error crs_unknown: x: has a coordinate system without a name, not in WGS 84 longitude and latitude`}},
	{"4326 of nobody", `{"type":"FeatureCollection","crs":{"properties":{"name":"4326"}},"features":[]}`, 0,
		[]string{`error crs_unknown: x: is in the coordinate system "4326", not in WGS 84 longitude and latitude`}},

	{"id of its own", collection(feature(`"id":"a","properties":{}`), feature(`"id":"a","properties":{"name":"back bed"}`)), 2,
		[]string{`warning id_repeated: x: features[1] "back bed": has the id of an earlier feature, features[0] "a"`}},
	{"id among the properties", collection(feature(`"id":"a","properties":{"id":7}`), feature(`"id":7,"properties":null`)), 2,
		[]string{`warning id_repeated: x: features[1] "7": has the id of an earlier feature, features[0] "7"`}},
	{"empty ids", collection(feature(`"id":""`), feature(`"id":""`), feature(`"id":null`)), 3, nil},
	{"id of a wrong type", collection(feature(`"id":[1]`), feature(`"id":true`)), 2, []string{
		`warning id_type: x: features[0]: id is an array, not a string or a number, ignored it`,
		`warning id_type: x: features[1]: id is true, not a string or a number, ignored it`}},
	{"member twice", `{"type":"FeatureCollection","site":1,"site":2,"features":[` + feature(`"properties":{"a":1,"a":2}`) + `]}`, 1, []string{
		`warning member_repeated: x: member "site" is given twice, took the last`,
		`warning member_repeated: x: features[0]: member "a" is given twice, took the last`}},

	{"features missing", `{"type":"FeatureCollection"}`, 0, []string{`error features_missing: x: collection has no features`}},
	{"features an object", `{"type":"FeatureCollection","features":{}}`, 0,
		[]string{`error features_type: x: features is an object, not an array`}},
	{"feature a number", collection(`1`, feature(`"id":1`)), 1,
		[]string{`error feature_type: x: features[0]: feature is 1, not an object`}},
	{"feature without type", collection(`{"geometry":` + point + `}`), 1,
		[]string{`error feature_type: x: features[0]: has no type, must be "Feature"`}},
	{"feature of another type", collection(`{"type":"feature","geometry":` + point + `}`), 1,
		[]string{`error feature_type: x: features[0]: type is "feature", must be "Feature"`}},
	{"geometry for a feature", collection(point), 1, []string{
		`error feature_type: x: features[0]: is a bare Point, must be a "Feature" around it`,
		`warning geometry_missing: x: features[0]: has no geometry, skipped`}},
	{"properties a string", collection(feature(`"properties":"none"`)), 1,
		[]string{`error properties_type: x: features[0]: properties is "none", not an object`}},
	{"every problem of a file", collection(feature(`"properties":1`), `2`, `{"type":"Feature","geometry":{"type":"Point","coordinates":[1]}}`), 2, []string{
		`error properties_type: x: features[0]: properties is 1, not an object`,
		`error feature_type: x: features[1]: feature is 2, not an object`,
		`error position_short: x: features[2]: position has one number, needs longitude and latitude at coordinates`}},
	{"control characters stay out of messages", collection(feature(`"id":1,"properties":{"name":"bed\u001b[2J\n2"}`), feature(`"id":1,"properties":{"name":"bed\u001b[2J\n2"}`)), 2,
		[]string{`warning id_repeated: x: features[1] "bed\x1b[2J\n2": has the id of an earlier feature, features[0] "bed\x1b[2J\n2"`}},
}

func TestDocumentRules(t *testing.T) {
	for _, tt := range documentRules {
		t.Run(tt.name, func(t *testing.T) {
			c := readOne(t, tt.text)
			checkSaid(t, c.Problems, tt.want...)
			if len(c.Features) != tt.features {
				t.Errorf("got %d features, want %d", len(c.Features), tt.features)
			}
			if c.Digest != sha256.Sum256([]byte(tt.text)) {
				t.Errorf("digest is not that of the input")
			}
		})
	}
}

func TestFeatureAsRead(t *testing.T) {
	c := readOne(t, `{"type":"FeatureCollection","site":{"id":"s1"},"features":[null,`+
		feature(`"id":12.0,"properties":{"name":"back bed","kind":"bed"}`)+`],"by":"hand"}`)
	f := c.Features[0]
	if f.Index != 1 || f.ID != "12.0" || f.Label() != "back bed" || !orb.Equal(f.Geometry, orb.Point{1, 2}) {
		t.Errorf("got index %d, id %q, label %q, geometry %v", f.Index, f.ID, f.Label(), f.Geometry)
	}
	if got, want := c.Place(f).String(), `x: features[1] "back bed"`; got != want {
		t.Errorf("place is %s, want %s", got, want)
	}
	if site, _ := c.Member("site"); string(site) != `{"id":"s1"}` {
		t.Errorf("member site is %s", site)
	}
	if len(c.Members) != 2 || c.Members[1].Name != "by" {
		t.Errorf("got members %v", c.Members)
	}
	if _, ok := c.Member("type"); ok {
		t.Error("type is among the members")
	}
}

func TestSetWithin(t *testing.T) {
	for _, tt := range []struct{ name, members, want string }{
		{"missing", ``, `"site":{"revision":2},`},
		{"no object", `"site":"a1",`, `"site":{"revision":2},`},
		{"empty", `"site":{},`, `"site":{"revision":2},`},
		{"in its place", `"site":{"id":"a1","revision":1,"access":{"gate": "east"}},"more":[1, 2],`, `"site":{"id":"a1","revision":2,"access":{"gate":"east"}},"more":[1,2],`},
		{"at the end", `"site":{"id":"a1","unheard":[null]},`, `"site":{"id":"a1","unheard":[null],"revision":2},`},
		{"given twice", `"site":{"revision":1,"id":"a1","revision":7},`, `"site":{"revision":2,"id":"a1"},`},
	} {
		t.Run(tt.name, func(t *testing.T) {
			for c := range GeoJSON(strings.NewReader(`{"type":"FeatureCollection",`+tt.members+`"features":[]}`), "x", DefaultLimits) {
				c.SetWithin("site", "revision", 2)
				var b strings.Builder
				if err := c.WriteGeoJSON(&b); err != nil {
					t.Fatal(err)
				}
				if want := `{"type":"FeatureCollection",` + tt.want + "\"features\":[]}\n"; b.String() != want {
					t.Errorf("%s, want %s", b.String(), want)
				}
			}
		})
	}
}
