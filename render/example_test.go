package render_test

import (
	"bytes"
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

// A drawing of one's own, true to scale: a line of 10 m and its length.
func ExampleSheet() {
	const scale render.Scale = 100
	black := render.RGB(0x000000)
	from := render.Point{X: 20, Y: 100}
	to := render.Point{X: from.X + scale.MM(10), Y: from.Y}
	text, _ := render.Legible("10 m along the walk")

	sheet := render.NewSheet("stakes", "Stakes along the walk", render.A4)
	sheet.Add(
		render.Path{Lines: []render.Line{{Points: []render.Point{from, to}}}, Stroke: black, Weight: 0.35},
		render.Text{At: render.Point{X: from.X, Y: from.Y + 1}, String: text, Face: render.Regular, Size: 9, Ink: black},
	)
	svg, err := render.SVG(sheet)
	if err != nil {
		panic(err)
	}
	fmt.Printf("%.0f mm at %s, %t\n", to.X-from.X, scale, bytes.Contains(svg, []byte(">"+text+"<")))
	// Output: 100 mm at 1:100, true
}
