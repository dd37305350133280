package program

import (
	"slices"

	"example.org/turfplat/zones/material"
)

// A Feed is what a zone gets of nutrients in the season, and its budget.
type Feed struct {
	Ground
	material.Nutrients
	Limit   float64 // kg N on a square metre; 0 = not known
	Source  string  // of Limit
	ByLabel []*Step // feeds of the zone that have no rate here, and so are not in the sums
}

// More is a mark behind the sum of a nutrient, of which feeds without a rate here
// bring more: "+", else "".
func (f Feed) More(of material.Substance) string {
	if slices.ContainsFunc(f.ByLabel, func(s *Step) bool { return s.Product.Grade.Of(of) > 0 }) {
		return "+"
	}
	return ""
}

// byLabelOn are the feeds without a rate that a zone gets in the season.
func (p *Plan) byLabelOn(zone string) []*Step {
	var feeds []*Step
	for i := range p.Steps {
		s := &p.Steps[i]
		gets := func(z ZonePlan) bool { return z.ID == zone && (!z.closed || s.done()) }
		if s.Step.ByLabel() && s.Step.feeds() && (s.Status != Skipped || s.done()) && slices.ContainsFunc(s.Zones, gets) {
			feeds = append(feeds, s.Step)
		}
	}
	return feeds
}

// feeds reports whether there are nutrients in what a step lays, at whatever rate.
func (s *Step) feeds() bool { return s.Product.Grade != (material.Grade{}) }

// Uncounted says which feeds bring more than the sums tell, as they have no rate
// here; "" if none does.
func (p *Plan) Uncounted() string {
	var names []string
	for _, f := range p.Feeds {
		for _, s := range f.ByLabel {
			if told := s.Name() + ", " + s.Product.Grade.String(); !slices.Contains(names, told) {
				names = append(names, told)
			}
		}
	}
	if len(names) == 0 {
		return ""
	}
	return "+ and what is fed by label, with no rate here to count it: " + joinNonempty("; ", names...)
}

// Lapses says how steps are taken whose dates ended and that no day says were done:
// in each case the careful way.
func (p *Plan) Lapses() []string {
	var feeds, barriers []string
	for i := range p.Steps {
		s := &p.Steps[i]
		if s.Status != Skipped || s.done() || !s.may() {
			continue
		}
		if s.Step.feeds() {
			feeds = append(feeds, s.Step.Name())
		}
		if isPreEmergent(s.Step) {
			barriers = append(barriers, s.Step.Name())
		}
	}
	var told []string
	if len(feeds) > 0 {
		told = append(told, "not counted, as their dates ended and no done says that they were laid: "+joinNonempty("; ", feeds...))
	}
	if len(barriers) > 0 {
		told = append(told, "taken for laid all the same where seed must wait, though no done says so: "+joinNonempty("; ", barriers...))
	}
	return told
}
