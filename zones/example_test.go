package zones_test

import (
	"fmt"
	"os"

	"example.org/turfplat/geo/ingest"
	"example.org/turfplat/zones"
)

// Every site of a file, measured: what is wrong with one that is refused, or
// its turf and its zones.
func Example() {
	file, err := os.Open("../samples/alder-lane.geojson")
	if err != nil {
		panic(err)
	}
	defer file.Close()
	for read := range ingest.Read(file, file.Name(), ingest.DefaultLimits) {
		site := zones.NewSite(read, zones.Reading{Key: zones.DefaultMapKey()})
		plat := zones.Survey(site)
		if plat == nil {
			fmt.Println(site.Problems)
			continue
		}
		m := plat.Measurement()
		fmt.Printf("%s: %.1f m2 of turf, +/- %.0f\n", m.ID, m.Covers[zones.Turf].AreaM2, m.Covers[zones.Turf].CI95M2)
		for _, z := range m.Zones {
			fmt.Printf("%s %s: %.1f m2\n", z.Letter, z.Name, z.AreaM2)
		}
	}
	// Output:
	// alder-lane: 1032.8 m2 of turf, +/- 29
	// A Back, north: 457.9 m2
	// B Front: 270.0 m2
	// C Back, south: 92.8 m2
	// D Under the maples: 82.9 m2
	// E Verge: 63.7 m2
	// F Pond edge: 65.5 m2
}
