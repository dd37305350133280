package ingest

import "testing"

// Areas on the grid of corners: all of it, and its lower left with a hole.
//
//	7 8 9
//	4 5 6
//	1 2 3
const (
	block   = "[[[0,0],[0.001,0],[0.002,0],[0.002,0.001],[0.002,0.002],[0.001,0.002],[0,0.002],[0,0.001],[0,0]]]"
	pitHole = "[[0.0004,0.0004],[0.0004,0.0006],[0.0006,0.0006],[0.0006,0.0004],[0.0004,0.0004]]"
	pit     = "[[0,0],[0.001,0],[0.001,0.001],[0,0.001],[0,0]]," + pitHole
)

var relationRules = []struct {
	name, xml          string
	features, problems []string
}{
	{name: "a square with a hole", xml: wayXML(1, "1 2 5 4 1", "") + wayXML(2, "11 12 13 14 11", "natural=water") + relationXML(9, "1:outer 2:inner", "type=multipolygon landuse=grass"),
		features: []string{
			`osm:way/2 Polygon [[[0.0004,0.0004],[0.0006,0.0004],[0.0006,0.0006],[0.0004,0.0006],[0.0004,0.0004]]] {"natural":"water"}`,
			`osm:relation/9 MultiPolygon [[` + pit + `]] {"landuse":"grass","type":"multipolygon"}`}},
	{name: "ways end to end in any order and direction", xml: wayXML(1, "1 2 3", "") + wayXML(2, "9 6 3", "") + wayXML(3, "1 4 7", "") + wayXML(4, "9 8 7", "") + relationXML(9, "3 1 4 2", "type=multipolygon landuse=grass"),
		features: []string{`osm:relation/9 MultiPolygon [` + block + `] {"landuse":"grass","type":"multipolygon"}`}},
	{name: "ways that meet at a place, not at a node", xml: `<node id="22" lon="0.001" lat="0.001"/>` + wayXML(1, "1 2 5", "") + wayXML(2, "22 4 1", "") + relationXML(9, "1 2", "type=multipolygon landuse=grass"),
		features: []string{`osm:relation/9 MultiPolygon [` + lowerLeft + `] {"landuse":"grass","type":"multipolygon"}`}},
	{name: "roles the wrong way round", xml: wayXML(1, "1 2 5 4 1", "") + wayXML(2, "11 12 13 14 11", "") + relationXML(9, "1:inner 2:outer", "type=multipolygon landuse=grass"),
		features: []string{`osm:relation/9 MultiPolygon [[` + pit + `]] {"landuse":"grass","type":"multipolygon"}`},
		problems: []string{`note osm_roles: x: "osm:relation/9": roles are wrong for 2 rings, went by where they lie`}},
	{name: "roles that are not there", xml: wayXML(1, "1 2 5 4 1", "") + wayXML(2, "11 12 13 14 11", "") + relationXML(9, "1 2", "type=multipolygon landuse=grass"),
		features: []string{`osm:relation/9 MultiPolygon [[` + pit + `]] {"landuse":"grass","type":"multipolygon"}`}},
	{name: "two areas side by side become one", xml: wayXML(1, "1 2 5 4 1", "") + wayXML(2, "2 3 6 5 2", "") + relationXML(9, "1:outer 2:outer", "type=multipolygon landuse=grass"),
		features: []string{`osm:relation/9 MultiPolygon [[[[0,0],[0.001,0],[0.002,0],[0.002,0.001],[0.001,0.001],[0,0.001],[0,0]]]] {"landuse":"grass","type":"multipolygon"}`}},
	{name: "a hole along the edge becomes a bay", xml: wayXML(1, "1 2 3 6 9 8 7 4 1", "") + wayXML(2, "1 2 5 4 1", "") + relationXML(9, "1:outer 2:inner", "type=multipolygon landuse=grass"),
		features: []string{`osm:relation/9 MultiPolygon [[[[0,0.001],[0.001,0.001],[0.001,0],[0.002,0],[0.002,0.001],[0.002,0.002],[0.001,0.002],[0,0.002],[0,0.001]]]] {"landuse":"grass","type":"multipolygon"}`}},
	{name: "two areas that touch at a node", xml: wayXML(1, "1 2 5 4 1", "") + wayXML(2, "5 6 9 8 5", "") + relationXML(9, "1:outer 2:outer", "type=multipolygon landuse=grass"),
		features: []string{`osm:relation/9 MultiPolygon [` + lowerLeft + `,[[[0.001,0.001],[0.002,0.001],[0.002,0.002],[0.001,0.002],[0.001,0.001]]]] {"landuse":"grass","type":"multipolygon"}`}},
	{name: "one way through the touching node twice", xml: wayXML(1, "1 2 5 6 9 8 5 4 1", "") + relationXML(9, "1:outer", "type=multipolygon landuse=grass"),
		features: []string{`osm:relation/9 MultiPolygon [` + lowerLeft + `,[[[0.001,0.001],[0.002,0.001],[0.002,0.002],[0.001,0.002],[0.001,0.001]]]] {"landuse":"grass","type":"multipolygon"}`}},
	{name: "a hole that touches the edge at a node", xml: wayXML(1, "1 3 9 7 1", "") + wayXML(2, "1 12 13 14 1", "") + relationXML(9, "1:outer 2:inner", "type=multipolygon landuse=grass"),
		features: []string{`osm:relation/9 MultiPolygon [[[[0,0],[0.002,0],[0.002,0.002],[0,0.002],[0,0]],[[0,0],[0.0004,0.0006],[0.0006,0.0006],[0.0006,0.0004],[0,0]]]] {"landuse":"grass","type":"multipolygon"}`}},
	{name: "an island in a hole", xml: `<node id="21" lon="0.00045" lat="0.0005"/><node id="22" lon="0.00055" lat="0.0005"/><node id="23" lon="0.0005" lat="0.00055"/>` +
		wayXML(1, "21 22 23 21", "") + wayXML(2, "11 12 13 14 11", "") + wayXML(3, "1 2 5 4 1", "") + relationXML(9, "1:outer 2:inner 3:outer", "type=multipolygon landuse=grass"),
		features: []string{`osm:relation/9 MultiPolygon [[` + pit + `],[[[0.00045,0.0005],[0.00055,0.0005],[0.0005,0.00055],[0.00045,0.0005]]]] {"landuse":"grass","type":"multipolygon"}`}},
	{name: "a way that is a member twice", xml: wayXML(1, "1 2 5 4 1", "") + relationXML(9, "1:outer 1:outer", "type=multipolygon landuse=grass"),
		features: []string{`osm:relation/9 MultiPolygon [` + lowerLeft + `] {"landuse":"grass","type":"multipolygon"}`}},
	{name: "members of other kinds", xml: wayXML(1, "1 2 5 4 1", "") + `<relation id="9"><member type="node" ref="3" role="label"/><member type="relation" ref="8" role=""/><member type="way" ref="1" role="outer"/>` + tagsXML("type=multipolygon landuse=grass") + `</relation>`,
		features: []string{`osm:relation/9 MultiPolygon [` + lowerLeft + `] {"landuse":"grass","type":"multipolygon"}`}},

	{name: "tags on the ways, as of old", xml: wayXML(1, "1 2 5", "landuse=grass source=x") + wayXML(2, "5 4 1", "landuse=grass") + wayXML(3, "11 12 13 14 11", "landuse=flowerbed") + relationXML(9, "1:outer 2:outer 3:inner", "type=multipolygon created_by=x"),
		features: []string{
			`osm:way/3 Polygon [[[0.0004,0.0004],[0.0006,0.0004],[0.0006,0.0006],[0.0004,0.0006],[0.0004,0.0004]]] {"landuse":"flowerbed"}`,
			`osm:relation/9 MultiPolygon [[` + pit + `]] {"landuse":"grass"}`},
		problems: []string{
			`note osm_tags_outer: x: "osm:relation/9": has no tags, took those of its outer ways`,
			`note osm_redundant: x: osm:way/1 says nothing beyond the area it bounds, left aside (2 ways)`}},
	{name: "tags on the ways that differ", xml: wayXML(1, "1 2 5 4 1", "landuse=grass") + wayXML(2, "5 6 9 8 5", "landuse=meadow") + relationXML(9, "1:outer 2:outer", "type=multipolygon"),
		features: []string{
			`osm:way/1 Polygon ` + lowerLeft + ` {"landuse":"grass"}`,
			`osm:way/2 Polygon [[[0.001,0.001],[0.002,0.001],[0.002,0.002],[0.001,0.002],[0.001,0.001]]] {"landuse":"meadow"}`},
		problems: []string{`warning osm_relation_tags: x: "osm:relation/9": left out: has no tags, and those of its outer ways differ`}},
	{name: "no tags at all", xml: wayXML(1, "1 2 5 4 1", "") + relationXML(9, "1:outer", "type=multipolygon"),
		problems: []string{
			`note osm_relation_untagged: x: osm:relation/9 has no tags, nor have its ways, left aside`,
			`note osm_untagged: x: osm:way/1 has no tags, left aside`}},
	{name: "a way that repeats the tags of its relation would cover the hole", xml: wayXML(1, "1 2 5 4 1", "building=yes") + wayXML(2, "11 12 13 14 11", "building=yes") + relationXML(9, "1:outer 2:inner", "type=multipolygon building=yes height=5"),
		features: []string{`osm:relation/9 MultiPolygon [[` + pit + `]] {"building":"yes","height":"5","type":"multipolygon"}`},
		problems: []string{`note osm_redundant: x: osm:way/1 says nothing beyond the area it bounds, left aside (2 ways)`}},
	{name: "a fence round an area is a thing of its own", xml: wayXML(1, "1 2 5 4 1", "barrier=fence") + relationXML(9, "1:outer", "type=multipolygon landuse=grass"),
		features: []string{
			`osm:way/1 LineString [[0,0],[0.001,0],[0.001,0.001],[0,0.001],[0,0]] {"barrier":"fence"}`,
			`osm:relation/9 MultiPolygon [` + lowerLeft + `] {"landuse":"grass","type":"multipolygon"}`}},

	{name: "open at both ends", xml: wayXML(1, "1 2 5 4", "") + relationXML(9, "1:outer", "type=multipolygon landuse=grass"),
		problems: []string{
			`warning osm_relation_open: x: "osm:relation/9": left out: its ways do not close, 2 ends open near [0, 0]`,
			`note osm_untagged: x: osm:way/1 has no tags, left aside`}},
	{name: "a ring with a spur", xml: wayXML(1, "1 2 5 4 1", "") + wayXML(2, "5 9", "") + relationXML(9, "1:outer 2:outer", "type=multipolygon landuse=grass"),
		problems: []string{
			`warning osm_relation_open: x: "osm:relation/9": left out: its ways do not close, 2 ends open near [0.001, 0.001]`,
			`note osm_untagged: x: osm:way/1 has no tags, left aside (2 ways)`}},
	{name: "a way there and back", xml: wayXML(1, "1 2 3 2 1", "") + relationXML(9, "1:outer", "type=multipolygon landuse=grass"),
		problems: []string{
			`warning ring_flat: x: "osm:relation/9": left out: encloses nothing near [0, 0]`,
			`note osm_untagged: x: osm:way/1 has no tags, left aside`}},
	{name: "a ring of no width", xml: wayXML(1, "1 2 3 1", "") + relationXML(9, "1:outer", "type=multipolygon landuse=grass"),
		problems: []string{
			`warning ring_flat: x: "osm:relation/9": left out: encloses nothing near [0, 0]`,
			`note osm_untagged: x: osm:way/1 has no tags, left aside`}},
	{name: "a missing way", xml: wayXML(1, "1 2 5", "") + relationXML(9, "1:outer 77:outer 78:inner", "type=multipolygon landuse=grass"),
		problems: []string{
			`warning osm_relation_cut: x: "osm:relation/9": left out: lacks 2 of its 3 ways (osm:way/77 first) near [0, 0]`,
			`note osm_untagged: x: osm:way/1 has no tags, left aside`}},
	{name: "a missing node", xml: wayXML(1, "1 2 77 4 1", "") + relationXML(9, "1:outer", "type=multipolygon landuse=grass"),
		problems: []string{
			`warning osm_relation_cut: x: "osm:relation/9": left out: osm:way/1 lacks 1 of its 5 nodes (osm:node/77 first) near [0, 0]`,
			`note osm_untagged: x: osm:way/1 has no tags, left aside`}},
	{name: "no ways", xml: relationXML(9, "", "type=multipolygon landuse=grass"),
		problems: []string{`warning osm_relation_cut: x: "osm:relation/9": left out: has no ways`}},
	{name: "an area that cannot be built leaves its ways as they are", xml: wayXML(1, "1 2 5 4 1", "landuse=grass") + relationXML(9, "1:outer 77:inner", "type=multipolygon"),
		features: []string{`osm:way/1 Polygon ` + lowerLeft + ` {"landuse":"grass"}`},
		problems: []string{`warning osm_relation_cut: x: "osm:relation/9": left out: lacks 1 of its 2 ways (osm:way/77 first) near [0, 0]`}},
	{name: "ways that cross so that rings lie half in each other", xml: `
		<node id="30" lon="0" lat="0"/><node id="31" lon="10" lat="0"/><node id="32" lon="10" lat="10"/><node id="33" lon="0" lat="10"/>
		<node id="34" lon="5" lat="4"/><node id="35" lon="20" lat="4"/><node id="36" lon="20" lat="6"/><node id="37" lon="5" lat="6"/>
		<node id="38" lon="15" lat="4.5"/><node id="39" lon="16" lat="4.5"/><node id="40" lon="16" lat="5.5"/><node id="41" lon="6" lat="4"/>` +
		wayXML(1, "30 31 32 33 30", "") + wayXML(2, "34 41 35 36 37 34", "") + wayXML(3, "38 39 40 38", "") + relationXML(9, "1 2 3", "type=multipolygon landuse=grass"),
		problems: []string{
			`warning osm_relation_crossed: x: "osm:relation/9": left out: its ways cross each other near [0, 0]`,
			`note osm_untagged: x: osm:way/1 has no tags, left aside (3 ways)`}},
	{name: "relations of many types", xml: relationXML(1, "", "type=a") + relationXML(2, "", "type=b") + relationXML(3, "", "type=c") + relationXML(4, "", "type=d") + relationXML(5, "", "type=e") +
		relationXML(6, "", "type=f") + relationXML(7, "", "type=g") + relationXML(8, "", "type=h") + relationXML(9, "", "type=i") + relationXML(10, "", "type=j"),
		problems: []string{`note osm_relation_other: x: 10 relations of other types left aside: 1 "a", 1 "b", 1 "c", 1 "d", 1 "e", 1 "f", 1 "g", 1 "h", and 2 other types`}},
	{name: "a relation given in two parts", xml: wayXML(1, "1 2 5 4 1", "") + `<relation id="9">` + tagsXML("type=multipolygon landuse=grass") + `</relation>` + relationXML(9, "1", ""),
		features: []string{`osm:relation/9 MultiPolygon [` + lowerLeft + `] {"landuse":"grass","type":"multipolygon"}`}},
	{name: "relations of other types", xml: relationXML(1, "", "type=route") + relationXML(2, "", "type=route") + relationXML(3, "", "type=boundary") + relationXML(4, "", "name=x"),
		problems: []string{`note osm_relation_other: x: 4 relations of other types left aside: 2 "route", 1 without a type, 1 "boundary"`}},
}

func TestRelationRules(t *testing.T) {
	for _, tt := range relationRules {
		t.Run(tt.name, func(t *testing.T) {
			checkMapped(t, mapped(t, "<osm>"+corners+tt.xml+"</osm>", Limits{}), tt.features, tt.problems)
		})
	}
}
