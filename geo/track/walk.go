package track

import (
	"fmt"
	"math"
	"slices"

	"example.org/turfplat/geo"
	"example.org/turfplat/geo/ingest"
)

// A Walk is what became of a file of fixes.
type Walk struct {
	Rings    []Ring
	Steps    []Step
	Speed    float64 // usual walking speed, m/s; 0 if the fixes have no times
	Interval float64 // usual time between fixes, s; 0 if they have no times
}

// A Step is one thing done to the fixes, or told of a ring.
type Step struct {
	Ring         int    // 0 = the walk as a whole, else the number of the ring in the order found
	Name         string // such as spikes
	Before, Kept int    // fixes, or stations once the fixes of a stop are one; both 0 if none were in question
	Text         string // one line
}

// Dropped is how many fixes the step took away.
func (s Step) Dropped() int { return s.Before - s.Kept }

func (s Step) kept(n int) Step {
	s.Kept = n
	return s
}

// mostFixes is how many fixes a walk may have: those of a long day at ten a
// second.
const mostFixes = 250_000

// mostRings is how many rings one walk may go round.
const mostRings = 30

// widest is how far, in metres, fixes of one walk may lie from their middle.
const widest = 5_000

// Rings finds the rings in a file of fixes and says how sure the area of each
// is. What it drops or assumes is told in the steps; what blocks a ring, or
// needs an answer of the walker, is a problem:
//
//   - refusals: fixes_none, fixes_few, fixes_many, walk_wide, walk_still, walk_open,
//     rings_many, ring_small, ring_unobserved, ring_uncertain, ring_crosses,
//     ring_overlaps, ring_twice, ring_left, ring_offset
//   - warnings: ring_wheel, ring_assumed, edge_unobserved
//   - notes: rings_several, offset_question, ring_drawn
//
// It takes any fixes, and refuses more than a walk of one property can have.
func Rings(tracks *ingest.Tracks, o Options) (*Walk, []ingest.Problem) {
	r := report{place: placeOf(tracks), options: o}
	fixes := r.fixes(tracks)
	if len(fixes) == 0 {
		return &r.walk, r.problems
	}
	if len(fixes) > mostFixes {
		r.tooMany(len(fixes))
		return &r.walk, r.problems
	}
	r.frame = geo.NewFrame(centre(fixes))
	p, ok := r.cleaned(fixes)
	if !ok {
		return &r.walk, r.problems
	}
	t := newTraverse(p)
	b := p.believed(o.Sigma)
	groups := r.laps(t, b)
	left := t.places(t.left(groups))
	for i, laps := range groups {
		if r.followed(t, laps, left, b, i+1) {
			r.ring(t, laps, b, i+1)
		}
	}
	r.parted(b)
	r.nest()
	r.moveEdges()
	r.ask()
	return &r.walk, r.problems
}

// fewestFixes are needed to go round anything.
const fewestFixes = 4

// cleaned runs the steps that drop fixes.
func (r *report) cleaned(fixes []ingest.Fix) (path, bool) {
	p, step := newPath(fixes, r.frame)
	r.step(step)
	if p.timed {
		r.walk.Interval, r.walk.Speed = p.interval, p.usualSpeed()
	}
	for _, do := range []func(path) (path, Step){path.gated, path.settled, path.withoutSpikes, path.withStops} {
		before := p
		p, step = do(p)
		r.step(step)
		if len(p.stations) < fewestFixes {
			r.tooFew(before, step)
			return p, false
		}
	}
	if e := p.extent(); e > widest {
		r.refuse("walk_wide", fmt.Sprintf("fixes lie up to %.0f km from the middle of the walk", e/1000), "give the walk of one property")
		return p, false
	}
	return p, true
}

// laps finds the laps of each ring.
func (r *report) laps(t traverse, b belief) [][]lap {
	gate := t.path.gate(b)
	groups := t.rings(gate)
	all := len(groups)
	groups = slices.DeleteFunc(groups, func(g []lap) bool { return g[0].width() < max(narrowest.Value, b.sigma) })
	r.step(Step{Name: "laps", Before: len(t.at), Kept: len(t.at) - len(t.left(groups)), Text: fmt.Sprintf(
		"%s, closed within %.1f m; the way there and away and %s left out", plural(len(groups), "ring"), gate, plural(all-len(groups), "knot"))})
	if len(groups) == 0 {
		r.noRing(t, gate, all)
	}
	if len(groups) > mostRings {
		r.refuse("rings_many", fmt.Sprintf("the walk goes round %d rings, more than %d", len(groups), mostRings), "give the walk of one property")
		return nil
	}
	if len(groups) > 1 {
		r.note("rings_several", fmt.Sprintf("the walk goes round %d rings", len(groups)),
			"check on a map that each is what you meant")
	}
	return groups
}

// ring measures one ring, or refuses it.
func (r *report) ring(t traverse, laps []lap, b belief, number int) {
	laps, stake := r.observed(t, laps, number)
	if laps == nil {
		return
	}
	mean := meanOf(laps)
	area, gradient := t.lapArea(laps)
	e := t.estimated(laps, mean, gradient, b)
	e.sigma, e.ci95 = math.Hypot(e.sigma, stake/2), math.Hypot(e.ci95, stake)
	if e.sigma > worstError.Value*area {
		r.tooUncertain(laps, area, e, number)
		r.uncertain = append(r.uncertain, contour{number: number, at: mean.at})
		return
	}
	region, err := outlined(mean.at, area)
	if err != nil {
		r.refuse("ring_crosses", fmt.Sprintf("ring %d crosses itself however it is smoothed", number), "walk it again, round one piece of ground at a time")
		return
	}
	g := Ring{Number: number, Laps: len(laps), Used: used(laps), Sigma: geo.Area(e.sigma), CI95: geo.Area(e.ci95), Noise: e.noise, Assumed: e.assumed, Within: -1}
	g.measure(region, r.frame)
	g.judge(b)
	for _, l := range laps {
		g.Raw = append(g.Raw, t.raw(l))
	}
	r.walk.Rings, r.regions = append(r.walk.Rings, g), append(r.regions, region)
	r.explain(t, g, laps, e, b, number)
}
