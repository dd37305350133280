package program

import "time"

// judgeWater keeps what must be watered and what must stay dry off one day.
func (pl *planner) judgeWater(s *StepPlan) {
	if !isWatered(s.Step) {
		return
	}
	for dry, on := range pl.others(s, isFoliar) {
		n := days(dry.Step.KeepDry)
		wet, spray := s.timing.span, dry.timing.span
		bothDue := wet.holds(pl.Today) && spray.holds(pl.Today)
		if !dry.dryMeets(s, n) || canPart(spray, wet, n) && !bothDue && !dry.done() {
			continue // the spray tells of it
		}
		v := verdict("water_dry", on, "it needs water and %s (%s) must stay dry for %s: not on one day, spray first", dry.Step.Name(), dry.lastDay(), inWords(n))
		switch {
		case dry.done():
			v.Until = dry.Step.lastDone().AddDate(0, 0, n)
			v.forGood = wet.to.Before(v.Until)
		case canPart(spray, wet, n) && dry.Step.OnlyIf != "":
			v.Severity = Warn
		case canPart(spray, wet, n):
			v.Until = pl.Today.AddDate(0, 0, n)
			v.Text += ", and note it as done"
		default:
			v.Until, v.forGood = spray.from.AddDate(0, 0, n), true
			v.Text += "; their dates leave no other day"
		}
		if pl.known() && !v.Until.IsZero() && !pl.Today.Before(v.Until) {
			continue
		}
		s.add(v)
	}
}

// canPart reports whether the dates leave room for the spray and so many dry
// days before the water, or for the water on a day before the spray.
func canPart(spray, wet span, dry int) bool {
	sprayFirst := !spray.from.AddDate(0, 0, dry).After(wet.to)
	waterFirst := !wet.from.AddDate(0, 0, 1).After(spray.to)
	return sprayFirst || waterFirst
}

// judgeSpray tells a foliar spray what must stay away from it: mowing, and
// water on other steps whose dates leave room for both.
func (pl *planner) judgeSpray(s *StepPlan) {
	if !isFoliar(s.Step) {
		return
	}
	n := figureDays("mow_foliar")
	var mown []Ground
	for mow, on := range pl.others(s, isMow) {
		for _, g := range on {
			if pl.near(s, mow, n+1) && !among(mown, g.ID) {
				mown = append(mown, g)
			}
		}
	}
	if len(mown) > 0 {
		s.add(verdict("mow_foliar", mown, "no mowing within %s before or after it", inWords(n)))
	}
	pl.tellWatered(s)
}

// tellWatered notes on a spray the steps that must not be watered with it.
func (pl *planner) tellWatered(s *StepPlan) {
	n := days(s.Step.KeepDry)
	var names []string
	for wet := range pl.others(s, isWatered) {
		if s.dryMeets(wet, n) && canPart(s.timing.span, wet.timing.span, n) && wet.comes(pl) {
			names = append(names, wet.Step.Name())
		}
	}
	if len(names) > 0 {
		v := verdict("water_dry", s.grounds(), "keep dry for %s: no watering in that time for %s", inWords(n), joined(names))
		v.Severity = Note
		s.add(v)
	}
}

// dryMeets reports whether the dry days of a spray and the dates of a step that
// is watered meet.
func (s *StepPlan) dryMeets(wet *StepPlan, dry int) bool {
	return wet.timing.span.meets(span{s.timing.span.from, s.timing.span.to.AddDate(0, 0, dry-1)})
}

