package program

import (
	"slices"
	"strings"
	"time"
)

// A Verdict is what a rule says of a step.
type Verdict struct {
	Rule     string
	Severity Severity
	Text     string
	Until    time.Time // the first day on which it no longer holds; zero = until a person sees to it, or for good
	Source   string
	Zones    []Ground // that it is about

	forGood bool // no day of the step's window is free of it
}

// whole reports whether a verdict is about all zones of a step.
func (v Verdict) whole(s *StepPlan) bool { return len(v.Zones) == len(s.Zones) }

// WithZones is the text, with the zones it is about if they are not all.
func (v Verdict) WithZones(s *StepPlan) string {
	if v.whole(s) || len(v.Zones) == 0 {
		return v.Text
	}
	return labels(v.Zones) + ": " + v.Text
}

func labels(list []Ground) string {
	var names []string
	for _, g := range list {
		names = append(names, g.Label())
	}
	return strings.Join(names, "; ") // names may hold commas
}

// add notes a verdict and lets a Block move or close the zones that it is
// about. What the step's own file answers for is noted and no more. It returns
// the severity with which the verdict stands.
func (s *StepPlan) add(v Verdict) Severity {
	for _, o := range s.Step.Override {
		if v.Severity == Note || o.Rule != v.Rule || !o.covers(v.Zones) {
			continue
		}
		v.Text = "overridden (" + o.Reason + "): " + v.Text
		v.Severity, v.forGood = Note, false
	}
	s.Reasons = append(s.Reasons, v)
	if v.Severity != Block {
		return v.Severity
	}
	for i := range s.Zones {
		z := &s.Zones[i]
		if !among(v.Zones, z.ID) {
			continue
		}
		switch {
		case v.forGood:
			z.closed = true
		case v.Until.IsZero():
			z.held = true
		default:
			z.from = later(z.from, v.Until)
		}
	}
	return Block
}

// answersFor reports whether the step's own file answers for what a rule would
// hold back on a zone.
func (s *StepPlan) answersFor(rule string, g Ground) bool {
	return slices.ContainsFunc(s.Step.Override, func(o Override) bool { return o.Rule == rule && o.covers([]Ground{g}) })
}

func (o Override) covers(list []Ground) bool {
	if len(o.Zones) == 0 {
		return true
	}
	return !slices.ContainsFunc(list, func(g Ground) bool { return !g.named(o.Zones) })
}
