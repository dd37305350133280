package program

import "example.org/turfplat/zones/material"

// told is a step as it is told to those who read some units: advice that comes
// with turfplat is in them, and the words of a user's program are left alone.
func (p *Program) told(s *Step, f material.Figures) *Step {
	step := *s
	step.figures = f
	if p.builtIn {
		step.Cautions, step.Notes = allTold(f, s.Cautions), allTold(f, s.Notes)
	}
	return &step
}

func allTold(f material.Figures, texts []string) []string {
	var all []string
	for _, text := range texts {
		all = append(all, f.Prose(text))
	}
	return all
}

// figures are those of the property's units.
func (p *Plan) figures() material.Figures { return material.Figures{Units: p.Property.Units} }

// tellSources gives what verdicts rest on in the units of the property.
func (pl *planner) tellSources() {
	for i := range pl.Steps {
		reasons := pl.Steps[i].Reasons
		for j := range reasons {
			reasons[j].Source = pl.figures().Prose(reasons[j].Source)
		}
	}
}
