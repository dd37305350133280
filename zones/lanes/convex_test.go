package lanes

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"example.org/turfplat/geo"
)

// bound is the least length of lanes that could serve what a plan serves.
func (p Plan) bound() float64 {
	return areaOf(p.Walked) / p.Work.Mode.Spacing(p.Work.Pattern.Swath())
}

// convexLawns are lawns without a dent, at least ten swaths of 2.5 m wide.
func convexLawns() map[string]geo.Ring {
	lawns := map[string]geo.Ring{
		"square, least": rectangle(0, 0, 25, 25), "square, just over": rectangle(0, 0, 25.025, 25.025), "square": rectangle(0, 0, 40, 40),
		"rectangle": rectangle(0, 0, 60, 25.1), "long": rectangle(0, 0, 200, 26), "disc": regular(72, 0, 0, 13), "large disc": regular(72, 0, 0, 30),
		"triangle": {{X: 0, Y: 0}, {X: 80, Y: 0}, {X: 20, Y: 50}}, "hexagon": regular(6, 0, 0, 20), "pentagon": regular(5, 0, 0, 25),
		"trapezoid": {{X: 0, Y: 0}, {X: 50, Y: 0}, {X: 40, Y: 27}, {X: 10, Y: 27}},
	}
	random := rand.New(rand.NewPCG(7, 7))
	for i := range 12 {
		var ring geo.Ring
		n := 5 + i%6
		a, b := 16+20*random.Float64(), 16+30*random.Float64()
		for k := range n {
			sin, cos := math.Sincos(2 * math.Pi * (float64(k) + 0.6*random.Float64()) / float64(n))
			ring = append(ring, geo.XY{X: a * cos, Y: b * sin})
		}
		lawns[fmt.Sprintf("inscribed in an ellipse, %d", i)] = ring
	}
	return lawns
}

func TestConvexLawns(t *testing.T) {
	for name, ring := range convexLawns() {
		y := yardOf(must[geo.Region](t)(geo.RegionOf([]geo.Ring{ring})))
		p := must[Plan](t)(Lay(y, singleWork(2.5)))
		c := p.Coverage(y)
		ratio := p.SpreadLength() / p.bound()
		t.Logf("%-28s ground %7.1f ratio %.3f covered %.4f outside %.5f cv %.3f", name, c.Ground, ratio, c.Covered, c.Outside, c.Even.CV)
		if ratio > 1.08 {
			t.Errorf("%s: %.3f of the least length, want 1.08", name, ratio)
		}
		if c.Covered < 0.99 || c.Outside > 0.01 {
			t.Errorf("%s: covered %.4f, outside %.4f", name, c.Covered, c.Outside)
		}
	}
}
