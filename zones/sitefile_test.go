package zones

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"

	"github.com/paulmach/orb"
	"pgregory.net/rapid"

	"example.org/turfplat/geo"
	"example.org/turfplat/geo/ingest"
)

// A position of a site's frame that is written into a file is the same one when
// it is read, so that zones and covers keep the edges that they share.
func TestPositionsReadBackTheSame(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		frame := geo.NewFrame(orb.Point{rapid.Float64Range(-179, 179).Draw(t, "lon"), rapid.Float64Range(-75, 75).Draw(t, "lat")})
		metres := rapid.Float64Range(-2000, 2000)
		want := frame.XY(frame.Place(geo.XY{X: metres.Draw(t, "x"), Y: metres.Draw(t, "y")}))
		file := &ingest.Collection{Features: []*ingest.Feature{ingest.NewFeature(ingest.Properties{}, frame.Place(want))}}
		var written bytes.Buffer
		if err := file.WriteGeoJSON(&written); err != nil {
			t.Fatal(err)
		}
		read := collectionOf(t, written.Bytes()).Features[0].Geometry.(orb.Point)
		if got := frame.XY(read); got != want {
			t.Errorf("%.9f reads back as %.9f: %s", want, got, &written)
		}
	})
}

// Zones by sun err by the same when the file that they are written into is read.
func TestZonesKeepTheirErrors(t *testing.T) {
	real, err := filepath.Glob("../../shared/data/sites/*.geojson")
	if err != nil {
		t.Fatal(err)
	}
	for _, path := range append(real, "../samples/alder-lane.geojson") {
		t.Run(filepath.Base(path), func(t *testing.T) {
			file, err := os.ReadFile(path)
			if err != nil {
				t.Fatal(err)
			}
			p := litPlat(t, file)
			again := rewritten(t, p).Measurement().Zones
			for i, z := range p.Measurement().Zones {
				const atEnds = 0.02 // of what comes of edges that end within rounding of another one, and may count or not
				near(t, "sigma of "+z.ID, again[i].SigmaM2, z.SigmaM2, atEnds, 1e-4)
			}
		})
	}
}