// judgeMowing tells mowing what it must stay away from.
func (pl *planner) judgeMowing(s *StepPlan) {
	if !isMow(s.Step) {
		return
	}
	for spray, on := range pl.others(s, isFoliar) {
		if n := figureDays("mow_foliar"); !spray.done() && spray.timing.over == "" && pl.near(s, spray, n+1) {
			s.add(verdict("mow_foliar", on, "not within %s before or after %s (%s)", inWords(n), spray.Step.Name(), spray.lastDay()))
		}
	}
	if !s.Step.Bagged {
		return
	}
	for grains, on := range pl.others(s, isGranular) {
		if n := figureDays("mow_granules"); pl.near(s, grains, n) {
			s.add(verdict("mow_granules", on, "no bagger for 24 h after %s: it takes the granules up", grains.Step.Name()))
		}
	}
}

// judgeGranules warns of grains laid on grains that were not watered in.
func (pl *planner) judgeGranules(s *StepPlan) {
	if !isGranular(s.Step) {
		return
	}
	for first, on := range pl.others(s, isGranular) {
		n := figureDays("granular_twice")
		if first.Step.WaterIn == nil && first.standsBefore(s) && pl.near(s, first, n) && !pl.waterBetween(first, s, on) {
			s.add(verdict("granular_twice", on, "%s has no water after it: leave %s between the two, or water", first.Step.Name(), inWords(n)))
		}
	}
}

// waterBetween reports whether the program waters between two steps on all of
// the zones.
func (pl *planner) waterBetween(a, b *StepPlan, on []Ground) bool {
	for i := range pl.Steps {
		w := &pl.Steps[i]
		if w.Step.Does == Water && a.standsBefore(w) && w.standsBefore(b) && len(shared(w, &StepPlan{Zones: zonePlans(on)})) == len(on) {
			return true
		}
	}
	return false
}

func zonePlans(on []Ground) []ZonePlan {
	var list []ZonePlan
	for _, g := range on {
		list = append(list, ZonePlan{Ground: g})
	}
	return list
}

// judgeMicrobes warns of fungicides and living things that come too near each
// other. What lives is held back while both are due, and told until when to wait
// after a fungicide; a disease need not wait for it.
func (pl *planner) judgeMicrobes(s *StepPlan) {
	var other Use
	switch {
	case s.Step.isFor(Fungicide):
		other = Microbial
	case s.Step.isFor(Microbial):
		other = Fungicide
	default:
		return
	}
	for near, on := range pl.others(s, using(other)) {
		n := figureDays("fungicide_microbial")
		if !pl.near(s, near, n) {
			continue
		}
		v := verdict("fungicide_microbial", on, "leave %s between it and %s (%s): one kills what the other brings", inWords(n), near.Step.Name(), near.lastDay())
		last := near.Step.lastDone()
		if free := last.AddDate(0, 0, n); pl.known() && !last.IsZero() && free.After(pl.Today) && s.Step.isFor(Microbial) {
			v.Until = free
		}
		pl.addApart(s, near, v)
	}
}

// judgeBees asks for flowers to be mown off before an insecticide.
func (pl *planner) judgeBees(s *StepPlan) {
	if s.Step.isFor(Insecticide) && !pl.has(s, FlowersMown) {
		s.add(verdict("bees", s.grounds(), "mow off every weed in flower first, then note it as checked: %s", FlowersMown))
	}
}

// judgeHeat holds a herbicide back on a hot day, by the log's air.
func (pl *planner) judgeHeat(s *StepPlan) {
	if pl.log == nil || !s.timing.span.holds(pl.Today) {
		return
	}
	air, ok := pl.log.airMax()
	if !ok {
		return
	}
	name := ""
	switch feed := s.Step.visitFeed(); {
	case s.Step.isFor(Broadleaf):
		name = "heat_herbicide"
	case feed.N*(1-float64(s.Step.Product.Slow)) > 0:
		name = "heat_nitrogen"
	}
	if limit, ok := rules[name]; ok && float64(air) > limit.figure.SI() {
		v := verdict(name, s.grounds(), "the air reached %s: wait for a day below %s", degrees(air, pl.Property.Units), pl.figures().Told(limit.figure))
		v.Until = pl.Today.Add(24 * time.Hour)
		s.add(v)
	}
}
