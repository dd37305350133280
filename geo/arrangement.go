package geo

import "slices"

// An arrangement overlays regions on the grid of snapped positions: their
// edges are noded together, exactly, and the ground between them is told apart
// by how often it is gone round. Edges move by up to a grain where others meet
// them. It settles what the engine cannot.

const mostMeetingsOfRegions = 1 << 20

// arrangedParts returns the parts of a inside and outside b.
func arrangedParts(a, b Region) (in, out Region, err error) {
	l, err := arranged([]Region{a}, []Region{b})
	if err != nil {
		return Region{}, Region{}, err
	}
	in = l.ground(func(w winding) bool { return w[0] > 0 && w[1] > 0 })
	out = l.ground(func(w winding) bool { return w[0] > 0 && w[1] <= 0 })
	return in, out, nil
}

// arrangedUnion returns the ground in any of the regions.
func arrangedUnion(regions []Region) (Region, error) {
	l, err := arranged(regions, nil)
	if err != nil {
		return Region{}, err
	}
	return l.ground(func(w winding) bool { return w[0] > 0 }), nil
}

func arranged(a, b []Region) (spokeList, error) {
	first := lineworkOf(a)
	noded, _, err := slices.Concat(first, lineworkOf(b)).noded(mostMeetingsOfRegions)
	if err != nil {
		return nil, err
	}
	return spokes([2]linework{noded[:len(first)], noded[len(first):]}), nil
}

func lineworkOf(regions []Region) linework {
	var w linework
	for _, r := range regions {
		for _, p := range r.polygons {
			for _, ring := range p.Rings() {
				if ring = ring.snapped().withoutRepeats(); len(ring) > 2 {
					w = append(w, ring)
				}
			}
		}
	}
	return w
}
