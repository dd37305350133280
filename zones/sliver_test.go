package zones

import (
	"fmt"
	"strings"
	"testing"
)

// A row of zones along a parallel: their corners lie off the straight edge of
// the lot, because the parallel bends. Zones that are alike measure alike,
// whether they are traced or what the others left over.
func TestZonesAlongOneEdge(t *testing.T) {
	const columns, rows = 5, 3
	for _, lat := range []float64{-34, 0, 40, 60, 68} {
		for _, width := range []float64{0.0004, 0.01} { // degrees of the lot: 33 m and 0.85 km at 40 N
			for _, untraced := range []string{"", "1/2", "1/0", "0/2", "4/0"} {
				t.Run(fmt.Sprintf("%v degrees at %v N, %q left over", width, lat, untraced), func(t *testing.T) {
					m := gridOfZones(t, lat, width, columns, rows, untraced)
					checkIdentities(t, m)
					first := make(map[[2]int]ZoneMeasure)
					for _, z := range m.Zones {
						at := placeOf(t, z.ID, untraced)
						mirror := [2]int{min(at[0], columns-1-at[0]), min(at[1], rows-1-at[1])}
						like, known := first[mirror]
						if !known {
							first[mirror] = z
							continue
						}
						near(t, z.ID+": sigma as of "+like.ID, z.SigmaM2, like.SigmaM2, 1e-3, 1e-3)
						near(t, z.ID+": perimeter as of "+like.ID, z.PerimeterM, like.PerimeterM, 2e-4, 0)
					}
				})
			}
		}
	}
}

// gridOfZones measures a lot that is cut into columns and rows along meridians
// and parallels, one of them not traced.
func gridOfZones(t failer, lat, width float64, columns, rows int, untraced string) Measurement {
	ring := func(west, south, east, north float64) string {
		return fmt.Sprintf("[[[%[1]v,%[2]v],[%[3]v,%[2]v],[%[3]v,%[4]v],[%[1]v,%[4]v],[%[1]v,%[2]v]]]", west, south, east, north)
	}
	feature := func(props, ring string) string {
		return `{"type":"Feature","properties":{` + props + `},"geometry":{"type":"Polygon","coordinates":` + ring + `}}`
	}
	x := func(i int) float64 { return -98 + width*float64(i)/float64(columns) }
	y := func(k int) float64 { return lat + 0.0003*float64(k)/float64(rows) }
	features := []string{feature(`"kind":"outline"`, ring(x(0), y(0), x(columns), y(rows)))}
	for i := range columns {
		for k := range rows {
			if id := fmt.Sprintf("%d/%d", i, k); id != untraced {
				features = append(features, feature(fmt.Sprintf(`"kind":"zone","id":%q`, id), ring(x(i), y(k), x(i+1), y(k+1))))
			}
		}
	}
	p := platOf(t, []byte(`{"type":"FeatureCollection","features":[`+strings.Join(features, ",")+`]}`))
	return p.Measurement()
}

// placeOf is the column and row of a zone.
func placeOf(t failer, id, untraced string) (at [2]int) {
	if id == "zone/rest" {
		id = "zone/" + untraced
	}
	if _, err := fmt.Sscanf(id, "zone/%d/%d", &at[0], &at[1]); err != nil {
		t.Fatalf("zone %q: %v", id, err)
	}
	return at
}
