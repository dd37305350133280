package render_test

import (
	"fmt"
	"os"

	"example.org/turfplat/geo/ingest"
	"example.org/turfplat/render"
	"example.org/turfplat/zones"
)

// The site map of every site of a file, as PDF.
func Example() {
	file, err := os.Open("../samples/alder-lane.geojson")
	if err != nil {
		panic(err)
	}
	defer file.Close()
	for read := range ingest.Read(file, file.Name(), ingest.DefaultLimits) {
		plat := zones.Survey(zones.NewSite(read, zones.Reading{Key: zones.DefaultMapKey()}))
		sheet, err := render.SiteMap(plat, plat.Measurement(), render.MapOptions{})
		if err != nil {
			panic(err)
		}
		pdf, err := render.PDF(sheet)
		if err != nil {
			panic(err)
		}
		fmt.Printf("%s %s\n", plat.Site.ID, pdf[:8])
	}
	// Output: alder-lane %PDF-1.7
}
