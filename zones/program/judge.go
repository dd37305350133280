package program

import (
	"fmt"
	"slices"
	"strings"
	"time"
)

// near reports whether days on which two steps may still be done, or were, can lie
// less than so many days apart.
func (pl *planner) near(a, b *StepPlan, days int) bool {
	return pl.ahead(a).within(pl.ahead(b), days)
}

// ahead are the days of a step that are left, of one whose dates are over all.
func (pl *planner) ahead(s *StepPlan) span {
	left := s.timing.span
	if !pl.past(left.to) {
		left.from = later(left.from, pl.Today)
	}
	return left
}

// judge holds every rule against every step. Rules look at the dates that the
// steps' own triggers give; what a Block moves does not set off another one.
func (pl *planner) judge() {
	for i := range pl.Steps {
		if s := &pl.Steps[i]; s.comes(pl) {
			pl.judgeSlip(s)
			pl.judgePasses(s)
			pl.judgeCovers(s)
		}
	}
	for i := range pl.Steps {
		s := &pl.Steps[i]
		if !s.comes(pl) {
			continue
		}
		for _, judge := range []func(*StepPlan){
			pl.judgeHigh, pl.judgeSeed, pl.judgeAfterSpray, pl.judgeBarrier, pl.judgeSpray, pl.judgeMowing,
			pl.judgeWater, pl.judgeGranules, pl.judgeMicrobes, pl.judgeBees,
			pl.judgeGreenUp, pl.judgeSummer, pl.judgeOnce, pl.judgeBlackout, pl.judgeFrost,
			pl.judgePhosphate, pl.judgePotash, pl.judgeSalt, pl.judgeRain, pl.judgeFooting, pl.judgeHeat, pl.judgeTrend,
		} {
			judge(s)
		}
	}
	pl.judgeYear()
}

// may reports whether a step is, or may have been, done in the season.
func (s *StepPlan) may() bool { return len(s.Zones) > 0 && !s.timing.span.empty() }

// comes reports whether a step is still to be done.
func (s *StepPlan) comes(pl *planner) bool {
	return s.may() && s.timing.over == "" && !s.done() && !pl.past(s.timing.span.to)
}

// others gives the steps, but for one, that may be done where it is, with the
// zones in common; one under way, or done in a season before, twice, by what is to
// come of it and then by the last visit.
func (pl *planner) others(s *StepPlan, such func(*Step) bool) func(yield func(*StepPlan, []Ground) bool) {
	return func(yield func(*StepPlan, []Ground) bool) {
		for i := range pl.Steps {
			other := &pl.Steps[i]
			if other == s || !such(other.Step) {
				continue
			}
			on := shared(other, s)
			for _, dose := range other.doses() {
				if dose.may() && len(on) > 0 && !yield(dose, on) {
					return
				}
			}
		}
	}
}

// precedes reports whether the program has a step done before another one that
// is not done yet: it stands first, and its dates allow that.
func (s *StepPlan) precedes(other *StepPlan) bool {
	return !other.done() && s.standsBefore(other) && !s.timing.span.from.After(other.timing.span.to)
}

// standsBefore reports whether a step stands before another one in the program, or is
// one of the season before.
func (s *StepPlan) standsBefore(other *StepPlan) bool {
	if s.season != other.season {
		return s.season.year < other.season.year
	}
	return s.place < other.place
}

// verdict is one of a rule of the table.
func verdict(name string, on []Ground, format string, v ...any) Verdict {
	r := rules[name]
	return Verdict{Rule: name, Severity: r.severity, Zones: on, Source: r.source, Text: fmt.Sprintf(format, v...)}
}

// figureDays is the figure of a rule in whole days.
func figureDays(name string) int {
	return days(time.Duration(rules[name].figure.SI() * float64(time.Second)))
}

// has reports whether a person answers for a check, in the step or the
// program.
func (pl *planner) has(s *StepPlan, c Check) bool {
	return slices.Contains(s.Step.Checked, c) || slices.Contains(pl.Program.Checked, c)
}

func isPreEmergent(s *Step) bool { return s.isFor(PreEmergent) || s.BlocksSeed > 0 }

func isSeed(s *Step) bool { return s.Does == Seed }

func isMow(s *Step) bool { return s.Does == Mow }

// isGranular reports whether a step lays grains that must not lie dry for
// long.
func isGranular(s *Step) bool { return s.Does == Spread }

func isFoliar(s *Step) bool { return s.KeepDry > 0 }

func isWatered(s *Step) bool { return s.WaterIn != nil || s.Does == Water }

func using(u Use) func(*Step) bool {
	return func(s *Step) bool { return s.isFor(u) }
}

// inWords writes a time as people say it.
func inWords(n int) string {
	switch {
	case n == 1:
		return "1 day"
	case n%7 == 0 && n >= 14:
		return fmt.Sprintf("%d weeks", n/7)
	}
	return fmt.Sprintf("%d days", n)
}

// lastDay says of a step when its effect begins at the latest.
func (s *StepPlan) lastDay() string {
	if s.done() {
		return "done on " + isoDay(s.Step.lastDone())
	}
	if s.timing.span.from.Equal(s.timing.span.to) {
		return "on " + isoDay(s.timing.span.to)
	}
	return "by " + isoDay(s.timing.span.to)
}

func joined(list []string) string { return strings.Join(list, ", ") }
