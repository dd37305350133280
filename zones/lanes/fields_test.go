package lanes

import (
	"testing"

	"example.org/turfplat/geo"
)

// Two lawns get what each gets alone, however far apart they lie: beyond 10 km
// a region is measured along geodesics, which a plane has not.
func TestLawnsFarApart(t *testing.T) {
	lawn := rectangle(0, 0, 40, 25)
	lay := func(rings ...geo.Ring) (Plan, Coverage) {
		var lawns []geo.Region
		for _, r := range rings {
			lawns = append(lawns, must[geo.Region](t)(geo.RegionOf([]geo.Ring{r})))
		}
		y := yardOf(must[geo.Region](t)(geo.Union(lawns...)))
		p := must[Plan](t)(Lay(y, singleWork(3)))
		return p, p.Coverage(y)
	}
	one, alone := lay(lawn)
	for _, tt := range []struct {
		name string
		away geo.XY
	}{
		{"beside each other", geo.XY{X: 60}},
		{"some way off", geo.XY{X: 1536, Y: 2048}},
		{"two places", geo.XY{X: 12288, Y: 9216}},
		{"two towns", geo.XY{X: 49152, Y: 49152}},
	} {
		t.Run(tt.name, func(t *testing.T) {
			var other geo.Ring
			for _, at := range lawn {
				other = append(other, at.Plus(tt.away))
			}
			p, c := lay(lawn, other)
			near(t, "length of lanes", p.SpreadLength(), 2*one.SpreadLength(), 1e-9, 0)
			near(t, "ground", c.Ground, 2*alone.Ground, 1e-9, 0)
			near(t, "covered", c.Covered, alone.Covered, 0, 1e-3)
			near(t, "evenness", c.Even.CV, alone.Even.CV, 0, 2e-3)
			near(t, "off the turf", c.Outside, alone.Outside, 0, 1e-3)
			for i, l := range p.Lanes {
				if l.Spreading && l.Pass == Header && l.Deflector == Neither {
					t.Errorf("lane %d runs along the edge and is told no deflector", i)
				}
			}
		})
	}
}
