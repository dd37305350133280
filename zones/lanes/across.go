package lanes

import (
	"math"
	"slices"

	"example.org/turfplat/geo"
)

// Again says why a lane of a later pass repeats the pass before.
type Again string

// The reasons.
const (
	Narrow  Again = "narrow"  // the ground is too narrow for rows across
	Contour Again = "contour" // the ground is steep, and walked along the contour only
)

// leastAcross is how many swaths rows are long on the mean at least that lie
// across the pass before: shorter ones are more turning than spreading (own
// convention).
const leastAcross = 2

// acrossFrom turns rows at a heading into those at right angles to it, if that is
// asked for and there is room. The cost stays that of the heading, so that rows
// across serve the ground that rows along it do.
func (f filler) acrossFrom(rings []geo.Ring, heading float64, along filling) filling {
	if f.across == 0 {
		return along
	}
	if f.along != nil {
		return along.repeated(Contour)
	}
	over := f.sets(rings, heading+math.Pi/2)
	if over.meanRow() < f.across {
		return along.repeated(Narrow)
	}
	return filling{over.stints, along.cost}
}

// meanRow is how long the rows of a filling are on the mean, m.
func (f filling) meanRow() float64 {
	var whole, rows float64
	for _, s := range f.stints {
		whole += s.length()
		rows += float64(len(s.rows))
	}
	return whole / max(1, rows)
}

// repeated is a filling that says why it lies as that of the pass before.
func (f filling) repeated(why Again) filling {
	stints := slices.Clone(f.stints)
	for i := range stints {
		stints[i].again = why
	}
	return filling{stints, f.cost}
}

// saidAgain are the laps of ground that has no rows, and so none across.
func saidAgain(header, fill []stint) []stint {
	if len(fill) > 0 {
		return header
	}
	return filling{stints: header}.repeated(Narrow).stints
}

// Passes is how many passes the lanes are laid for.
func (p Plan) Passes() int {
	if len(p.Lanes) == 0 {
		return p.Work.Load.passes()
	}
	return p.Lanes[len(p.Lanes)-1].PassNo - p.Lanes[0].PassNo + 1
}

// OfPass is the part of a plan that belongs to one pass of its load, from 1.
func (p Plan) OfPass(n int) Plan {
	part := p
	part.Lanes = slices.DeleteFunc(slices.Clone(p.Lanes), func(l Lane) bool { return l.PassNo != n })
	has := func(number int) bool {
		return slices.ContainsFunc(part.Lanes, func(l Lane) bool { return l.N == number })
	}
	part.Fills = slices.DeleteFunc(slices.Clone(p.Fills), func(f Filling) bool { return !has(f.Lane) })
	part.Cut = slices.DeleteFunc(slices.Clone(p.Cut), func(number int) bool { return !has(number) })
	part.Turns = max(0, part.count()-1)
	return part
}

// count is how many lanes spread.
func (p Plan) count() int {
	n := 0
	for _, l := range p.Lanes {
		if l.Spreading {
			n++
		}
	}
	return n
}

// RepeatedIn are the zones of which some ground is walked in a pass as in the one
// before, for a reason.
func (p Plan) RepeatedIn(n int, why Again) []string {
	var zones []string
	for _, l := range p.Lanes {
		if l.PassNo != n || l.Again != why || !l.Spreading {
			continue
		}
		if !slices.Contains(zones, l.Zone) {
			zones = append(zones, l.Zone)
		}
	}
	return zones
}
