package zones

import (
	"bytes"
	"testing"

	"example.org/turfplat/geo"
)

// What is read by the non-zero rule is written as what it was read as.
func TestCompiledFileReadsBackThoughARingCrossedItself(t *testing.T) {
	bowTie := geo.Ring{xy(0, 0), xy(20, 10), xy(20, 0), xy(0, 10)}
	for _, props := range []string{`"landuse":"grass","id":"osm:way/1"`, kind(Turf, "lawn")} {
		it := polygon(props, bowTie)
		made := Compile(collectionOf(t, sketch{it}.file(home, "")), nil, Reading{Key: builtInKey, Repair: true})
		if made.Site.Refused() {
			t.Fatalf("refused: %s", told(made.Site.Problems))
		}
		var file bytes.Buffer
		if err := made.File.WriteGeoJSON(&file); err != nil {
			t.Fatal(err)
		}
		m := platOf(t, file.Bytes()).Measurement()
		near(t, "turf", m.Covers[Turf].AreaM2, 100, lawRel, 0) // two triangles, each 10 m wide at the wall and 10 m deep
	}
}
