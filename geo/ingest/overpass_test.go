package ingest

import "testing"

var overpassRules = []struct {
	name, elements     string
	features, problems []string
}{
	{name: "nodes, ways and a relation", elements: `
		{"type":"node","id":1,"lat":0,"lon":0},{"type":"node","id":2,"lat":0,"lon":0.001,"tags":{"natural":"tree","height":7}},
		{"type":"node","id":5,"lat":0.001,"lon":0.001},{"type":"node","id":4,"lat":0.001,"lon":0},
		{"type":"way","id":7,"nodes":[1,2,5,4,1],"tags":{"name":"T\u00fcr"}},
		{"type":"relation","id":9,"members":[{"type":"way","ref":7,"role":"outer"},{"type":"node","ref":1,"role":""}],"tags":{"type":"multipolygon","landuse":"grass"}}`,
		features: []string{
			`osm:node/2 Point [0.001,0] {"height":"7","natural":"tree"}`,
			`osm:way/7 Polygon ` + lowerLeft + ` {"name":"Tür"}`,
			`osm:relation/9 MultiPolygon [` + lowerLeft + `] {"landuse":"grass","type":"multipolygon"}`}},
	{name: "a way with the places of its nodes", elements: `
		{"type":"way","id":7,"bounds":{},"nodes":[1,2,5,4,1],"geometry":[{"lat":0,"lon":0},{"lat":0,"lon":0.001},{"lat":0.001,"lon":0.001},{"lat":0.001,"lon":0},{"lat":0,"lon":0}],"tags":{"a":"1"}}`,
		features: []string{`osm:way/7 Polygon ` + lowerLeft + ` {"a":"1"}`}},
	{name: "a way with places only", elements: `
		{"type":"way","id":7,"geometry":[{"lat":0,"lon":0},{"lat":0,"lon":0.001},{"lat":0.001,"lon":0.001},{"lat":0.001,"lon":0},{"lat":0,"lon":0}],"tags":{"a":"1"}}`,
		features: []string{`osm:way/7 Polygon ` + lowerLeft + ` {"a":"1"}`}},
	{name: "a way clipped by the server", elements: `
		{"type":"way","id":7,"nodes":[1,2,3],"geometry":[{"lat":0,"lon":0},{"lat":0,"lon":0.001},null],"tags":{"a":"1"}}`,
		features: []string{`osm:way/7 LineString [[0,0],[0.001,0]] {"a":"1"}`},
		problems: []string{`warning osm_line_cut: x: "osm:way/7": lacks 1 of its 3 nodes (osm:node/3 first), kept what lies between them near [0, 0]`}},
	{name: "a relation whose members come with their places", elements: `
		{"type":"relation","id":9,"tags":{"type":"multipolygon","landuse":"grass"},"members":[
			{"type":"way","ref":7,"role":"outer","geometry":[{"lat":0,"lon":0},{"lat":0,"lon":0.001},{"lat":0.001,"lon":0.001}]},
			{"type":"node","ref":3,"lat":1,"lon":1,"role":"label"},
			{"type":"way","ref":8,"role":"outer","geometry":[{"lat":0.001,"lon":0.001},{"lat":0.001,"lon":0},{"lat":0,"lon":0}]}]}`,
		features: []string{`osm:relation/9 MultiPolygon [` + lowerLeft + `] {"landuse":"grass","type":"multipolygon"}`}},
	{name: "a member clipped by the server", elements: `
		{"type":"relation","id":9,"tags":{"type":"multipolygon","landuse":"grass"},"members":[
			{"type":"way","ref":7,"role":"outer","geometry":[{"lat":0,"lon":0},null,{"lat":0.001,"lon":0.001}]}]}`,
		problems: []string{
			`warning osm_relation_cut: x: "osm:relation/9": left out: osm:way/7 lacks 1 of its 3 nodes near [0, 0]`,
			`note osm_untagged: x: osm:way/7 has no tags, left aside`}},
	{name: "a way given whole counts before one given as a member", elements: `
		{"type":"way","id":7,"nodes":[1,2,5,4,1],"geometry":[{"lat":0,"lon":0},{"lat":0,"lon":0.001},{"lat":0.001,"lon":0.001},{"lat":0.001,"lon":0},{"lat":0,"lon":0}],"tags":{"a":"1"}},
		{"type":"relation","id":9,"tags":{"type":"multipolygon","landuse":"grass"},"members":[{"type":"way","ref":7,"role":"outer","geometry":[null,{"lat":0,"lon":0.001}]}]}`,
		features: []string{
			`osm:way/7 Polygon ` + lowerLeft + ` {"a":"1"}`,
			`osm:relation/9 MultiPolygon [` + lowerLeft + `] {"landuse":"grass","type":"multipolygon"}`}},
	{name: "middles in place of nodes", elements: `{"type":"way","id":7,"center":{"lat":0,"lon":0},"tags":{"building":"yes"}}`,
		problems: []string{`warning osm_nodes_unsaid: x: osm:way/7 came without its nodes, left out`}},
	{name: "what is not as it should be", elements: `
		{"type":"node","id":"five","lat":0,"lon":0},{"type":"node","id":6,"lat":"north","lon":0},{"type":"area","id":1},{"type":"way","id":7,"nodes":{},"tags":[]},
		{"type":"node","id":8,"visible":false},{"type":"relation","id":9,"members":[7,{"type":"star","ref":1},{"type":"way"}]},
		{"type":"node","id":10,"lat":1,"lon":2,"tags":{"a":null,"b":{},"c":true}},{"type":"way","id":11,"nodes":["x",null],"tags":{"a":"1"}},
		{"type":"way","id":12,"geometry":[7,{"lat":1}],"tags":{"a":"1"}}`,
		features: []string{`osm:node/10 Point [2,1] {"c":"true"}`},
		problems: []string{
			`warning osm_way_cut: x: "osm:way/11": left out: lacks 2 of its 2 nodes`,
			`warning osm_way_cut: x: "osm:way/12": left out: lacks 2 of its 2 nodes`,
			`note osm_relation_other: x: 1 relation of other types left aside: 1 without a type`,
			`warning osm_id: x: elements[0] is a node without a whole number as its id, left out (3 objects)`,
			`warning osm_position: x: osm:node/6 has no position, left out`,
			`note osm_deleted: x: osm:node/8 is marked as deleted, left aside`,
			`note osm_untagged: x: osm:way/7 has no tags, left aside`}},
}

