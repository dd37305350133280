package ingest

import (
	"bytes"
	"fmt"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// mapped reads a text called x that must be one map extract.
func mapped(t rapid.TB, text string, limits Limits) *Collection {
	t.Helper()
	sites := slices.Collect(OSM(strings.NewReader(text), "x", limits))
	if len(sites) != 1 {
		t.Fatalf("got %d sites, want 1", len(sites))
	}
	return sites[0]
}

// drawn gives the features of a site as lines: id, geometry, other properties.
func drawn(c *Collection) []string {
	var lines []string
	for _, f := range c.Features {
		coordinates := appendCoordinates(nil, f.Geometry)
		rest := f.Properties.Clone()
		rest.Delete("id")
		lines = append(lines, fmt.Sprintf("%s %s %s %s", f.ID, f.Geometry.GeoJSONType(), coordinates, appendObject(nil, rest.members)))
	}
	return lines
}

// checkMapped compares what was read with the features and problems wanted.
func checkMapped(t *testing.T, c *Collection, features, problems []string) {
	t.Helper()
	if got := drawn(c); !slices.Equal(got, features) {
		t.Errorf("got features\n\t%s\nwant\n\t%s", strings.Join(got, "\n\t"), strings.Join(features, "\n\t"))
	}
	checkSaid(t, c.Problems, problems...)
	for i, f := range c.Features {
		if id, _ := f.Properties.Text("id"); id != f.ID || f.Index != i {
			t.Errorf("feature %d has the index %d, the id %q and the property %q", i, f.Index, f.ID, id)
		}
	}
	if !c.Refused() {
		checkWrites(t, c)
	}
}

// corners are nodes 1 to 9 of a grid of 3 by 3, from the south-west, row by
// row, and 11 to 14, a square inside it.
const corners = `
<node id="1" lon="0" lat="0"/><node id="2" lon="0.001" lat="0"/><node id="3" lon="0.002" lat="0"/>
<node id="4" lon="0" lat="0.001"/><node id="5" lon="0.001" lat="0.001"/><node id="6" lon="0.002" lat="0.001"/>
<node id="7" lon="0" lat="0.002"/><node id="8" lon="0.001" lat="0.002"/><node id="9" lon="0.002" lat="0.002"/>
<node id="11" lon="0.0004" lat="0.0004"/><node id="12" lon="0.0006" lat="0.0004"/><node id="13" lon="0.0006" lat="0.0006"/><node id="14" lon="0.0004" lat="0.0006"/>
`

// wayXML writes a way; tags are key=value, separated by blanks.
func wayXML(id int, nodes, tags string) string {
	return fmt.Sprintf(`<way id="%d">%s%s</way>`, id, refsXML(nodes), tagsXML(tags))
}

func refsXML(nodes string) string {
	var b strings.Builder
	for _, id := range strings.Fields(nodes) {
		fmt.Fprintf(&b, `<nd ref="%s"/>`, id)
	}
	return b.String()
}

func tagsXML(tags string) string {
	var b strings.Builder
	for _, tag := range strings.Fields(tags) {
		key, value, _ := strings.Cut(tag, "=")
		fmt.Fprintf(&b, `<tag k="%s" v="%s"/>`, key, value)
	}
	return b.String()
}

// relationXML writes a relation; members are ways, as 5:outer.
func relationXML(id int, members, tags string) string {
	var b strings.Builder
	for _, m := range strings.Fields(members) {
		ref, role, _ := strings.Cut(m, ":")
		fmt.Fprintf(&b, `<member type="way" ref="%s" role="%s"/>`, ref, role)
	}
	return fmt.Sprintf(`<relation id="%d">%s%s</relation>`, id, b.String(), tagsXML(tags))
}

const lowerLeft = "[[[0,0],[0.001,0],[0.001,0.001],[0,0.001],[0,0]]]"

// mapRules are extracts and what comes of them.
var mapRules = []struct {
	name, xml          string
	features, problems []string
}{
	{name: "nothing at all"},
	{name: "vertices are no features", xml: corners},
	{name: "a tagged node", xml: `<node id="5" lon="1.5" lat="-2"><tag k="natural" v="tree"/><tag k="height" v="7"/></node>`,
		features: []string{`osm:node/5 Point [1.5,-2] {"height":"7","natural":"tree"}`}},
	{name: "a node whose tags say nothing of the thing", xml: `<node id="5" lon="1" lat="2"><tag k="created_by" v="x"/><tag k="source:name" v="x"/></node>`},
	{name: "an open way", xml: corners + wayXML(7, "1 2 5", "highway=footway"),
		features: []string{`osm:way/7 LineString [[0,0],[0.001,0],[0.001,0.001]] {"highway":"footway"}`}},
	{name: "a closed way, turned to run counter-clockwise", xml: corners + wayXML(7, "1 4 5 2 1", "landuse=grass"),
		features: []string{`osm:way/7 Polygon ` + lowerLeft + ` {"landuse":"grass"}`}},
	{name: "a way that closes at the same place but not the same node", xml: corners + `<node id="10" lon="0" lat="0"/>` + wayXML(7, "1 2 5 4 10", "landuse=grass"),
		features: []string{`osm:way/7 Polygon ` + lowerLeft + ` {"landuse":"grass"}`}},
	{name: "positions given twice", xml: corners + wayXML(7, "1 2 2 5 5 4 1", "landuse=grass"),
		features: []string{`osm:way/7 Polygon ` + lowerLeft + ` {"landuse":"grass"}`}},
	{name: "objects in any order, features by kind and id", xml: wayXML(9, "1 2", "a=1") + relationXML(3, "9", "type=route") + wayXML(-8, "2 5", "a=1") + corners + `<node id="0" lon="0" lat="0"><tag k="a" v="1"/></node>`,
		features: []string{
			`osm:node/0 Point [0,0] {"a":"1"}`,
			`osm:way/-8 LineString [[0.001,0],[0.001,0.001]] {"a":"1"}`,
			`osm:way/9 LineString [[0,0],[0.001,0]] {"a":"1"}`},
		problems: []string{`note osm_relation_other: x: 1 relation of other types left aside: 1 "route"`}},
	{name: "tags with the names of our own attributes", xml: `<node id="5" lon="1" lat="2">` + tagsXML("source=gps id=9 kind=turf tags=x species=Acer name=A sigma_m=9") + `</node>`,
		features: []string{`osm:node/5 Point [1,2] {"name":"A","species":"Acer","tags":{"id":"9","kind":"turf","sigma_m":"9","source":"gps","tags":"x"}}`}},
	{name: "of a tag given twice the last counts", xml: `<node id="5" lon="1" lat="2">` + tagsXML("b=1 a=2 b=3") + `</node>`,
		features: []string{`osm:node/5 Point [1,2] {"a":"2","b":"3"}`}},
	{name: "text in tags", xml: `<node id="5" lon="1" lat="2"><tag k="name" v="&quot;Tor&quot; &amp; Tür&#10;&lt;2&gt;"/></node>`,
		features: []string{`osm:node/5 Point [1,2] {"name":"\"Tor\" & Tür\n<2>"}`}},

	{name: "deleted objects", xml: `<node id="5" visible="false"/><way id="6" visible="false"/><node id="7" action="delete" lon="1" lat="2">` + tagsXML("a=1") + `</node>` + corners,
		problems: []string{`note osm_deleted: x: osm:node/5 is marked as deleted, left aside (3 objects)`}},
	{name: "ways without tags", xml: corners + wayXML(7, "1 2", "") + wayXML(8, "1 2", "source=x"),
		problems: []string{`note osm_untagged: x: osm:way/7 has no tags, left aside (2 ways)`}},
	{name: "a node without a place", xml: `<node id="5">` + tagsXML("a=1") + `</node><node id="6" lon="abc" lat="1"/><node id="7" lon="0x1" lat="1"/>`,
		problems: []string{`warning osm_position: x: osm:node/5 has no position, left out (3 objects)`}},
	{name: "a node off the globe", xml: `<node id="5" lon="1" lat="91">` + tagsXML("a=1") + `</node>`,
		problems: []string{`warning osm_position: x: osm:node/5 is off the globe, left out near [1, 91]`}},
	{name: "a node past the antimeridian", xml: `<node id="5" lon="180.5" lat="1">` + tagsXML("a=1") + `</node>`,
		features: []string{`osm:node/5 Point [-179.5,1] {"a":"1"}`}},
	{name: "an object without an id", xml: `<node lon="1" lat="2"/><way id="seven"/>`,
		problems: []string{`warning osm_id: x: a node has the id "", which is not a whole number, left out (2 objects)`}},
	{name: "an object given once with its tags and once with its nodes", xml: corners + `<way id="7">` + tagsXML("landuse=grass") + `</way>` + wayXML(7, "1 2 5 4 1", "") +
		`<node id="4" lon="0" lat="0.001">` + tagsXML("a=1") + `</node><node id="4" lon="0" lat="0.001"/>`,
		features: []string{`osm:node/4 Point [0,0.001] {"a":"1"}`, `osm:way/7 Polygon ` + lowerLeft + ` {"landuse":"grass"}`}},
	{name: "a node at two places", xml: `<node id="5" lon="2" lat="2">` + tagsXML("a=1") + `</node><node id="5" lon="1" lat="2"/>`,
		features: []string{`osm:node/5 Point [1,2] {"a":"1"}`},
		problems: []string{`warning osm_moved: x: osm:node/5 is given at two places, took the western one near [1, 2]`}},
	{name: "a way without its nodes", xml: wayXML(7, "", "landuse=grass") + wayXML(8, "", "landuse=grass"),
		problems: []string{`warning osm_nodes_unsaid: x: osm:way/7 came without its nodes, left out (2 ways)`}},
	{name: "what the server says", xml: `<note>made by a server</note><meta osm_base="2026-01-01T00:00:00Z"/><remark> runtime error: timed out </remark><bounds minlat="0"/><area id="3"><tag k="a" v="1"/></area>`,
		problems: []string{`warning osm_remark: x: the server that made it says: "runtime error: timed out"`}},

	{name: "an area cut at the edge", xml: corners + wayXML(7, "1 2 77 78 4 1", "landuse=grass"),
		problems: []string{`warning osm_way_cut: x: "osm:way/7": left out: is an area and lacks 2 of its 6 nodes (osm:node/77 first) near [0, 0]`}},
	{name: "a line cut at the edge", xml: corners + wayXML(7, "1 2 77 4 78 8 9", "barrier=fence") + wayXML(8, "77 1 77", "barrier=fence") + wayXML(9, "77 1 2", "barrier=fence"),
		features: []string{
			`osm:way/7 MultiLineString [[[0,0],[0.001,0]],[[0.001,0.002],[0.002,0.002]]] {"barrier":"fence"}`,
			`osm:way/9 LineString [[0,0],[0.001,0]] {"barrier":"fence"}`},
		problems: []string{
			`warning osm_line_cut: x: "osm:way/7": lacks 2 of its 7 nodes (osm:node/77 first), kept what lies between them near [0, 0]`,
			`warning osm_way_cut: x: "osm:way/8": left out: lacks 2 of its 3 nodes (osm:node/77 first) near [0, 0]`,
			`warning osm_line_cut: x: "osm:way/9": lacks 1 of its 3 nodes (osm:node/77 first), kept what lies between them near [0, 0]`}},
	{name: "ways that lead nowhere", xml: corners + wayXML(6, "1", "highway=path") + wayXML(7, "1 2 1", "building=yes") + wayXML(8, "1 2 3 1", "building=yes"),
		problems: []string{
			`warning line_short: x: "osm:way/6": left out: line has fewer than two different points near [0, 0]`,
			`warning ring_short: x: "osm:way/7": left out: ring has only two different points near [0, 0]`,
			`warning ring_flat: x: "osm:way/8": left out: ring encloses nothing, its points are all on one line near [0, 0]`}},
	{name: "a barrier round an area of the same way", xml: corners + wayXML(7, "1 2 5 4 1", "barrier=hedge landuse=grass height=2"),
		features: []string{
			`osm:way/7 Polygon ` + lowerLeft + ` {"height":"2","landuse":"grass"}`,
			`osm:way/7/barrier LineString [[0,0],[0.001,0],[0.001,0.001],[0,0.001],[0,0]] {"barrier":"hedge","height":"2","landuse":"grass"}`},
		problems: []string{`note osm_barrier: x: osm:way/7 is an area and the barrier round it, took both`}},
}

func TestMapRules(t *testing.T) {
	for _, tt := range mapRules {
		t.Run(tt.name, func(t *testing.T) {
			c := mapped(t, "<osm version='0.6'>"+tt.xml+"</osm>", Limits{})
			checkMapped(t, c, tt.features, tt.problems)
			if a, _ := c.Member("attribution"); string(a) != `"Map data © OpenStreetMap contributors, ODbL 1.0"` {
				t.Errorf("attribution is %s", a)
			}
		})
	}
}

// TestClosedWays: which closed ways are areas.
func TestClosedWays(t *testing.T) {
	for _, tt := range []struct {
		tags string
		area bool
	}{
		{"landuse=grass", true},
		{"building=yes", true},
		{"name=x", true},
		{"area=no building=yes", false},
		{"barrier=hedge", false},
		{"barrier=wall", false},
		{"barrier=no landuse=grass", true},
		{"barrier=hedge area=yes", true},
		{"highway=footway", false},
		{"highway=footway area=yes", true},
		{"highway=service amenity=parking", false},
		{"highway=platform", true},
		{"highway=no landuse=grass", true},
		{"area:highway=footway", true},
		{"railway=rail", false},
		{"railway=platform", true},
		{"waterway=stream", false},
		{"waterway=ditch", false},
		{"waterway=riverbank", true},
		{"power=line", false},
		{"power=substation", true},
		{"leisure=track", false},
		{"leisure=pitch", true},
		{"natural=tree_row", false},
		{"natural=wood", true},
		{"route=ferry", false},
		{"aerialway=gondola", false},
		{"aeroway=taxiway", false},
		{"aeroway=apron", true},
		{"golf=green", true},
		{"golf=cartpath", false},
		{"man_made=pier", true},
		{"man_made=embankment", false},
	} {
		c := mapped(t, "<osm>"+corners+wayXML(7, "1 2 5 4 1", tt.tags)+"</osm>", Limits{})
		want := "LineString"
		if tt.area {
			want = "Polygon"
		}
		if len(c.Features) != 1 || c.Features[0].Geometry.GeoJSONType() != want {
			t.Errorf("%s: got %v, want one %s", tt.tags, drawn(c), want)
		}
	}
}

// TestRead: the format is told by the content.
func TestRead(t *testing.T) {
	long := strings.Repeat(" ", 5000)
	for _, tt := range []struct{ name, text, want string }{
		{"GeoJSON", point, "1 of "},
		{"GeoJSON with a foreign member", `{"generator":"x","features":[],"elements":[],"type":"FeatureCollection"}`, "0 of "},
		{"GeoJSON that begins with something long", `{"a":"` + strings.Repeat("x", 1<<15) + `","type":"FeatureCollection","features":[]}`, "0 of "},
		{"lines of GeoJSON", point + "\n" + point, "2 of "},
		{"XML", "<osm>" + corners + wayXML(1, "1 2", "a=1") + "</osm>", "1 of "},
		{"XML after a mark, a declaration and a comment", "\ufeff<?xml version='1.0' encoding='UTF-8'?>\n<!--" + long + "-->\n<osm/>", "0 of "},
		{"JSON of a map server", `{"version":0.6,"osm3s":{},"elements":[{"type":"node","id":1,"lat":2,"lon":3,"tags":{"a":"b"}}]}`, "1 of "},
		{"PBF", string(inventedPBF(t)), "9 of "},
		{"a web page", "<!DOCTYPE html><html></html>", "0 of error format_foreign: x: is not GeoJSON but looks like a web page"},
		{"other XML", "<gpx/>", "0 of error format_foreign: x: is not GeoJSON but looks like XML"},
		{"nothing", "", "0 of error input_empty: x: is empty"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			for c := range Read(strings.NewReader(tt.text), "x", Limits{}) {
				var refusals []string
				for _, p := range c.Problems {
					if p.Severity == Refusal {
						refusals = append(refusals, said([]Problem{p})...)
					}
				}
				if got := fmt.Sprintf("%d of %s", len(c.Features), strings.Join(refusals, "\n")); got != tt.want {
					t.Errorf("got %q, want %q", got, tt.want)
				}
			}
		})
	}
}

