package render_test

import (
	"bytes"
	"os"
	"reflect"
	"sync"
	"testing"

	"example.org/turfplat/geo/ingest"
	"example.org/turfplat/render"
	"example.org/turfplat/zones"
)

// survey reads the sample property and lays it out.
func survey(t *testing.T) *zones.Plat {
	text, err := os.ReadFile("../samples/alder-lane.geojson")
	if err != nil {
		t.Fatal(err)
	}
	for read := range ingest.Read(bytes.NewReader(text), "alder-lane.geojson", ingest.DefaultLimits) {
		return zones.Survey(zones.NewSite(read, zones.Reading{Key: zones.DefaultMapKey()}))
	}
	panic("the sample holds no site")
}

// draw draws the site map of a plat.
func draw(t *testing.T, plat *zones.Plat, m zones.Measurement) []byte {
	sheet, err := render.SiteMap(plat, m, render.MapOptions{})
	if err != nil {
		t.Error(err)
		return nil
	}
	svg, err := render.SVG(sheet)
	if err != nil {
		t.Error(err)
	}
	return svg
}

// TestAtOnce: sites may be surveyed by many goroutines, and one plat measured
// and drawn by many; each gets what it would get alone. The race detector
// looks on in CI.
func TestAtOnce(t *testing.T) {
	shared := survey(t)
	wantMeasure := shared.Measurement()
	want := draw(t, shared, wantMeasure)
	var group sync.WaitGroup
	for i := range 8 {
		group.Go(func() {
			plat := shared
			if i%2 == 1 {
				plat = survey(t)
			}
			m := plat.Measurement()
			if !reflect.DeepEqual(m, wantMeasure) {
				t.Error("the measures differ")
			}
			if rows := plat.FeedRows(m, ""); len(rows) != len(plat.FeedGround(m)) {
				t.Error("the rows differ")
			}
			if !bytes.Equal(draw(t, plat, m), want) {
				t.Error("the maps differ")
			}
		})
	}
	group.Wait()
}