func TestOverpassRules(t *testing.T) {
	for _, tt := range overpassRules {
		t.Run(tt.name, func(t *testing.T) {
			checkMapped(t, mapped(t, `{"version":0.6,"elements":[`+tt.elements+`]}`, Limits{}), tt.features, tt.problems)
		})
	}
}

// TestOverpassXML: the same server writes XML with geometry too.
func TestOverpassXML(t *testing.T) {
	c := mapped(t, `<?xml version="1.0" encoding="UTF-8"?><osm version="0.6" generator="Overpass API"><note>x</note>
		<way id="3"><bounds/><nd ref="1" lat="0" lon="0"/><nd ref="2" lat="0" lon="0.001"/><nd ref="9"/>`+tagsXML("a=1")+`</way>
		<way id="4"><nd lat="0" lon="0"/><nd lat="0" lon="0.001"/>`+tagsXML("a=1")+`</way>
		<relation id="9"><member type="way" ref="7" role=""><nd lat="0" lon="0"/><nd lat="0" lon="0.001"/><nd lat="0.001" lon="0.001"/></member>
		<member type="way" ref="8" role=""><nd lat="0.001" lon="0.001"/><nd lat="0.001" lon="0"/><nd lat="0" lon="0"/></member>
		<member type="moon" ref="8"><nd lat="0" lon="0"/></member>`+tagsXML("type=multipolygon landuse=grass")+`</relation></osm>`, Limits{})
	checkMapped(t, c, []string{
		`osm:way/3 LineString [[0,0],[0.001,0]] {"a":"1"}`,
		`osm:way/4 LineString [[0,0],[0.001,0]] {"a":"1"}`,
		`osm:relation/9 MultiPolygon [` + lowerLeft + `] {"landuse":"grass","type":"multipolygon"}`,
	}, []string{
		`warning osm_line_cut: x: "osm:way/3": lacks 1 of its 3 nodes (osm:node/9 first), kept what lies between them near [0, 0]`,
		`warning osm_id: x: a member of osm:relation/9 is a "moon" with the id "8", left out`,
	})
}

func TestOverpassRemark(t *testing.T) {
	c := mapped(t, `{"elements":[],"remark":"runtime error: timed out"}`, Limits{})
	checkMapped(t, c, nil, []string{`warning osm_remark: x: the server that made it says: "runtime error: timed out"`})
}
