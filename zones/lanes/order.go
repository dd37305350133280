package lanes

import (
	"math"
	"slices"

	"example.org/turfplat/geo"
	"example.org/turfplat/zones"
)

// order puts the tasks of each pass into a plan in walking order, with the ways
// between them. Ways keep within the property and off fences, unless there is no
// other. Each pass ends where the walk may end, and leads back to where it may start
// if another one follows.
func (y Yard) order(plan *Plan, passes [][]task) {
	if len(passes[0]) == 0 {
		return
	}
	s := scribe{plan: plan, yard: y, walkers: y.walkers()}
	from := y.Start
	for i, tasks := range passes {
		s.begin(tasks)
		tour := y.orderPass(&s, tasks, from)
		if start, _ := tour.nearestOf(y.Start, s.at[0]); start != nil && i < len(passes)-1 {
			s.walk(start[0], Lane{Pass: Fill})
		}
		from = s.at
	}
}

// orderPass writes down one pass over the yard, from one of some places if there
// are any.
func (y Yard) orderPass(s *scribe, tasks []task, from []geo.XY) *tour {
	tour := newTour(tasks, s.walkers[0], s.plan.Work.Shield, from, y.End)
	legs := tour.best()
	s.at, _ = tour.nearestOf(from, tour.course(legs[0]).entry())
	for _, l := range legs {
		t := tasks[l.task]
		for _, line := range tour.course(l).lines {
			through := y.Plots[t.plot].stretches(line)
			s.spread(Lane{Pass: t.pass, Zone: mostly(through), Stretches: through, Line: line, Spreading: true, Spacing: t.pitch, Again: t.again})
		}
	}
	if end, _ := tour.nearestOf(y.End, s.at[0]); end != nil {
		s.walk(end[0], Lane{Pass: Fill})
	}
	return tour
}

// perMetre is the ground that the output of a metre serves, m2: the spreader is
// set so that all lanes together put out the rate times the ground.
func perMetre(plan *Plan, tasks []task) float64 {
	var whole float64
	for _, t := range tasks {
		whole += t.length()
	}
	return areaOf(plan.Walked) / whole
}

// roundPosts leads a way round posts, unless it starts or ends at one.
func (y Yard) roundPosts(way geo.Line) geo.Line {
	led := bent(way, y.Posts, func(p geo.XY) bool {
		return !slices.ContainsFunc(y.Closed, func(c zones.Cover) bool { return c.Region.Contains(p) })
	})
	if len(led) < 2 || led[0] != way[0] || led[len(led)-1] != way[len(way)-1] {
		return way
	}
	return led
}

// walkers returns walkers of whom each goes where those before it would not:
// past fences and the property's edge, then across beds.
func (y Yard) walkers() []*walker {
	var closed, hard []geo.Region
	for _, c := range y.Closed {
		closed = append(closed, c.Region)
		if c.Kind != zones.Bed {
			hard = append(hard, c.Region)
		}
	}
	walls := append(y.Fences[:len(y.Fences):len(y.Fences)], y.Outline...)
	return []*walker{newWalker(closed, walls), newWalker(closed, nil), newWalker(hard, nil)}
}

// A scribe writes down lanes and the ways to them.
type scribe struct {
	plan     *Plan
	yard     Yard
	walkers  []*walker // the choosier first
	perMetre float64   // m2 that the output of a metre serves
	left     float64   // m2 that what is left in the hopper serves
	togo     float64   // m2 that lanes to come serve
	at       []geo.XY  // where the walk has got to, if it has begun
	n        int
	pass     int // of the load, from 1
}

// begin starts the next pass, for which the hopper is filled anew.
func (s *scribe) begin(tasks []task) {
	s.pass++
	s.perMetre = perMetre(s.plan, tasks)
	s.left, s.togo = 0, areaOf(s.plan.Walked)
}

// full is the ground, in m2, that the hopper serves when it is filled: no more
// than the lanes to come, and all of them if nothing is known of the hopper.
func (s *scribe) full() float64 {
	if s.plan.Work.Filling > 0 {
		return min(s.plan.Work.Filling, s.togo)
	}
	return s.togo
}

// short reports whether more ground than rounding is to be served than what is
// left in the hopper serves.
func (s *scribe) short(ground float64) bool {
	const hair = 1e-6
	return ground > s.left*(1+hair)+hair
}

// fill fills the hopper for a lane, and writes down with how much.
func (s *scribe) fill(lane int, on bool) {
	full := s.full()
	if s.plan.Work.Filling > 0 {
		s.plan.Fills = append(s.plan.Fills, Filling{Lane: lane, On: on, Ground: full - s.left, Full: full})
	}
	s.left = full
}

// spread writes down a lane, and before it the way there, by way of a refill
// if the hopper would run out on it. A lane longer than a filling lasts is
// filled for again on it.
func (s *scribe) spread(l Lane) {
	s.n++
	l.N, l.PassNo, l.Ground = s.n, s.pass, length(l.Line)*s.perMetre
	switch {
	case s.first():
		s.fill(l.N, false)
	case s.short(l.Ground):
		s.refill(l)
	}
	s.walk(l.Line[0], l)
	if s.n > 1 {
		s.plan.Turns++
	}
	rest := l.Ground
	for ; s.short(rest) && s.left > 0; s.fill(l.N, true) {
		rest -= s.left
		s.togo -= s.left
		s.left = 0
	}
	s.togo -= rest
	s.left = max(0, s.left-rest)
	l.Left = s.left
	s.plan.Lanes = append(s.plan.Lanes, l)
	s.at = l.Line[len(l.Line)-1:]
}

// first reports whether no lane of the pass is written down yet.
func (s *scribe) first() bool {
	lanes := s.plan.Lanes
	return len(lanes) == 0 || lanes[len(lanes)-1].PassNo < s.pass
}

// refill writes down the way to the nearest refill point, if there is any.
func (s *scribe) refill(l Lane) {
	s.fill(l.N, false)
	var nearest []geo.XY
	least := math.Inf(1)
	for i, p := range s.yard.Refills {
		if d := s.walkers[0].way(s.at[0], p); d < least {
			nearest, least = s.yard.Refills[i:i+1], d
		}
	}
	if nearest != nil {
		s.walk(nearest[0], Lane{Pass: l.Pass, N: l.N, Zone: l.Zone, Refill: true})
	}
}

// walk writes down the way to a place, for the lane that starts there.
func (s *scribe) walk(to geo.XY, l Lane) {
	if len(s.at) == 0 || s.at[0] == to {
		return
	}
	n := max(l.N, s.n)
	path := geo.Line{s.at[0], to}
	for i, w := range s.walkers {
		if found := w.path(s.at[0], to); found != nil {
			path = found
			break
		}
		if i > 0 {
			s.plan.Cut = append(s.plan.Cut, n)
			break
		}
	}
	s.plan.Lanes = append(s.plan.Lanes, Lane{Pass: l.Pass, N: n, Zone: l.Zone, Line: s.yard.roundPosts(path), Refill: l.Refill, PassNo: s.pass})
	s.at = geo.Line{to}
}

// halfway returns the middle of a line's longest side.
func halfway(l geo.Line) geo.XY {
	i := longestSide(l)
	return l[i].Toward(l[i+1], 0.5)
}
