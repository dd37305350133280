package program

import (
	_ "embed"
	"fmt"
	"slices"
)

var (
	// liftsCSV holds what a person can do about a rule that blocks; every rule that
	// can is in it.
	//
	//go:embed lifts.csv
	liftsCSV string

	lifts = mustReadLifts()
)

func mustReadLifts() map[string]string {
	table := make(map[string]string)
	for _, r := range mustRows("lifts.csv", liftsCSV, "rule", "text") {
		table[r[0]] = r[1]
	}
	return table
}

// KeepsOff reports whether a step of that status may not be done and has no day
// for which one waits.
func (s Status) KeepsOff() bool { return s == Blocked || s == Skipped }

// LiftedBy says, of a step that may not be done, what would let it be done: of
// each rule that blocks it, or of what leaves it out.
func (s *StepPlan) LiftedBy() []string {
	switch {
	case s.Status == Blocked:
		return s.blocksLiftedBy()
	case s.Status != Skipped:
		return nil
	case s.done():
		return []string{"nothing: it is done; where it must be done again, take done out of the program"}
	case len(s.Zones) == 0:
		return []string{"zones of the kind that it is meant for: put the site file right, or where in the program"}
	}
	return []string{"next season, or dates in the program that are still to come"}
}

func (s *StepPlan) blocksLiftedBy() (ways []string) {
	for _, v := range s.Reasons {
		if way := v.liftedBy(); v.Severity == Block && !slices.Contains(ways, way) {
			ways = append(ways, way)
		}
	}
	return ways
}

func (v Verdict) liftedBy() string {
	switch {
	case v.Until.IsZero():
		return lifts[v.Rule]
	case v.forGood:
		return fmt.Sprintf("dates in the program from %s on, or %s", ShortDay(v.Until), lifts[v.Rule])
	}
	return fmt.Sprintf("waiting: from %s on, planned and drawn again for that day", ShortDay(v.Until))
}
