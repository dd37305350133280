package program

import (
	"fmt"
	"slices"
	"time"

	"example.org/turfplat/geo/ingest"
)

// A series is a step that is done every so often while its dates last. Its file
// notes each visit that was done; the next one falls due so long after the last.

// done reports whether nothing of the step is still to come because it was done:
// of a series, none is due before its dates end.
func (s *StepPlan) done() bool { return s.timing.done }

// doneInSeason are the days of its season on which a step was done. What was done
// in another one does not stand for this season's visits; waits go by it all the
// same.
func (s *StepPlan) doneInSeason() []time.Time {
	var days []time.Time
	for _, day := range s.Step.Done {
		if s.season.counts(day, s.Step.When.Window) {
			days = append(days, day)
		}
	}
	return days
}

// firstDone is the day of the first visit of the season that was done; zero if none
// was.
func (s *StepPlan) firstDone() time.Time {
	if days := s.doneInSeason(); len(days) > 0 {
		return days[0]
	}
	return time.Time{}
}

// lastDone is the day of the last visit that was done, in any season; zero if none
// was.
func (s *Step) lastDone() time.Time {
	if len(s.Done) == 0 {
		return time.Time{}
	}
	return s.Done[len(s.Done)-1]
}

// begins is the day on which the step was first done, else the first on which it
// can be.
func (s *StepPlan) begins() time.Time {
	if first := s.firstDone(); !first.IsZero() {
		return first
	}
	return s.timing.span.from
}

// doneWhole dates a step of which nothing is to come by its last visit.
func (s *StepPlan) doneWhole() {
	last := s.Step.lastDone()
	s.timing = timing{span: span{last, last}, why: []string{"done"}, over: s.timing.over, resolved: true, done: true, before: max(1, s.timing.before)}
}

// goOn moves the dates of a series to its next visit, or ends it if that would
// come after them. What opened it for the first visit is not awaited again.
func (pl *planner) goOn(s *StepPlan) {
	last := s.Step.lastDone()
	t := &s.timing
	if t.before = len(s.doneInSeason()); t.before > 0 {
		t.waits = nil
	}
	next := last.Add(s.Step.Every).Truncate(24 * time.Hour)
	t.span.from = later(t.span.from, next)
	if t.over == "" && t.span.empty() {
		t.over = fmt.Sprintf("the next visit would fall due on %s, after its dates end", isoDay(next))
	}
	if t.over == "" && pl.past(t.span.to) {
		t.over = "its dates ended on " + isoDay(t.span.to)
	}
	switch {
	case t.over != "" && t.before > 0:
		s.doneWhole()
	case t.over == "":
		t.why = append(t.why, fmt.Sprintf("every %s, last done on %s", apart(s.Step.Every), isoDay(last)))
		t.left = 1 + int(t.span.to.Sub(later(t.span.from, pl.Today))/s.Step.Every)
	}
}

// apart writes the time between visits, of which half days are read too.
func apart(d time.Duration) string {
	if d%(24*time.Hour) != 0 {
		return fmt.Sprintf("%.3g days", d.Hours()/24)
	}
	return Lasting(d)
}

// doneOn tells when a step was done.
func (s *StepPlan) doneOn() string {
	text := "done on " + isoDay(s.Step.lastDone())
	if n := len(s.doneInSeason()); n > 1 {
		text = fmt.Sprintf("done %d times, last on %s", n, isoDay(s.Step.lastDone()))
	}
	return joinNonempty("; ", text, s.timing.over)
}

// doses are a step as others meet it: what is to come of it, and the last visit
// that was done, of a series or in a season before.
func (s *StepPlan) doses() []*StepPlan {
	if len(s.Step.Done) == 0 || s.done() {
		return []*StepPlan{s}
	}
	last := *s
	last.doneWhole()
	last.timing.over = ""
	return []*StepPlan{s, &last}
}

// visits is how often a step is done in the season: what was done of a series,
// and what is to come.
func (s *StepPlan) visits() int {
	if s.Step.Every == 0 || s.timing.span.empty() {
		return 1
	}
	if begun := s.timing.before + s.timing.left; begun > 0 {
		return begun
	}
	return 1 + int(s.timing.span.to.Sub(s.timing.span.from)/s.Step.Every)
}

// ThereofDone says how many of the visits in the season were done; "" if none was.
func (s *StepPlan) ThereofDone() string {
	if s.timing.before == 0 {
		return ""
	}
	return fmt.Sprintf(", %d of them done", s.timing.before)
}

// visitsLeft is how many of them are still to come.
func (pl *planner) visitsLeft(s *StepPlan) int {
	switch {
	case s.timing.before+s.timing.left > 0:
		return s.timing.left
	case s.Step.Every == 0 || !pl.past(s.timing.span.from):
		return s.visits()
	}
	return 1 + int(s.timing.span.to.Sub(pl.Today)/s.Step.Every)
}

// checkDone refuses days that stand twice, and several of a step that is done
// once.
func (d *document) checkDone(s *Step) {
	slices.SortFunc(s.Done, time.Time.Compare)
	if len(s.Done) > 1 && s.Every == 0 {
		d.refuseStep(s, "done", fmt.Sprintf("it was done %d times, and has no every", len(s.Done)), "state every, or a step for each time")
	}
	for i := 1; i < len(s.Done); i++ {
		if s.Done[i].Equal(s.Done[i-1]) {
			d.refuseStep(s, "done", fmt.Sprintf("%s stands twice", isoDay(s.Done[i])), "name each day once")
		}
	}
}

// doneAfter refuses days after that of the plan, if that is known: what is still to
// come was not done, and would lift what waits for it.
func (p *Program) doneAfter(today time.Time) []ingest.Problem {
	var problems []ingest.Problem
	for i := range p.Steps {
		s := &p.Steps[i]
		if last := s.lastDone(); !today.IsZero() && last.After(today) {
			problems = append(problems, ingest.Problem{Severity: ingest.Refusal, Code: "done_after", Place: s.placeOf("done"),
				Text: fmt.Sprintf("done on %s, after %s, the day of the plan", isoDay(last), isoDay(today)),
				Hint: "put the day right, or plan for a later one with --on"})
		}
	}
	return problems
}
