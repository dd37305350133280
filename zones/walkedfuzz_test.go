package zones

import (
	"bytes"
	"fmt"
	"strings"
	"testing"

	"example.org/turfplat/geo"
	"example.org/turfplat/geo/ingest"
	"example.org/turfplat/geo/track"
)

// fixTable writes fixes as a table.
func fixTable(tracks *ingest.Tracks) string {
	var b strings.Builder
	b.WriteString("lat,lon,time\n")
	for _, f := range tracks.Tracks[0].Segments[0] {
		fmt.Fprintf(&b, "%.7f,%.7f,%s\n", f.At.Lat(), f.At.Lon(), f.Time.UTC().Format("2006-01-02T15:04:05Z"))
	}
	return b.String()
}

// FuzzFollow: whatever a file of tracks holds becomes a site file that reads
// back, or is refused.
func FuzzFollow(f *testing.F) {
	ring := "<LinearRing><coordinates>0,0 0.001,0 0.001,0.001 0,0</coordinates></LinearRing>"
	f.Add([]byte(fixTable(walkRound(1, 0.1, rectangle(0, 0, 12, 9)))), byte(0), 0.3)
	f.Add([]byte(fixTable(walkRound(2, 0.1, rectangle(0, 0, 14, 12), rectangle(4, 4, 10, 8)))), byte(1), 5.0)
	f.Add([]byte("<kml><Placemark><name>a</name><Polygon><outerBoundaryIs>"+ring+"</outerBoundaryIs><innerBoundaryIs>"+ring+"</innerBoundaryIs></Polygon></Placemark><Placemark>"+ring+"</Placemark></kml>"), byte(2), 0.0)
	f.Add([]byte("lat,lon\n90,0\n90,180\n-90,0\n"), byte(3), 1.0)
	f.Fuzz(func(t *testing.T, file []byte, choice byte, offset float64) {
		kinds := WalkedKinds()
		w := Walking{Kind: kinds[int(choice)%len(kinds)]}
		if offset > 0 && offset <= 10 {
			w.Options = track.Options{Side: track.Side(2 + choice%2), Offset: geo.Length(offset)}
		}
		trail := w.Follow(ingest.ReadTracks(bytes.NewReader(file), "fuzz", small))
		made := Compile(trail.Objects, nil, Reading{Key: builtInKey})
		if made.Site.Refused() {
			return
		}
		var text bytes.Buffer
		if err := made.File.WriteGeoJSON(&text); err != nil {
			t.Fatal(err)
		}
		for c := range ingest.GeoJSON(&text, "again", ingest.DefaultLimits) {
			if len(c.Problems) > 0 {
				t.Errorf("reads back with %v", c.Problems)
			}
		}
	})
}
