package render

import (
	"slices"

	"example.org/turfplat/geo"
	"example.org/turfplat/zones"
)

// What a cutline divides is seen by the edge between the zones, which lies over
// it. Only where it runs on through a zone does it tell something of its own: that
// it stands in the file and parts nothing there.
const (
	besideEdge = 0.15 // m, as close to an edge of a zone a cutline is that edge
	tellingCut = 0.5  // m, a shorter stretch of a cutline is a pen that slipped
)

// findUncut finds the stretches of cutlines on turf to be treated that part
// nothing.
func (d *draft) findUncut() error {
	cutlines := d.plat.Site.Of(zones.Cutline)
	if len(cutlines) == 0 {
		return nil
	}
	d.uncut = make(map[*zones.Object][]geo.Line)
	for _, z := range d.plat.Zones {
		if !z.Apply {
			continue
		}
		within, err := z.Region.Offset(-besideEdge)
		if err != nil {
			return err
		}
		for _, o := range cutlines {
			for _, l := range o.Lines {
				d.uncut[o] = append(d.uncut[o], d.telling(within.Inside(l))...)
			}
		}
	}
	return nil
}

func (d *draft) telling(stretches []geo.Line) []geo.Line {
	return slices.DeleteFunc(stretches, func(l geo.Line) bool { return d.plat.Site.Frame.LineLength(l) < tellingCut })
}
