package geo_test

import (
	"fmt"

	"github.com/paulmach/orb"

	"example.org/turfplat/geo"
)

// A lawn less the bed in it.
func Example() {
	lawn := orb.Polygon{{{-93.1, 44.95}, {-93.0997, 44.95}, {-93.0997, 44.9502}, {-93.1, 44.9502}, {-93.1, 44.95}}}
	bed := orb.Polygon{{{-93.0999, 44.9501}, {-93.0998, 44.9501}, {-93.0998, 44.95015}, {-93.0999, 44.9501}}}

	frame := geo.NewFrame(lawn.Bound().Center())
	whole, err := geo.RegionOf(frame.Rings(lawn))
	if err != nil {
		panic(err)
	}
	taken, err := geo.RegionOf(frame.Rings(bed))
	if err != nil {
		panic(err)
	}
	turf, err := geo.Difference(whole, taken)
	if err != nil {
		panic(err)
	}
	fmt.Printf("%.2f m2 (%.0f ft2), %.1f m round it\n", frame.Area(turf), frame.Area(turf).SquareFeet(), frame.Perimeter(turf))
	// Output: 504.27 m2 (5428 ft2), 114.9 m round it
}
