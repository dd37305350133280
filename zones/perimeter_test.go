package zones

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"
)

// A drive ends beside a house, a gap away from its wall.
func TestPerimeterLeavesOutHairlines(t *testing.T) {
	const against, beside = 80.0, 86.0 // what 3 m of wall and 3 m of drive make
	for _, tt := range []struct{ gap, want float64 }{
		{-0.04, against}, {0, against}, {1e-6, against}, {1e-4, against}, {0.04, against}, {0.1, beside}, {1, beside},
	} {
		t.Run(fmt.Sprint(tt.gap), func(t *testing.T) {
			m := sketch{
				lawn,
				covering(Building, "house", rectangle(5, 3, 9, 6)),
				covering(Hardscape, "drive", rectangle(9+tt.gap, -5, 12+tt.gap, 6)),
			}.measure(t)
			turf := m.Covers[Turf]
			overlap := max(0, -tt.gap)
			near(t, "perimeter", turf.PerimeterM, tt.want, 1e-7, 2*overlap+1e-6)
			near(t, "area", turf.AreaM2, 200-12-18+3*overlap, 1e-7, 1e-5)
			near(t, "perimeter of the zone", m.Zones[0].PerimeterM, turf.PerimeterM, 0, 0)
		})
	}
}

// Round a yard whose turf lies between covers, the edges against each of them
// add up to its perimeter, whatever gaps their tracings leave.
func TestEdgesAddUpToThePerimeter(t *testing.T) {
	check(t, 200, func(t *rapid.T) {
		gap := func(where string) float64 {
			return rapid.SampledFrom([]float64{-0.02, 0, 1e-7, 1e-4, 0.02, 0.045}).Draw(t, "gap at the "+where)
		}
		size := func(what string) float64 { return rapid.Float64Range(1.5, 4).Draw(t, what) }
		east, north := 12+size("house east"), 8+size("house north")
		drive, bed, path := gap("drive"), gap("bed"), gap("path")
		s := sketch{
			polygon(kind(Hardscape, "paving"), rectangle(-2, -2, 32, 22), rectangle(0, 0, 30, 20)),
			covering(Turf, "lawn", rectangle(0, 0, 30, 20)),
			covering(Building, "house", rectangle(12, 8, east, north)),
			covering(Hardscape, "drive", rectangle(east+drive, -1, east+drive+size("drive"), 8+size("drive's end")/2)),
			covering(Bed, "bed", rectangle(12-size("bed"), north+bed, east, north+bed+size("bed's depth"))),
			covering(Hardscape, "path", rectangle(-1, 8+size("path")/4, 12-path, 9.5)),
		}
		m := s.measure(t)
		sum := m.Edges.TurfHardscapeM + m.Edges.TurfBedM + m.Edges.TrimM
		near(t, "edges against all that stands round the turf", sum, m.Covers[Turf].PerimeterM, 0, 4*(math.Abs(drive)+math.Abs(bed)+math.Abs(path))+1e-5)
	})
}

// A zone with a hairline into the next one, and the next one, share the line
// between them only.
func TestZonesAgreeAboutPerimeters(t *testing.T) {
	for _, hair := range []float64{1e-6, 1e-4, 0.01} {
		south := covering(ZoneKind, "south", rectangle(0, 0, 20, 4))
		south.lines[0] = append(south.lines[0][:3:3], xy(12, 4), xy(12, 9), xy(12-hair, 9), xy(12-hair, 4), xy(0, 4), xy(0, 0))
		p := sketch{lawn, south}.plat(t)
		for _, m := range []Measurement{p.Measurement(), rewritten(t, p).Measurement()} {
			near(t, "rest", m.Zones[0].PerimeterM, 52, 0, 2*hair+1e-5)
			near(t, "south", m.Zones[1].PerimeterM, 48, 0, 2*hair+1e-5)
			near(t, "turf", m.Covers[Turf].PerimeterM, 60, 0, 1e-5)
		}
	}
}
