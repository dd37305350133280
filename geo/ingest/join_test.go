package ingest

import (
	"strings"
	"testing"
)

// partOf reads a part of a site.
func partOf(t *testing.T, source, text string) *Collection {
	t.Helper()
	for c := range GeoJSON(strings.NewReader(text), source, Limits{}) {
		return c
	}
	t.Fatalf("%s holds no site", source)
	return nil
}

func TestJoin(t *testing.T) {
	const at = `"geometry":{"type":"Point","coordinates":`
	a := partOf(t, "a.geojson", `{"type":"FeatureCollection","site":{"id":"s"},"attribution":"one","features":[
{"type":"Feature","properties":{"id":"p"},`+at+`[1,1]}},{"type":"Feature","properties":{"id":"q"},`+at+`[2,2]}},{"type":"Feature","properties":{},`+at+`[3,3]}}]}`)
	b := partOf(t, "b.geojson", `{"type":"FeatureCollection","attribution":"two","note":1,"features":[
{"type":"Feature","properties":{"id":"p"},`+at+`[1,1]}},{"type":"Feature","properties":{"id":"q"},`+at+`[5,5]}},{"type":"Feature","properties":{},`+at+`[3,3]}}]}`)
	whole := Join(a, b)
	var ids, places []string
	for _, f := range whole.Features {
		ids, places = append(ids, f.ID), append(places, whole.Place(f).String())
	}
	if got := strings.Join(ids, " "); got != "p q  q-2 " {
		t.Errorf("ids %q", got)
	}
	if got := strings.Join(places, ", "); got != `a.geojson: features[0] "p", a.geojson: features[1] "q", a.geojson: features[2], b.geojson: features[1] "q-2", b.geojson: features[2]` {
		t.Errorf("places %s", got)
	}
	if credit, _ := whole.Member("attribution"); string(credit) != `"one; two"` {
		t.Errorf("attribution %s", credit)
	}
	if _, there := whole.Member("note"); !there || len(whole.Members) != 3 {
		t.Errorf("members %v", whole.Members)
	}
	var found []string
	for _, p := range whole.Problems {
		found = append(found, p.Code+": "+p.String())
	}
	want := `id_repeated: b.geojson: features[1] "q": has the id of an object of another file, is "q-2" now
objects_repeated: b.geojson: objects that stand in another file as well count once (1)`
	if got := strings.Join(found, "\n"); got != want {
		t.Errorf("problems\n%s", got)
	}
	if again := Join(b, partOf(t, "b.geojson", `{"type":"FeatureCollection","features":[{"type":"Feature","properties":{"id":"p"},`+at+`[1,1]}}]}`)); len(again.Features) != 3 {
		t.Errorf("a file given twice: %d features", len(again.Features))
	}
	if whole.Digest == a.Digest || whole.Digest == b.Digest || Join(b) != b {
		t.Error("digest of the parts")
	}
}
