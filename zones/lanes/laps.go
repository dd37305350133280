package lanes

import (
	"math"

	"example.org/turfplat/geo"
)

// A belt is what is walked along the edge of some ground: closed laps half a
// swath inside it, an axis line in each arm too narrow for laps, and the
// ground that both leave for others.
type belt struct {
	laps []geo.Line // closed; the ground beyond lies to the right
	axes []geo.Line
	core geo.Region // within the laps
	rest geo.Region
}

// hairline is a deviation, in metres, that overlay may leave in an edge.
const hairline = 1e-4

// beltOf lays a belt of a swath along the edge of some ground. Arms narrower
// than least get no axis: what lies along them serves them.
func beltOf(ground geo.Region, swath, least float64) (belt, error) {
	var b belt
	var err error
	if b.core, err = ground.Offset(-swath / 2); err != nil {
		return b, err
	}
	for _, ring := range ringsOf(b.core) {
		b.laps = append(b.laps, closed(ring))
	}
	arms, err := armsOf(ground, b.core, swath, least)
	if err != nil {
		return b, err
	}
	for _, arm := range arms {
		for _, axis := range axesOf(arm, least/4, swath/2) {
			b.axes = append(b.axes, within(ground, axis, swath/2)...)
		}
	}
	b.rest, err = ground.Offset(-swath)
	return b, err
}

// eased returns a ring without positions past which it runs straight on, but for
// a hairline. The position farthest from the middle, which no straight way
// passes, comes first, wherever the ring started.
func eased(r geo.Ring) geo.Ring {
	var middle geo.XY
	var whole float64
	for i, a := range r {
		b := r[(i+1)%len(r)]
		middle, whole = middle.Plus(a.Plus(b).Times(a.Distance(b)/2)), whole+a.Distance(b)
	}
	middle = middle.Times(1 / whole)
	first, far := 0, 0.0
	for i, p := range r {
		if away := math.Round(middle.Distance(p) * 1e4); away > far {
			first, far = i, away
		}
	}
	l := simplified(startedAt(closed(r), first), hairline)
	return geo.Ring(l[:len(l)-1])
}

// ringsOf returns the rings of a region, each with no more positions than its
// shape needs.
func ringsOf(r geo.Region) []geo.Ring {
	var rings []geo.Ring
	for _, p := range r.Polygons() {
		for _, ring := range p.Rings() {
			if ring = eased(ring); len(ring) > 2 {
				rings = append(rings, ring)
			}
		}
	}
	return rings
}

// meanWidth is the width of the strip that has a region's area and perimeter.
func meanWidth(r geo.Region) float64 { return 2 * areaOf([]geo.Region{r}) / perimeter(r) }

func perimeter(r geo.Region) float64 {
	var sum float64
	edgesOf(r, func(a, b geo.XY) { sum += a.Distance(b) })
	return sum
}

func closed(ring geo.Ring) geo.Line {
	return append(append(geo.Line(nil), ring...), ring[0])
}

// within returns the parts of a line that lie in some ground and are long
// enough.
func within(ground geo.Region, l geo.Line, least float64) []geo.Line {
	var kept []geo.Line
	for _, part := range ground.Inside(l) {
		if length(part) >= least {
			kept = append(kept, part)
		}
	}
	return kept
}

// armsOf returns the parts of the ground that laps round the core do not
// reach, but for what is left in corners: all that holds a disc of half the
// least width, a quarter of it in radius.
func armsOf(ground, core geo.Region, swath, least float64) ([]geo.Region, error) {
	left, err := besideLaps(ground, core, swath)
	if err != nil {
		return nil, err
	}
	var arms []geo.Region
	for _, piece := range left {
		heart, err := piece.Offset(-least / 4)
		if err != nil {
			return nil, err
		}
		if !heart.Empty() {
			arms = append(arms, piece)
		}
	}
	return arms, nil
}

// besideLaps returns the pieces of the ground that laps round the core do not
// reach, to a little more than what rounding may leave along the edge.
func besideLaps(ground, core geo.Region, swath float64) ([]geo.Region, error) {
	const rounding = 0.002 // m
	served, err := core.Offset(swath/2 + rounding)
	if err != nil {
		return nil, err
	}
	left, err := geo.Difference(ground, served)
	return left.Pieces(), err
}

// stints returns the belt as stints, each walked a number of times.
func (b belt) stints(spacing float64, rounds int) []stint {
	var all []stint
	for _, l := range b.laps {
		all = append(all, stint{rows: repeated([]geo.Line{l}, rounds), lap: true, pitch: spacing})
	}
	for _, l := range b.axes {
		all = append(all, stint{rows: repeated([]geo.Line{l}, rounds), pitch: spacing})
	}
	return all
}
