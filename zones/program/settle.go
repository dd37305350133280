package program

import (
	"fmt"
	"time"
)

// settle gives every step its dates and its status.
func (pl *planner) settle() {
	for i := range pl.Steps {
		s := &pl.Steps[i]
		s.Dates = joined(s.timing.why)
		if window := s.Step.When.Window; !s.timing.span.empty() {
			s.From, s.To = s.timing.span.from, s.timing.span.to
		} else if s.timing.over != "" && window != nil {
			dates := s.season.span(*window)
			s.From, s.To = dates.from, dates.to
		}
		pl.closeZones(s)
		s.Status, s.Why = pl.status(s)
	}
	pl.settleFollowers()
	pl.spareZones()
}

// spareZones marks the zones that a rule holds back while their step is ready.
func (pl *planner) spareZones() {
	for i := range pl.Steps {
		s := &pl.Steps[i]
		for j := range s.Zones {
			z := &s.Zones[j]
			z.spared = s.Status == Ready && pl.known() && (z.held || z.from.After(pl.Today))
		}
	}
}

// closeZones closes the zones that no day is left for, and moves the step's
// first day to that of the first zone that is open.
func (pl *planner) closeZones(s *StepPlan) {
	first := time.Time{}
	for i := range s.Zones {
		z := &s.Zones[i]
		z.from = later(z.from, s.From)
		if z.from.After(s.To) {
			z.closed = true
		}
		if !z.closed && (first.IsZero() || z.from.Before(first)) {
			first = z.from
		}
	}
	if !first.IsZero() {
		s.From = first
	}
}

func (pl *planner) status(s *StepPlan) (Status, string) {
	t := s.timing
	switch {
	case s.done():
		return Skipped, s.doneOn()
	case len(s.Zones) == 0 && len(s.Reasons) > 0:
		return Blocked, s.Reasons[0].Text
	case len(s.Zones) == 0:
		return Skipped, "no zone is " + s.Step.Where.String()
	case t.over != "":
		return Skipped, t.over
	case s.all(func(z ZonePlan) bool { return z.closed }):
		return Blocked, s.closedText()
	case pl.past(s.To):
		return Skipped, "its dates ended on " + isoDay(s.To)
	case !pl.known():
		return pl.undated(s)
	}
	return pl.dated(s)
}

// undated is the status where the day of the plan is not known.
func (pl *planner) undated(s *StepPlan) (Status, string) {
	if s.all(ZonePlan.shut) {
		return Blocked, s.blockText()
	}
	return Waiting, "its dates begin on " + isoDay(s.From)
}

// dated is the status on the day of the plan.
func (pl *planner) dated(s *StepPlan) (Status, string) {
	open := !pl.Today.Before(s.timing.span.from)
	switch {
	case open && len(s.timing.waits) == 0 && s.all(func(z ZonePlan) bool { return z.shut() || pl.Today.Before(z.from) }):
		return Blocked, s.blockText()
	case pl.Today.Before(s.From):
		return Waiting, "until " + isoDay(s.From)
	case len(s.timing.waits) > 0:
		return Waiting, "for " + joined(s.timing.waits)
	}
	return Ready, "until " + isoDay(s.To)
}

// shut reports whether a zone is closed, or held until a person sees to it.
func (z ZonePlan) shut() bool { return z.closed || z.held }

func (s *StepPlan) all(such func(ZonePlan) bool) bool {
	for _, z := range s.Zones {
		if !such(z) {
			return false
		}
	}
	return true
}

// blockText says what holds a step back, and until when.
func (s *StepPlan) blockText() string {
	for _, v := range s.Reasons {
		if v.Severity != Block {
			continue
		}
		if v.Until.IsZero() || v.forGood {
			return v.WithZones(s)
		}
		return fmt.Sprintf("until %s: %s", isoDay(v.Until), v.WithZones(s))
	}
	return "its zones are closed"
}

// settleFollowers lets a step that can be done right after another one be
// ready along with it, so that one visit does both.
func (pl *planner) settleFollowers() {
	for i := range pl.Steps {
		s := &pl.Steps[i]
		a := s.Step.When.After
		if s.Status != Waiting || a == nil || a.Least > 0 || len(s.timing.waits) != 1 || !pl.known() || pl.Today.Before(s.From) {
			continue
		}
		if base := pl.find(a.Step); base.Status == Ready {
			s.Status, s.Why = Ready, "right after "+base.Step.Name()
		}
	}
}