// TestMapDigest: the digest is that of all bytes.
func TestMapDigest(t *testing.T) {
	for _, text := range []string{"<osm></osm>\n\n<!-- end -->\n", `{"elements":[]}` + "\n\n", string(inventedPBF(t))} {
		c := mapped(t, text, Limits{})
		if c.Refused() || c.Digest != digestOf([]byte(text)) {
			t.Errorf("%.20q: %v, digest %x", text, c.Problems, c.Digest)
		}
	}
}

// TestStopEarly: a caller may leave the sequence.
func TestStopEarly(t *testing.T) {
	for range OSM(strings.NewReader("<osm/>"), "x", Limits{}) {
		break
	}
	for range Read(strings.NewReader(point+"\n"+point), "x", Limits{}) {
		break
	}
}

// TestSameBytes: reading twice writes the same.
func TestSameBytes(t *testing.T) {
	text := "<osm>" + corners + wayXML(7, "1 2 5 4 1", "a=1 b=2") + wayXML(3, "1 2", "c=1") + relationXML(2, "7", "type=multipolygon x=y") + relationXML(4, "", "type=b") + relationXML(5, "", "type=a") + "</osm>"
	var first, second bytes.Buffer
	for _, b := range []*bytes.Buffer{&first, &second} {
		c := mapped(t, text, Limits{})
		if err := c.WriteGeoJSON(b); err != nil {
			t.Fatal(err)
		}
		fmt.Fprint(b, said(c.Problems))
	}
	if first.String() != second.String() {
		t.Errorf("got\n%s\nand\n%s", &first, &second)
	}
}
