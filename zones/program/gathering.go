package program

import "slices"

// gatherReasons tells once what one rule says alike of several zones of a step,
// with the zones in their order, and leaves out what holds no longer.
func (pl *planner) gatherReasons() {
	for i := range pl.Steps {
		s := &pl.Steps[i]
		var once []Verdict
		for _, v := range s.Reasons {
			if pl.lapsed(v) {
				continue
			}
			at := slices.IndexFunc(once, v.says)
			if at < 0 {
				once = append(once, v)
				continue
			}
			once[at].Zones = s.inOrder(append(slices.Clip(once[at].Zones), v.Zones...))
		}
		s.Reasons = once
	}
}

// lapsed reports whether a verdict no longer holds on the day of the plan.
func (pl *planner) lapsed(v Verdict) bool {
	return pl.known() && !v.Until.IsZero() && !v.Until.After(pl.Today)
}

// says reports whether two verdicts differ in their zones at most.
func (v Verdict) says(other Verdict) bool {
	return v.Rule == other.Rule && v.Severity == other.Severity && v.Text == other.Text &&
		v.Source == other.Source && v.Until.Equal(other.Until) && v.forGood == other.forGood
}

// inOrder are the zones of a step that a list names, each once; zones on which
// the step is not done follow.
func (s *StepPlan) inOrder(list []Ground) []Ground {
	var ordered []Ground
	for _, g := range append(s.grounds(), list...) {
		if among(list, g.ID) && !among(ordered, g.ID) {
			ordered = append(ordered, g)
		}
	}
	return ordered
}
