package geo

import "fmt"

// An Overlay is regions laid on each other: the ground divided by their edges,
// all at once. Edges move by up to half a grain where others meet them, the
// same for all ground beside them, so that what it gives fits without gap or
// overlap. Until it is released an overlay never changes, so that several goroutines
// may use one. Release it, once, when all are done with it; one that is not released
// is left to the garbage collector.
type Overlay struct{ subdivision *subdivision }

// mostCrossings is how many crossings of edges an overlay may have.
const mostCrossings = 1 << 22

// Lay lays regions on each other. It fails only if their edges cross more than
// four million times.
func Lay(regions ...Region) (*Overlay, error) {
	n := newNoder(mostCrossings)
	defer n.release()
	for set, r := range regions {
		n.addRegion(set, r)
	}
	if err := n.node(); err != nil {
		return nil, fmt.Errorf("geo: overlay of regions failed: %w", err)
	}
	return &Overlay{n.subdivided()}, nil
}

// Release gives the room of an overlay to others. Afterwards nothing may be asked
// of it, nor may it be released again; regions that it gave stay.
func (o *Overlay) Release() {
	o.subdivision.release()
	o.subdivision = nil
}

// Partition returns the ground of each of n classes. A piece of ground belongs
// to the class it is given for the regions that hold it, which are told by
// their numbers in order; to none if that is negative. It is not asked for
// ground that no region holds.
func (o *Overlay) Partition(n int, class func(holders []int) int) []Region {
	return o.subdivision.partition(n, byHolders(class))
}

// byHolders classes ground by the regions that hold it.
func byHolders(class func(holders []int) int) func(counts []lap) int {
	holders := make([]int, 0, 8)
	return func(counts []lap) int {
		holders = holders[:0]
		for _, c := range counts {
			if c.times > 0 {
				holders = append(holders, int(c.set))
			}
		}
		if len(holders) == 0 {
			return -1
		}
		return class(holders)
	}
}

// Areas returns the areas of what Partition returns, without making it; on the
// ellipsoid, if the overlay lies in the frame.
func (o *Overlay) Areas(f Frame, n int, class func(holders []int) int) []Area {
	if Wide(o.subdivision.extent()) {
		areas := make([]Area, n)
		for k, r := range o.Partition(n, class) {
			areas[k] = f.Area(r)
		}
		return areas
	}
	return o.subdivision.areas(n, byHolders(class))
}

// Ground returns the ground that the regions which hold it say is meant.
func (o *Overlay) Ground(meant func(holders []int) bool) Region {
	return o.Partition(1, func(holders []int) int {
		if meant(holders) {
			return 0
		}
		return -1
	})[0]
}
