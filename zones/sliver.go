package zones

import (
	"cmp"
	"slices"

	"example.org/turfplat/geo"
)

// sliver is the mean width, in metres, under which a piece of turf between zones
// is what rounding of coordinates left, not ground.
const sliver = 0.002

// meanWidth is the width of the strip that has a region's area and perimeter.
func (s *Site) meanWidth(r geo.Region) float64 {
	return 2 * float64(s.Frame.Area(r)) / float64(s.Frame.Perimeter(r))
}

// pieces counts the pieces of a region that are more than slivers.
func (s *Site) pieces(r geo.Region) int {
	n := 0
	for _, piece := range r.Pieces() {
		if s.meanWidth(piece) >= sliver {
			n++
		}
	}
	return n
}

// slack is the width, in metres, of a strip of turf along zones that is no
// ground of its own. Edges that are straight on a map, along a parallel, are
// bent on the ground: where one edge of the turf has several zones along it,
// their corners lie off it by as much as the whole of it bends.
func (d *division) slack() float64 {
	return max(sliver, min(d.site.Frame.Bend(d.turf.Bounds().Width()), touching))
}

// withoutStrips gives the strips of what zones left over to the zones along
// them, and returns the rest.
func (d *division) withoutStrips(left geo.Region) (geo.Region, error) {
	if len(d.zones) == 0 {
		return left, nil
	}
	strips, rest, err := left.Strips(d.slack())
	if err != nil {
		return left, err
	}
	kept := []geo.Region{rest}
	for _, strip := range strips.Pieces() {
		beside := d.neighbours(strip)
		if len(beside) == 0 {
			kept = append(kept, strip)
			continue
		}
		if err := d.shareOut(strip, beside); err != nil {
			return left, err
		}
	}
	return geo.Union(kept...)
}

// giveToNeighbours gives a piece to the zones it lies along, if there are any,
// else to the first.
func (d *division) giveToNeighbours(piece geo.Region) error {
	beside := d.neighbours(piece)
	if len(beside) == 0 {
		beside = []neighbour{{zone: 0}}
	}
	return d.shareOut(piece, beside)
}

// shareOut gives each neighbour of a piece what lies along it. What lies along
// several, or none, goes to the first of them.
func (d *division) shareOut(piece geo.Region, beside []neighbour) error {
	if len(beside) == 1 {
		return d.grow(beside[0].zone, piece)
	}
	laid := []geo.Region{piece}
	for _, n := range beside {
		flank, err := piece.Flank(d.zones[n.zone].Region, d.slack())
		if err != nil {
			return err
		}
		laid = append(laid, flank)
	}
	overlay, err := geo.Lay(laid...)
	if err != nil {
		return err
	}
	defer overlay.Release()
	parts := overlay.Partition(len(beside), func(holders []int) int {
		switch {
		case holders[0] != 0:
			return -1
		case len(holders) == 1:
			return 0
		}
		return holders[1] - 1
	})
	for i, n := range beside {
		if err := d.grow(n.zone, parts[i]); err != nil {
			return err
		}
	}
	return nil
}

// grow adds a piece to a zone.
func (d *division) grow(zone int, piece geo.Region) error {
	var err error
	d.zones[zone].Region, err = geo.Union(d.zones[zone].Region, piece)
	return err
}

// A neighbour is a zone that a piece lies along.
type neighbour struct {
	zone  int // in the list of zones
	along geo.Length
}

// neighbours are the zones that a piece lies along, the one with the longest way
// first.
func (d *division) neighbours(piece geo.Region) []neighbour {
	var list []neighbour
	for i, z := range d.zones {
		if along := d.site.Frame.Contact(piece, z.Region, sliver); along > 0 {
			list = append(list, neighbour{i, along})
		}
	}
	slices.SortStableFunc(list, func(a, b neighbour) int { return cmp.Compare(b.along, a.along) })
	return list
}
