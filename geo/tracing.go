package geo

import (
	"cmp"
	"errors"
	"fmt"
	"math"
	"slices"
)

// A CrossingError says that a ring crosses itself, so that its area depends
// on how it is read.
type CrossingError struct {
	At      XY   // one of the crossings
	Count   int  // how many there are
	AtStake Area // how far the non-zero reading and the traverse sum are apart
}

func (e *CrossingError) Error() string {
	return fmt.Sprintf("ring crosses itself, %.2f m2 at stake", float64(e.AtStake))
}

// ErrTangled says that a ring crosses itself too often to be made sense of.
var ErrTangled = errors.New("ring crosses itself too often to be repaired")

const (
	mostMeetings = 2000
	negligible   = 1e-6 // m2: a crossing that small is rounding, not meaning
)

// RegionOf returns the region of a polygon's rings, shell first, then holes;
// winding and start do not matter. A ring may touch itself. A ring that
// crosses itself is a *CrossingError, and a hole is cut out wherever it lies.
func RegionOf(rings []Ring) (Region, error) { return regionOfRings(rings, false) }

// NonZeroRegionOf is RegionOf, but reads a ring that crosses itself by the
// non-zero rule: what it goes round at all is inside.
func NonZeroRegionOf(rings []Ring) (Region, error) { return regionOfRings(rings, true) }

func regionOfRings(rings []Ring, repair bool) (Region, error) {
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
	ms := r.meetings(mostMeetings)
	if len(ms) == 0 {
		return regionOf([]Polygon{{Shell: r}}), nil
	}
	if len(ms) > mostMeetings {
		return Region{}, ErrTangled
	}
	loops, err := r.simpleLoops(ms)
	if err != nil {
		return Region{}, err
	}
	region, err := nonZero(loops)
	if err != nil || repair {
		return region, err
	}
	if stake := math.Abs(region.planarArea() - math.Abs(r.signedArea())); stake > negligible {
		return Region{}, crossingError(ms, stake)
	}
	return region, nil
}

func crossingError(ms []meeting, stake float64) *CrossingError {
	e := &CrossingError{At: ms[0].at[0], AtStake: Area(stake)}
	for i := len(ms) - 1; i >= 0; i-- {
		if ms[i].crossing {
			e.At = ms[i].at[0]
			e.Count++
		}
	}
	return e
}

// simpleLoops nodes the ring at its meetings and takes it apart. Snapping a
// crossing moves its edges by up to a grain, which may make another;
// a few rounds settle it.
func (r Ring) simpleLoops(ms []meeting) ([]Ring, error) {
	const rounds = 5
	var simple []Ring
	pending := r.noded(ms).loops()
	for range rounds {
		var crossed []Ring
		for _, loop := range pending {
			ms := loop.meetings(mostMeetings)
			switch {
			case len(ms) == 0:
				simple = append(simple, loop)
			case len(ms) > mostMeetings:
				return nil, ErrTangled
			default:
				crossed = append(crossed, loop.noded(ms).loops()...)
			}
		}
		if pending = crossed; len(pending) == 0 {
			return simple, nil
		}
	}
	return nil, ErrTangled
}

// A level is the ground with one winding number.
type level struct {
	winding int
	ground  Region
}

// nonZero returns the ground whose winding number, summed over the loops, is
// not zero.
func nonZero(loops []Ring) (Region, error) {
	var levels []level
	for _, loop := range loops {
		var err error
		if levels, err = wind(levels, regionOf([]Polygon{{Shell: loop}}), sign(loop.signedArea())); err != nil {
			return Region{}, err
		}
	}
	var wound []Region
	for _, l := range levels {
		if l.winding != 0 {
			wound = append(wound, l.ground)
		}
	}
	return Union(wound...)
}

// wind adds turn to the winding number of the ground in a loop.
func wind(levels []level, loop Region, turn int) ([]level, error) {
	var raised []level
	rest := loop
	for _, l := range levels {
		in, err := Intersection(l.ground, loop)
		if err != nil {
			return nil, err
		}
		out, err := Difference(l.ground, loop)
		if err != nil {
			return nil, err
		}
		if rest, err = Difference(rest, l.ground); err != nil {
			return nil, err
		}
		raised = append(raised, level{l.winding + turn, in}, level{l.winding, out})
	}
	return merged(append(raised, level{turn, rest}))
}

// merged joins the levels of equal winding number.
func merged(levels []level) ([]level, error) {
	slices.SortStableFunc(levels, func(a, b level) int { return cmp.Compare(a.winding, b.winding) })
	var joined []level
	for _, l := range levels {
		last := len(joined) - 1
		switch {
		case l.ground.Empty():
		case last >= 0 && joined[last].winding == l.winding:
			u, err := Union(joined[last].ground, l.ground)
			if err != nil {
				return nil, err
			}
			joined[last].ground = u
		default:
			joined = append(joined, l)
		}
	}
	return joined, nil
}
