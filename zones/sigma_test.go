package zones

import (
	"fmt"
	"math"
	"testing"
)

// tapedVariance is the variance of the area of a rectangle whose corners err
// by themselves: sigma2 / 4 times the sum of the squared steps from the corner
// before to the one after, which are all diagonals, and n/2 sigma4 for the
// products of errors.
func tapedVariance(wide, deep, sigma float64) float64 {
	return sigma*sigma*(wide*wide+deep*deep) + 2*math.Pow(sigma, 4)
}

func TestSigma(t *testing.T) {
	taped := func(sigma float64) string { return fmt.Sprintf(`"source":"taped","sigma_m":%g`, sigma) }
	width := func(sigma float64) string { return fmt.Sprintf(`"source":"default_width","sigma_m":%g`, sigma) } // all edges err together
	certain := taped(0)
	plot := rectangle(0, 0, 20, 10)
	for _, tt := range []struct {
		name   string
		sketch sketch
		cover  Kind
		want   float64
	}{
		{"outline", sketch{polygon(kind(Outline, "lot", taped(0.2)), plot)}, Turf, math.Sqrt(tapedVariance(20, 10, 0.2))},
		{"outline less a bed", sketch{polygon(kind(Outline, "lot", taped(0.2)), plot), polygon(kind(Bed, "bed", taped(0.5)), rectangle(4, 3, 9, 7))},
			Turf, math.Sqrt(tapedVariance(20, 10, 0.2) + tapedVariance(5, 4, 0.5))},
		{"the bed itself", sketch{polygon(kind(Outline, "lot", taped(0.2)), plot), polygon(kind(Bed, "bed", taped(0.5)), rectangle(4, 3, 9, 7))},
			Bed, math.Sqrt(tapedVariance(5, 4, 0.5))},
		{"edges that err together", sketch{polygon(kind(Turf, "lawn", width(0.4)), plot)}, Turf, 0.4 * 60},
		{"walked lap", sketch{polygon(kind(Turf, "lawn", `"source":"walked"`), plot)}, Turf, 0.45 * 60},
		{"certain lawn", sketch{polygon(kind(Turf, "lawn", certain), plot)}, Turf, 0},
		{"drive of a default width across the lawn", sketch{polygon(kind(Turf, "lawn", certain), plot),
			lineString(kind(Hardscape, "drive", `"width_m":3`, `"source":"default_width"`), xy(12, -5), xy(12, 15))}, Turf, 2 * 10 * 0.4},
		{"drive of a stated width across the lawn", sketch{polygon(kind(Turf, "lawn", certain), plot),
			lineString(kind(Hardscape, "drive", `"width_m":3`), xy(12, -5), xy(12, 15))}, Turf, 2 * 10 * 0.1},
		{"footway of a default width", sketch{polygon(kind(Turf, "lawn", certain), plot), lineString(`"highway":"footway","id":"f"`, xy(12, -5), xy(12, 15))}, Turf, 2 * 10 * 0.4},
		{"drive along the edge", sketch{polygon(kind(Turf, "lawn", certain), plot),
			lineString(kind(Hardscape, "drive", `"width_m":3`, `"source":"default_width"`), xy(20, -5), xy(20, 15))}, Turf, 10 * 0.4},
		{"bed against a wall", sketch{polygon(kind(Turf, "lawn", certain), plot), polygon(kind(Building, "house", width(0.2)), rectangle(2, 2, 8, 8)),
			polygon(kind(Bed, "bed", width(0.4)), rectangle(8, 3, 10, 7))}, Bed, math.Hypot(0.2*4, 0.4*(2+4+2))},
		{"lawn round a bed against a wall", sketch{polygon(kind(Turf, "lawn", certain), plot), polygon(kind(Building, "house", width(0.2)), rectangle(2, 2, 8, 8)),
			polygon(kind(Bed, "bed", width(0.4)), rectangle(8, 3, 10, 7))}, Turf, math.Hypot(0.2*(4*6-4), 0.4*(2+4+2))},
		{"bed traced under the wall", sketch{polygon(kind(Turf, "lawn", certain), plot), polygon(kind(Building, "house", width(0.2)), rectangle(2, 2, 8, 8)),
			polygon(kind(Bed, "bed", width(0.4)), rectangle(6, 3, 10, 7))}, Bed, math.Hypot(0.2*4, 0.4*(2+4+2))},
		{"lot line traced twice", sketch{polygon(kind(Outline, "lot", width(0.1)), plot), polygon(kind(Turf, "lawn", width(0.4)), plot)}, Turf, 0.4 * 60},
	} {
		t.Run(tt.name, func(t *testing.T) {
			m := tt.sketch.measure(t).Covers[tt.cover]
			near(t, "sigma", m.SigmaM2, tt.want, 1e-6, 1e-6)
			near(t, "95 % interval", m.CI95M2, 1.959963984540054*m.SigmaM2, 1e-12, 0)
		})
	}
}

// The line that a cutline draws is exact: it errs for neither zone.
func TestSigmaOfZones(t *testing.T) {
	m := sketch{polygon(kind(Turf, "lawn", `"source":"default_width","sigma_m":0.4`), rectangle(0, 0, 20, 10)), cutline("c", xy(5, -1), xy(5, 11))}.measure(t)
	near(t, "east", m.Zones[0].SigmaM2, 0.4*(15+10+15), 1e-6, 0)
	near(t, "west", m.Zones[1].SigmaM2, 0.4*(5+10+5), 1e-6, 0)
	near(t, "lawn", m.Covers[Turf].SigmaM2, 0.4*60, 1e-6, 0)
}
