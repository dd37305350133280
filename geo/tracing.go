package geo

import (
	"errors"
	"fmt"
	"slices"
)

// A CrossingError says that a ring crosses itself, or winds round some ground
// more than once, so that its area depends on how it is read.
type CrossingError struct {
	At      XY   // the first crossing, or else the first position it comes back to
	Count   int  // how many pairs of edges cross
	AtStake Area // what the traverse sum counts more than once, or cancels
}

func (e *CrossingError) Error() string {
	return fmt.Sprintf("ring crosses itself, %.2f m2 at stake", float64(e.AtStake))
}

// ErrTangled says that a ring crosses itself too often to be made sense of.
var ErrTangled = errors.New("ring crosses itself too often to be repaired")

const (
	mostMeetings = 2000
	negligible   = 1e-5 // m: what is at stake at a crossing, over the length of the ring, is below that rounding and not meaning
)

// RegionOf returns the region of a polygon's rings, shell first, then holes;
// winding and start do not matter. A ring may touch itself. A ring that
// crosses itself by more than rounding is a *CrossingError, or ErrTangled
// beyond 2,000 crossings. A hole is cut out wherever it lies.
func RegionOf(rings []Ring) (Region, error) { return regionOfRings(rings, false) }

// NonZeroRegionOf is RegionOf, but reads a ring that crosses itself by the
// non-zero rule: what it goes round at all is inside, unless it goes round as
// often one way as the other.
func NonZeroRegionOf(rings []Ring) (Region, error) { return regionOfRings(rings, true) }

func regionOfRings(rings []Ring, repair bool) (Region, error) {
	if len(rings) == 0 {
		return Region{}, nil
	}
	shell, err := rings[0].region(repair)
	if err != nil || len(rings) == 1 {
		return shell, err
	}
	holes := make([]Region, len(rings)-1)
	for i, ring := range rings[1:] {
		if holes[i], err = ring.region(repair); err != nil {
			return Region{}, err
		}
	}
	hole, err := Union(holes...)
	if err != nil {
		return Region{}, err
	}
	return Difference(shell, hole)
}

// region returns what a ring encloses.
func (r Ring) region(repair bool) (Region, error) {
	r = r.withoutRepeats()
	if len(r) < 3 {
		return Region{}, nil
	}
	if simple, clear := r.simple(); simple {
		region := regionOf([]Polygon{{Shell: r}})
		region.clear = clear
		return region, nil
	}
	n := newNoder(mostMeetings)
	defer n.release()
	r.edges(func(a, b XY) { n.add(0, a, b) })
	if err := n.node(); err != nil {
		return Region{}, err
	}
	d := n.subdivided()
	defer d.release()
	if stake := d.misread(); stake > negligible*r.length() && !repair {
		return Region{}, n.crossingError(r, stake)
	}
	return d.partition(1, func(counts []lap) int { return len(counts) - 1 })[0], nil
}

func (r Ring) strands() []strand {
	strands := make([]strand, len(r))
	for i, p := range r {
		strands[i] = strandOf(0, spotOf(p), spotOf(r.next(i)))
	}
	return strands
}

// misread returns the ground that the traverse sum counts more than once, and
// twice the ground that it cancels.
func (d *subdivision) misread() float64 {
	traverse := d.measure(once)
	each := d.measure(func(counts []lap) int { return max(once(counts), -once(counts)) })
	covered := d.measure(func(counts []lap) int { return len(counts) })
	return each - covered + each - max(traverse, -traverse)
}

// once is how often the only set goes round some ground.
func once(counts []lap) int {
	if len(counts) == 0 {
		return 0
	}
	return int(counts[0].times)
}

// crossingError tells where a ring, whose edges were noded, crosses itself.
func (n *noder) crossingError(r Ring, stake float64) *CrossingError {
	at := n.first
	if n.crossings == 0 {
		at = firstRevisited(r.strands())
	}
	return &CrossingError{At: at.xy(), Count: n.crossings, AtStake: Area(stake)}
}

// firstRevisited returns the first spot that the edges of a ring come back to.
func firstRevisited(ring []strand) spot {
	n := &noder{strands: slices.Clone(ring), limit: mostMeetings}
	n.sort()
	n.compare()
	touches := make(map[[2]spot][]spot) // by the ends of an edge
	for _, p := range n.stops {
		s := n.strands[p.strand]
		touches[[2]spot{s.a, s.b}] = append(touches[[2]spot{s.a, s.b}], p.at)
	}
	seen := make(map[spot]bool, len(ring))
	for _, s := range ring {
		stops := append(touches[[2]spot{s.a, s.b}], s.a, s.b)
		slices.SortFunc(stops, s.compareAlong)
		stops = slices.Compact(stops)
		if s.runs < 0 {
			slices.Reverse(stops)
		}
		for _, p := range stops[:len(stops)-1] { // the last starts the next edge
			if seen[p] {
				return p
			}
			seen[p] = true
		}
	}
	return ring[0].a
}
