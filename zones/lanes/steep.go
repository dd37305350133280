package lanes

import (
	"fmt"
	"slices"
	"strings"

	"example.org/turfplat/geo/ingest"
	"example.org/turfplat/zones"
)

// TellSteep notes, once a site, what its slopes do to the lanes of a yard.
func (y Yard) TellSteep(s *zones.Site, practice Practice) {
	var hand, blind, laps []string
	for _, p := range y.Plots {
		for _, z := range p.Zones {
			said := fmt.Sprintf("%q (%.0f %%)", labelOf(z), z.Slope)
			switch {
			case p.ByHand:
				hand = append(hand, said)
			case z.Slope > practice.ContourSlope && z.Aspect == nil:
				blind = append(blind, said)
			case z.Slope > practice.WalkSlope:
				laps = append(laps, said)
			}
		}
	}
	warnOnce(s, "slope_by_hand", hand, "steeper than 20 degrees, so without lanes and left to be done by hand", "")
	warnOnce(s, "slope_facing_unknown", blind, "steep, and nothing says where it faces: lanes may run up and down it", "give it aspect_deg, the degrees clockwise from north that it faces, and they follow the contour")
	warnOnce(s, "slope_laps", laps, "steeper than 15 degrees: lanes follow the contour, but header laps also go up and down", "do by hand what cannot be walked safely")
}

// warnOnce notes what is said of zones, unless the site was told already.
func warnOnce(s *zones.Site, code string, names []string, text, hint string) {
	if len(names) == 0 {
		return
	}
	noun := "zone "
	if len(names) > 1 {
		noun = "zones "
	}
	text = noun + strings.Join(names, ", ") + ": " + text
	if !slices.ContainsFunc(s.Problems, func(p ingest.Problem) bool { return p.Code == code && p.Text == text }) {
		s.Warn(code, text, hint)
	}
}

func labelOf(z zones.Zone) string {
	if z.Name != "" {
		return z.Name
	}
	return z.ID
}
