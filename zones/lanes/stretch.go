package lanes

import (
	"cmp"
	"slices"

	"example.org/turfplat/geo"
)

// A Stretch is how much of a lane lies in one zone.
type Stretch struct {
	Zone  string  // its id
	Share float64 // of the lane's length, and so of what it puts out; those of a lane sum to 1
}

// stretches returns the zones through which a lane of the plot runs, in the
// plot's order. What runs along the border of two is shared out as the rest is.
func (p Plot) stretches(l geo.Line) []Stretch {
	if len(p.Zones) == 1 {
		return []Stretch{{p.Zones[0].ID, 1}}
	}
	var found []Stretch
	var all float64
	for _, z := range p.Zones {
		if !z.Region.Bounds().Meets(l.Bounds()) {
			continue
		}
		var within float64
		for _, part := range z.Region.Inside(l) {
			within += length(part)
		}
		if within > 0 {
			found, all = append(found, Stretch{z.ID, within}), all+within
		}
	}
	if all == 0 {
		return []Stretch{{p.zoneAt(halfway(l)), 1}}
	}
	for i := range found {
		found[i].Share /= all
	}
	return found
}

// mostly returns the zone in which the most of a lane lies.
func mostly(all []Stretch) string {
	return slices.MaxFunc(all, func(a, b Stretch) int { return cmp.Compare(a.Share, b.Share) }).Zone
}
