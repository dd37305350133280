package geo

import (
	"errors"
	"fmt"
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
	if r.simple() {
		return regionOf([]Polygon{{Shell: r}}), nil
	}
	if r = r.snapped().withoutRepeats(); len(r) < 3 {
		return Region{}, nil
	}
	noded, ms, err := linework{r}.noded(mostMeetings)
	if err != nil {
		return Region{}, err
	}
	spokes := spokes([2]linework{noded})
	if stake := spokes.misread(); stake > negligible*r.length() && !repair {
		return Region{}, crossingError(noded[0], ms, stake)
	}
	return spokes.ground(func(w winding) bool { return w[0] != 0 }), nil
}

// misread returns the ground that the traverse sum counts more than once, and
// twice the ground that it cancels.
func (l spokeList) misread() float64 {
	traverse := l.measure(func(w winding) int { return w[0] })
	each := l.measure(func(w winding) int { return max(w[0], -w[0]) })
	once := l.measure(func(w winding) int { return min(1, max(w[0], -w[0])) })
	return each - once + each - max(traverse, -traverse)
}

func crossingError(noded Ring, ms []meeting, stake float64) *CrossingError {
	e := &CrossingError{At: noded.firstRevisited(), AtStake: Area(stake)}
	for _, m := range ms {
		if !m.crossing {
			continue
		}
		if e.Count == 0 {
			e.At = m.at[0]
		}
		e.Count++
	}
	return e
}

func (r Ring) firstRevisited() XY {
	seen := make(map[XY]bool, len(r))
	for _, p := range r {
		if seen[p] {
			return p
		}
		seen[p] = true
	}
	return r[0]
}
