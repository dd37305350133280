package program

import (
	"fmt"
	"math"
	"strconv"
	"time"

	"example.org/turfplat/zones/material"
)

// A timing is when a step can be done, as far as its own triggers say.
type timing struct {
	span     span
	why      []string // what the dates rest on
	waits    []string // for what, though the dates would allow it
	over     string   // why it will not come in this season any more
	done     bool     // it was done, and nothing of it is to come
	before   int      // visits of a series that were done in the season
	left     int      // those of a series begun that are still to come
	resolved bool
}

// time finds the dates of all steps.
func (pl *planner) time() {
	for i := range pl.Steps {
		pl.resolve(i)
	}
	for i := range pl.Steps {
		pl.keepBefore(&pl.Steps[i])
	}
}

// resolve finds the dates of a step, those of the step it follows first.
func (pl *planner) resolve(i int) {
	s := &pl.Steps[i]
	if s.timing.resolved {
		return
	}
	s.timing.resolved = true
	t, when := &s.timing, s.Step.When
	t.span = span{s.season.first(), s.season.last()}
	if when.Window != nil {
		t.span = s.season.span(*when.Window)
		t.why = append(t.why, "dates of the program")
	}
	done := len(s.doneInSeason()) > 0
	if done && s.Step.Every == 0 {
		s.doneWhole()
		return
	}
	if when == (When{}) && i > 0 {
		pl.resolve(i - 1)
		t.span.from = pl.Steps[i-1].begins()
		t.why = append(t.why, "in order, after "+pl.Steps[i-1].Step.Name())
	}
	pl.follow(s)
	if pl.log != nil || !done {
		pl.heed(s)
	}
	pl.countMowings(s)
	switch last := s.Step.lastDone(); {
	case last.IsZero():
	case s.Step.Every > 0:
		pl.goOn(s)
	default:
		t.why = append(t.why, "last done on "+isoDay(last)+", in another season")
	}
}

// follow moves a step's dates to those of the step it comes after.
func (pl *planner) follow(s *StepPlan) {
	a := s.Step.When.After
	if a == nil {
		return
	}
	for i := range pl.Steps {
		if pl.Steps[i].Step.ID == a.Step {
			pl.resolve(i)
		}
	}
	base := pl.find(a.Step).doseFor(*a, pl.Today)
	t := &s.timing
	if base.timing.over != "" && !base.done() || len(base.Zones) == 0 {
		t.over = fmt.Sprintf("it follows %s, which is skipped", base.Step.Name())
		return
	}
	t.span.from = later(t.span.from, base.timing.span.from.AddDate(0, 0, a.Least))
	if a.Most >= 0 {
		t.span.to = earlier(t.span.to, base.timing.span.to.AddDate(0, 0, a.Most))
	}
	t.why = append(t.why, a.words(base.Step.Name()))
	switch {
	case t.span.empty():
		t.over = fmt.Sprintf("there is no day left after %s", base.Step.Name())
	case !base.done() && pl.known():
		t.waits = append(t.waits, base.Step.Name()+" to be done")
	}
}

// doseFor is the visit that a step comes after: of a series under way the last one
// done, until there is no day left after it.
func (s *StepPlan) doseFor(a After, today time.Time) *StepPlan {
	if len(s.doneInSeason()) == 0 {
		return s
	}
	doses := s.doses()
	last := doses[len(doses)-1]
	if a.Most >= 0 && last.timing.span.to.AddDate(0, 0, a.Most).Before(today) {
		return s
	}
	return last
}

func (a After) words(title string) string {
	switch {
	case a.Most < 0 && a.Least == 0:
		return "after " + title
	case a.Most < 0:
		return fmt.Sprintf("from %d days after %s", a.Least, title)
	case a.Least == a.Most:
		return fmt.Sprintf("%d days after %s", a.Least, title)
	}
	return fmt.Sprintf("%d to %d days after %s", a.Least, a.Most, title)
}

// heed narrows a step's dates by what the log tells of soil and degree days.
func (pl *planner) heed(s *StepPlan) {
	when := s.Step.When
	if when.Soil != nil {
		pl.open(s, when.Soil.told(pl.figures()), func() opening { return pl.log.soil(*when.Soil, s.season.first()) })
	}
	if g := when.DegreeDays; g != nil {
		pl.open(s, g.told(pl.figures()), func() opening { return pl.log.degreeDays(*g, s.season.on(g.From)) })
	}
}

func (pl *planner) open(s *StepPlan, trigger string, look func() opening) {
	t := &s.timing
	if pl.log == nil {
		t.why = append(t.why, trigger+" decides, and there is no log of it")
		t.waits = append(t.waits, trigger)
		return
	}
	o := look()
	switch {
	case o.opened.IsZero() && o.unsure != "":
		t.waits = append(t.waits, trigger+": "+o.unsure)
	case o.opened.IsZero():
		t.waits = append(t.waits, joinNonempty(": ", trigger, joinNonempty(", ", o.now, o.likely(t.span.to, pl.Today))))
	default:
		t.span.from = later(t.span.from, o.opened)
	}
	t.why = append(t.why, joinNonempty("; ", joinNonempty(": ", trigger, o.decided), o.told))
	if !o.opened.IsZero() && o.unsure != "" {
		s.doubt(trigger, o.unsure)
	}
	last := t.span.to
	if !o.closed.IsZero() {
		t.span.to = earlier(last, o.closed.AddDate(0, 0, -1))
	}
	switch {
	case o.opened.After(last):
		t.over = fmt.Sprintf("its dates ended on %s, and it opened on %s: %s", isoDay(last), isoDay(o.opened), trigger)
	case !o.closed.IsZero() && o.closed.After(last) && pl.past(last):
		t.over = "its dates ended on " + isoDay(last)
	case !o.closed.IsZero() && (t.span.empty() || pl.past(t.span.to)):
		t.over = fmt.Sprintf("its time ended on %s: %s", isoDay(o.closed), joinNonempty(", ", trigger, o.now))
	}
}

