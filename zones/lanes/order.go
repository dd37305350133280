package lanes

import (
	"example.org/turfplat/geo"
	"example.org/turfplat/zones"
)

// order puts tasks into a plan in walking order, with the ways between them.
// Ways keep within the property and off fences, unless there is no other.
func (y Yard) order(plan *Plan, tasks []task) {
	if len(tasks) == 0 {
		return
	}
	walkers := y.walkers()
	tour := newTour(tasks, walkers[0], plan.Work.Shield, y.Start, y.End)
	legs := tour.best()
	s := scribe{plan: plan, walkers: walkers}
	s.at, _ = tour.nearestOf(y.Start, tour.course(legs[0]).entry())
	for _, l := range legs {
		t := tasks[l.task]
		for _, line := range tour.course(l).lines {
			s.spread(Lane{Pass: t.pass, Zone: y.Plots[t.plot].zoneAt(halfway(line)), Line: line, Spreading: true, Spacing: t.pitch})
		}
	}
	if end, _ := tour.nearestOf(y.End, s.at[0]); end != nil {
		s.walk(end[0], Lane{Pass: Fill})
	}
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
	for _, p := range y.Posts {
		closed, hard = append(closed, p.region()), append(hard, p.region())
	}
	walls := append(y.Fences[:len(y.Fences):len(y.Fences)], y.Outline...)
	return []*walker{newWalker(closed, walls), newWalker(closed, nil), newWalker(hard, nil)}
}

// A scribe writes down lanes and the ways to them.
type scribe struct {
	plan    *Plan
	walkers []*walker // the choosier first
	at      []geo.XY  // where the walk has got to, if it has begun
	n       int
}

func (s *scribe) spread(l Lane) {
	s.n++
	l.N = s.n
	s.walk(l.Line[0], l)
	if s.n > 1 {
		s.plan.Turns++
	}
	s.plan.Lanes = append(s.plan.Lanes, l)
	s.at = l.Line[len(l.Line)-1:]
}

// walk writes down the way to a place, for the lane that starts there.
func (s *scribe) walk(to geo.XY, l Lane) {
	if len(s.at) == 0 || s.at[0] == to {
		return
	}
	path := geo.Line{s.at[0], to}
	for i, w := range s.walkers {
		if found := w.path(s.at[0], to); found != nil {
			path = found
			break
		}
		if i > 0 {
			s.plan.Cut = append(s.plan.Cut, max(l.N, s.n))
			break
		}
	}
	s.plan.Lanes = append(s.plan.Lanes, Lane{Pass: l.Pass, N: max(l.N, s.n), Zone: l.Zone, Line: path})
}

// halfway returns the middle of a line's longest side.
func halfway(l geo.Line) geo.XY {
	i := longestSide(l)
	return toward(l[i], l[i+1], 0.5)
}
