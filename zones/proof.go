package zones

import (
	"fmt"
	"math"

	"example.org/turfplat/geo"
)

// prove adds the plat up: covers and unknown ground make the outline, traced
// turf less deductions makes the turf, zones make the turf. A sum that does
// not close to 1e-4 m2 or 1e-6 of the whole means that an overlay went wrong,
// and that no figure of the site may leave the house.
func (p *Plat) prove() error {
	g := p.Ground
	area := func(r geo.Region) float64 { return float64(p.Site.Frame.Area(r)) }
	turf := area(g.Cover(Turf))

	covers := area(g.Unknown)
	for _, c := range g.Covers {
		covers += area(c.Region)
	}
	left := area(g.Traced.All) - area(g.Traced.Outside)
	for _, d := range g.OffTurf {
		left -= float64(d.Area)
	}
	zones := 0.0
	for _, z := range p.Zones {
		zones += area(z.Region)
	}
	if whole := area(g.Outline); whole > 0 && !closes(covers, whole, whole) {
		return fmt.Errorf("covers add up to %.6f m2 in an outline of %.6f m2", covers, whole)
	}
	if !closes(left, turf, area(g.Traced.All)) {
		return fmt.Errorf("traced turf less deductions is %.6f m2, the turf %.6f m2", left, turf)
	}
	if !closes(zones, turf, turf) {
		return fmt.Errorf("zones add up to %.6f m2 on a turf of %.6f m2", zones, turf)
	}
	return nil
}

// closes compares two sums of areas in a whole, in square metres.
func closes(a, b, whole float64) bool { return math.Abs(a-b) <= max(1e-4, 1e-6*whole) }
