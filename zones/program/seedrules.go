package program

import "time"

// judgeSeed keeps seed off ground where a pre-emergent is live.
func (pl *planner) judgeSeed(s *StepPlan) {
	if !isSeed(s.Step) {
		return
	}
	told := make(map[*Step]bool)
	for first, on := range pl.others(s, isPreEmergent) {
		wait := seedWaitAfter(first.Step.Product.Active)
		if wait.allowed && first.Step.BlocksSeed == 0 {
			s.add(Verdict{Rule: "preemergent_seed", Severity: Note, Zones: on, Source: wait.source,
				Text: first.Step.Product.Active + " may be used at seeding: look at its label"})
			continue
		}
		if n, source := seedDays(first.Step, s.Step, wait); n > 0 && !told[first.Step] {
			told[first.Step] = pl.judgeLive(s, first, on, n, source)
		}
	}
}

// judgeAfterSpray warns of seed that may come too soon after a broadleaf spray
// whose label does not state the wait, and holds it back while both are due.
func (pl *planner) judgeAfterSpray(s *StepPlan) {
	if !isSeed(s.Step) {
		return
	}
	n := figureDays("broadleaf_seed")
	for first, on := range pl.others(s, using(Broadleaf)) {
		free := first.timing.span.to.AddDate(0, 0, n)
		if first.Step.BlocksSeed > 0 || s.timing.span.to.Before(first.timing.span.from) || !s.timing.span.from.Before(free) || s.precedes(first) {
			continue
		}
		v := verdict("broadleaf_seed", on, "%s after %s (%s): what is left of it harms seedlings", inWords(n), first.Step.Name(), first.lastDay())
		v.Until = free
		pl.addApart(s, first, v)
	}
}

// seedDays is how long seed waits after a pre-emergent, and who says so.
func seedDays(first, seed *Step, wait seedWait) (n int, source string) {
	switch {
	case first.BlocksSeed > 0:
		return days(first.BlocksSeed), "blocks_seed of step " + first.ID
	case seed.Method == Slit:
		return 7 * wait.slit, wait.source
	}
	return 7 * wait.broadcast, wait.source
}

// judgeLive holds seed against one pre-emergent, and reports whether that is live.
func (pl *planner) judgeLive(s, first *StepPlan, on []Ground, n int, source string) bool {
	free := first.timing.span.to.AddDate(0, 0, n)
	seed := s.timing.span
	if seed.to.Before(first.timing.span.from) || !seed.from.Before(free) || s.precedes(first) {
		return false
	}
	v := verdict("preemergent_seed", on, "no seed for %s after %s (%s)", inWords(n), first.Step.Name(), first.lastDay())
	v.Until, v.Source = free, source
	switch forGood := seed.to.Before(free); {
	case first.Step.OnlyIf != "" && !first.done():
		v.Severity = Warn
		v.Text = "seed or " + first.Step.Name() + ", not both: " + v.Text
	case forGood:
		v.forGood = true
		v.Text += ": that is past this step's dates"
	}
	s.add(v)
	return true
}

// judgeBarrier warns of work that breaks or buries a pre-emergent, and of one
// on young seedlings.
func (pl *planner) judgeBarrier(s *StepPlan) {
	does := s.Step.Does
	if does == Core || does == Rake || does == Topdress {
		told := make(map[*Step]bool)
		for first, on := range pl.others(s, isPreEmergent) {
			n, _ := seedDays(first.Step, &Step{}, seedWaitAfter(first.Step.Product.Active))
			free := first.timing.span.to.AddDate(0, 0, n)
			if s.timing.span.to.Before(first.timing.span.from) || !s.timing.span.from.Before(free) || n == 0 || s.precedes(first) || told[first.Step] {
				continue
			}
			told[first.Step] = true
			name, what := "preemergent_disturbed", "breaks"
			if does == Topdress {
				name, what = "preemergent_buried", "buries"
			}
			v := verdict(name, on, "it %s the barrier that %s (%s) lays", what, first.Step.Name(), first.lastDay())
			v.Until = free
			s.add(v)
		}
	}
	switch {
	case s.Step.isFor(Broadleaf):
		pl.judgeAfterSeed(s, "seed_broadleaf", "young seedlings do not bear the spray until they are mown two to four times")
	case isPreEmergent(s.Step):
		pl.judgeAfterSeed(s, "seed_preemergent", "the seedlings must be mown two to four times first")
	case s.Step.AfterSeed > 0:
		pl.judgeAfterSeed(s, "seed_broadleaf", "young seedlings do not bear it yet")
	}
}

// judgeAfterSeed warns of a step that may come too soon after seed, and until
// when to wait. It holds the step back where its own label states the wait and
// the seed is in the ground, and while both are due: what is done first spoils
// the other.
func (pl *planner) judgeAfterSeed(s *StepPlan, name, why string) {
	wait, labelled := s.Step.waitAfterSeed(name)
	for first, on := range pl.others(s, isSeed) {
		if allowed := seedWaitAfter(s.Step.Product.Active).allowed; allowed && name == "seed_preemergent" && !labelled {
			continue
		}
		free := first.timing.span.to.AddDate(0, 0, wait)
		if s.timing.span.to.Before(first.timing.span.from) || !s.timing.span.from.Before(free) || s.precedes(first) {
			continue
		}
		v := verdict(name, on, "%s after %s (%s): %s", inWords(wait), first.Step.Name(), first.lastDay(), why)
		v.Until = free
		if labelled {
			v.Source = "after_seed of step " + s.Step.ID
		}
		if labelled && pl.known() && first.done() {
			v.Severity = Block
			v.forGood = s.timing.span.to.Before(free)
		}
		pl.addApart(s, first, v)
	}
}

// waitAfterSeed is how many days a step waits after seed, and whether its own
// label says so, in place of a rule.
func (s *Step) waitAfterSeed(rule string) (n int, labelled bool) {
	if s.AfterSeed > 0 {
		return days(s.AfterSeed), true
	}
	return figureDays(rule), false
}

// addApart adds a verdict on a step that must not follow another one at once. On
// zones where both are due, the other one goes first and this one is held.
func (pl *planner) addApart(s, first *StepPlan, v Verdict) {
	due := pl.dueAlong(s, first, v.Zones)
	if v.Severity == Block || len(due) == 0 {
		s.add(v)
		return
	}
	if rest := without(v.Zones, due); len(rest) > 0 {
		v.Zones = rest
		s.add(v)
	}
	v.Zones, v.Severity, v.Until = due, Block, time.Time{}
	v.Text += "; both are due: do " + first.Step.Name() + " and note it as done, or leave it out of the program"
	s.add(v)
}

// dueAlong are those of some zones on which another step, that stands first and
// is not done, is due on the day of the plan as well. A step that hangs on a
// need may well not come.
func (pl *planner) dueAlong(s, first *StepPlan, on []Ground) []Ground {
	if !pl.known() || !pl.due(s) || !pl.due(first) || !first.standsBefore(s) || first.Step.OnlyIf != "" {
		return nil
	}
	var due []Ground
	for _, z := range first.Zones {
		if among(on, z.ID) && !z.shut() && !z.from.After(pl.Today) {
			due = append(due, z.Ground)
		}
	}
	return due
}

// due reports whether a step's dates and triggers would let it be done on the
// day of the plan.
func (pl *planner) due(s *StepPlan) bool {
	return s.comes(pl) && s.timing.span.holds(pl.Today) && len(s.timing.waits) == 0
}
