package zones

import (
	"bytes"
	"testing"

	"example.org/turfplat/geo/ingest"
)

func TestHeader(t *testing.T) {
	lawn := sketch{covering(Turf, "lawn", rectangle(0, 0, 20, 10))}
	for _, tt := range []struct {
		name, member string
		id, title    string
		units        Units
		revision     int
		told         string
	}{
		{name: "none", id: "yard", title: "yard", units: US},
		{name: "null", member: `"site":null`, id: "yard", title: "yard", units: US},
		{name: "all", member: `"site":{"id":"a1","name":"Alder Lane","units":"metric","revision":3,"notes":"x","access":{"gate":"east"}}`, id: "a1", title: "Alder Lane", units: Metric, revision: 3},
		{name: "id only", member: `"site":{"id":"a1"}`, id: "a1", title: "a1", units: US},
		{name: "id as a number", member: `"site":{"id":1200,"name":"x"}`, id: "1200", title: "x", units: US},
		{name: "empty id", member: `"site":{"id":""}`, id: "yard", title: "yard", units: US},
		{name: "nulls", member: `"site":{"id":null,"name":null,"units":null,"revision":null}`, id: "yard", title: "yard", units: US},
		{name: "unknown units", member: `"site":{"units":"chains"}`, id: "yard", title: "yard", units: US,
			told: `warning: yard.geojson: site units "chains" are neither us nor metric, us taken`},
		{name: "not an object", member: `"site":"a1"`, id: "yard", title: "yard", units: US,
			told: `warning: yard.geojson: member "site" is not an object, left aside`},
		{name: "revision with a fraction", member: `"site":{"id":"a1","revision":1.5}`, id: "a1", title: "a1", units: US,
			told: "warning: yard.geojson: site revision is not a whole number, left aside"},
		{name: "name that is a list", member: `"site":{"id":"a1","name":["x"]}`, id: "a1", title: "a1", units: US,
			told: "warning: yard.geojson: site name is neither a text nor a number, left aside"},
		{name: "access that is a text", member: `"site":{"id":"a1","access":"east"}`, id: "a1", title: "a1", units: US,
			told: "warning: yard.geojson: site access is not an object, left aside (write \"access\": {\"gate\": \"east side\"})"},
		{name: "a code among notes", member: `"site":{"id":"a1","access":{"gate":"east side, code is 4711"}}`, id: "a1", title: "a1", units: US,
			told: "warning: yard.geojson: site access seems to tell a code in a note that is printed (write codes as gate_code, which sheets leave out unless they are asked for it)"},
		{name: "a code in its place", member: `"site":{"id":"a1","access":{"gate":"east side, no code","gate_code":4711}}`, id: "a1", title: "a1", units: US},
	} {
		t.Run(tt.name, func(t *testing.T) {
			s := siteOf(t, lawn.file(home, tt.member))
			if s.ID != tt.id || s.Name != tt.title || s.Units != tt.units || s.Revision != tt.revision {
				t.Errorf("id %q, name %q, units %q, revision %d", s.ID, s.Name, s.Units, s.Revision)
			}
			if got := told(s.Problems); got != tt.told {
				t.Errorf("told %q, want %q", got, tt.told)
			}
		})
	}
}

func TestIDFromTheFile(t *testing.T) {
	lawn := `{"type":"FeatureCollection","features":[` + geometries["Polygon"](`"kind":"turf"`) + "]}"
	for _, tt := range []struct {
		file string
		text string
		want []string
	}{
		{"yards/alder-lane.geojson", lawn, []string{"alder-lane"}},
		{"alder.lane.json", lawn, []string{"alder.lane"}},
		{"alder", lawn, []string{"alder"}},
		{".geojson", lawn, []string{"site"}},
		{"standard input", lawn, []string{"standard input"}},
		{"route.ndjson", lawn + "\n" + lawn + "\n", []string{"route-1", "route-2"}},
	} {
		var got []string
		for c := range ingest.GeoJSON(bytes.NewReader([]byte(tt.text)), tt.file, ingest.DefaultLimits) {
			got = append(got, NewSite(c, Reading{Key: builtInKey}).ID)
		}
		if asJSON(t, got) != asJSON(t, tt.want) {
			t.Errorf("%s: ids %q, want %q", tt.file, got, tt.want)
		}
	}
}

func TestAttribution(t *testing.T) {
	const osm = "Map data © OpenStreetMap contributors, ODbL 1.0"
	lot := covering(Outline, "lot", rectangle(0, 0, 20, 10))
	inside := polygon(`"building":"yes","id":"osm:way/12"`, rectangle(5, 5, 8, 8))
	outside := polygon(`"building":"yes","id":"osm:way/13"`, rectangle(50, 5, 58, 8))
	for _, tt := range []struct {
		name, member string
		objects      sketch
		want         string
	}{
		{"nothing to name", "", sketch{lot}, ""},
		{"given", `"attribution":"Plan by the owner"`, sketch{lot}, "Plan by the owner"},
		{"given, and map data", `"attribution":"Map data of the town"`, sketch{lot, inside}, "Map data of the town"},
		{"map data", "", sketch{lot, inside}, osm},
		{"map data that is only drawn", "", sketch{lot, outside}, osm},
		{"blank", `"attribution":"  "`, sketch{lot, inside}, osm},
		{"not a text", `"attribution":{"by":"x"}`, sketch{lot, inside}, osm},
	} {
		t.Run(tt.name, func(t *testing.T) {
			if got := siteOf(t, tt.objects.file(home, tt.member)).Attribution; got != tt.want {
				t.Errorf("attribution %q, want %q", got, tt.want)
			}
		})
	}
}

func TestAccess(t *testing.T) {
	lawn := sketch{covering(Turf, "lawn", rectangle(0, 0, 20, 10))}
	s := siteOf(t, lawn.file(home, `"site":{"access":{"gate":" east ","dog":null,"gate_code":1234,"alarm":"none"}}`))
	if want := (AccessNotes{Gate: "east", GateCode: "1234"}); s.Access != want {
		t.Errorf("access is %+v, want %+v", s.Access, want)
	}
}
