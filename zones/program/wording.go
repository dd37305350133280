package program

import (
	"fmt"
	"time"

	"example.org/turfplat/zones/material"
)

// Window writes the days on which a step can be done, as in "1 May - 31 May";
// "" if it has no dates.
func (s *StepPlan) Window() string {
	switch {
	case s.From.IsZero():
		return ""
	case s.From.Equal(s.To):
		return ShortDay(s.From)
	}
	return ShortDay(s.From) + " - " + ShortDay(s.To)
}

// ShortDay writes a day without its year, as in "2 Jan".
func ShortDay(t time.Time) string { return t.Format("2 Jan") }

// LongDay writes a day in full.
func LongDay(t time.Time) string { return t.Format("Monday 2 January 2006") }

// Measured writes an amount of what a step puts down; that of a pesticide is
// never rounded above what its label allows.
func (s *Step) Measured(f material.Figures, a material.Amount) material.Figure {
	if s.Labelled() {
		return f.AtMost(a)
	}
	return f.Amount(a)
}

// RateText writes a rate of what a step puts down: of water, its depth.
func (s *Step) RateText(f material.Figures, r material.Rate) string {
	if s.Does == Water {
		return f.Height(r.Depth())
	}
	return f.Rate(r).String()
}

// OfVisit is the part of an amount of the whole season that one visit takes.
func (s *StepPlan) OfVisit(a material.Amount) material.Amount {
	return a.Times(1 / float64(s.Visits()))
}

// OfPass is the part of an amount of the whole season that one pass takes.
func (s *StepPlan) OfPass(a material.Amount) material.Amount {
	return s.OfVisit(a).Times(1 / float64(s.Step.Passes))
}

// PassByLabel says how much of what has no rate here goes down in a pass: what the
// label allows at one time, or of several passes a part of it each.
func (s *Step) PassByLabel() string {
	if s.Passes < 2 {
		return "by label"
	}
	return fmt.Sprintf("1/%d of label", s.Passes)
}

// InPasses says that an amount is of all passes of a visit; "" if there is one.
func (s *Step) InPasses() string {
	if s.Passes < 2 {
		return ""
	}
	return fmt.Sprintf(" in %d passes", s.Passes)
}