// doubt warns that a log does not tell for sure when a step's window opened.
func (s *StepPlan) doubt(trigger, why string) {
	r := rules["log_doubt"]
	s.Reasons = append(s.Reasons, Verdict{Rule: r.name, Severity: r.severity, Zones: s.grounds(), Source: r.source, Text: trigger + ": " + why})
}

func joinNonempty(with string, parts ...string) string {
	text := ""
	for _, p := range parts {
		if p != "" && text != "" {
			text += with
		}
		text += p
	}
	return text
}

// countMowings moves a step's first day to when the grass was mown so often.
func (pl *planner) countMowings(s *StepPlan) {
	n := s.Step.When.Mowings
	if n == 0 {
		return
	}
	t := &s.timing
	mow := pl.firstMowing()
	if mow == nil || mow.Step.Every == 0 {
		t.waits = append(t.waits, fmt.Sprintf("%d mowings: count them", n))
		return
	}
	since := time.Time{}
	if s.Step.When.After != nil {
		since = t.span.from
	}
	t.span.from = later(t.span.from, mow.mownBy(n, since))
	t.why = append(t.why, fmt.Sprintf("%d mowings, at %s", n, mow.Step.Name()))
	if t.span.empty() {
		t.over = fmt.Sprintf("its dates end before %d mowings", n)
	}
}

// mownBy is the day by which grass was, or will be, mown so often since a day.
func (s *StepPlan) mownBy(n int, since time.Time) time.Time {
	mown := 0
	for _, day := range s.doneInSeason() {
		if day.Before(since) {
			continue
		}
		if mown++; mown == n {
			return day
		}
	}
	begins := later(s.timing.span.from, since)
	return begins.Add(time.Duration(n-mown) * s.Step.Every).Truncate(24 * time.Hour)
}

func (pl *planner) firstMowing() *StepPlan {
	for i := range pl.Steps {
		if s := &pl.Steps[i]; s.Step.Does == Mow && s.Step.Every > 0 {
			pl.resolve(i)
			return s
		}
	}
	return nil
}

// keepBefore ends a step where the one begins that it must come before.
func (pl *planner) keepBefore(s *StepPlan) {
	t := &s.timing
	if s.Step.When.Before == "" || s.done() || t.over != "" {
		return
	}
	next := pl.find(s.Step.When.Before)
	if len(next.Zones) == 0 || next.timing.over != "" && !next.done() {
		return
	}
	t.why = append(t.why, "before "+next.Step.Name())
	switch {
	case !next.firstDone().IsZero() && !next.firstDone().Before(t.span.from):
		t.over = fmt.Sprintf("it had to come before %s, which was done on %s", next.Step.Name(), isoDay(next.firstDone()))
	case next.timing.span.to.Before(t.span.from):
		s.add(Verdict{Rule: "before", Severity: rules["before"].severity, Zones: shared(next, s), Source: rules["before"].source,
			Text: fmt.Sprintf("it should come before %s, whose dates end on %s already", next.Step.Name(), isoDay(next.timing.span.to))})
	}
}

// Name is what people call the step.
func (s *Step) Name() string {
	if s.Title != "" {
		return s.Title
	}
	if s.Material != "" && s.Does.lays() && s.Does != Water {
		return fmt.Sprintf("%s %s", s.Does, s.Material)
	}
	return s.ID
}

// told says what opens the trigger.
func (t SoilTrigger) told(f material.Figures) string {
	what := "mean"
	if t.Lowest {
		what = "mean of lows"
	}
	if t.AtMost != nil {
		return fmt.Sprintf("soil at %s cooled to %s (%d-day %s)", f.Told(t.Depth), f.Told(*t.AtMost), t.Days, what)
	}
	return fmt.Sprintf("soil at %s warmed to %s (%d-day %s)", f.Told(t.Depth), f.Told(*t.AtLeast), t.Days, what)
}

// told says what opens the trigger, in degree days of the units' degrees.
func (g DegreeDays) told(f material.Figures) string {
	sum := math.Round(10*g.AtLeast/g.scale()*scaleOf(f)) / 10
	return fmt.Sprintf("%s degree days above %s from %02d-%02d", strconv.FormatFloat(sum, 'f', -1, 64), f.Told(g.Base), g.From.Month, g.From.Day)
}

// waitsFor reports whether a trigger is still awaited.
func (t timing) waitsFor(trigger string) bool {
	for _, w := range t.waits {
		if len(w) >= len(trigger) && w[:len(trigger)] == trigger {
			return true
		}
	}
	return false
}
