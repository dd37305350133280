package lanes

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"example.org/turfplat/geo/ingest"
	"example.org/turfplat/zones"
)

// TellSlopes adds to the problems of a site, once for each object that states one
// and in their order, what its slope means for the machines on it and for lanes.
func TellSlopes(p *zones.Plat, practice Practice) {
	var said []ingest.Problem
	for _, z := range p.Zones {
		one, there := practice.slopeOf(z)
		one.Place = z.Place()
		if there && !slices.ContainsFunc(said, func(p ingest.Problem) bool { return p.Place == one.Place }) {
			said = append(said, one)
		}
	}
	slices.SortStableFunc(said, func(a, b ingest.Problem) int { return cmp.Compare(a.Place.Feature, b.Place.Feature) })
	p.Site.Problems = append(p.Site.Problems, said...)
}

// slopeOf says what the slope of a zone means; false if that is nothing.
func (practice Practice) slopeOf(z zones.Zone) (ingest.Problem, bool) {
	said := ingest.Problem{Severity: ingest.Warning}
	switch {
	case z.Slope > practice.HandSlope:
		said.Code, said.Text = "slope_hand", "no wheeled machine and no lanes; by hand, from firm footing"
	case z.Slope > practice.WalkSlope:
		said.Code, said.Text = "slope_walk", "no riding machine; on foot, dry, and only as far as the machine's manual allows"
	case z.Slope > practice.ContourSlope && z.Aspect != nil:
		said.Code, said.Text, said.Severity = "slope_contour", "lanes follow the contour", ingest.Note
	case z.Slope > practice.ContourSlope:
		said.Code, said.Text = "slope_facing_unknown", "lanes may run up and down it, as nothing says where it faces"
	default:
		return said, false
	}
	if z.Aspect == nil && z.Slope <= practice.HandSlope {
		said.Hint = "give it aspect_deg, the degrees clockwise from north that it faces, and lanes follow the contour"
	}
	angle := math.Atan(z.Slope/100) * 180 / math.Pi
	said.Text = fmt.Sprintf("slope_percent %g is %.0f degrees: %s", z.Slope, angle, said.Text)
	return said, true
}
