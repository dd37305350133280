package main

import (
	"fmt"
	"strings"

	"example.org/turfplat/zones/material"
	"example.org/turfplat/zones/program"
)

// steps tells of each step that is still to come all that a crew must know.
func (p *planPage) steps() {
	p.line("\nTHE STEPS")
	for i := range p.Steps {
		if s := &p.Steps[i]; s.Status != program.Skipped {
			p.line("")
			p.step(i, s)
		}
	}
	p.skipped()
}

func (p *planPage) step(i int, s *program.StepPlan) {
	p.wrapped("", fmt.Sprintf("%d. %s: %s %s", i+1, s.Step.Name(), s.Status, s.Why), "   ")
	p.entry("when", p.when(s))
	if s.Step.OnlyIf != "" {
		p.entry("only if", s.Step.OnlyIf)
	}
	p.entry("where", p.amountsByZone(s))
	p.entry("how", p.how(s))
	for _, v := range s.Reasons {
		p.entry(string(v.Severity), fmt.Sprintf("%s [%s: %s]", reasonText(v, s), v.Rule, v.Source))
	}
	for _, c := range s.Step.Minding() {
		p.entry("mind", c)
	}
	for _, n := range s.Step.Notes {
		p.entry("note", n)
	}
}

// entry writes a headed paragraph of a step.
func (p *planPage) entry(head, text string) {
	if text != "" {
		p.wrapped(fmt.Sprintf("   %-8s", head), text, strings.Repeat(" ", 11))
	}
}

func (p *planPage) when(s *program.StepPlan) string {
	if s.From.IsZero() {
		return s.Dates
	}
	text := s.Window()
	if s.Dates != "" {
		text += " (" + s.Dates + ")"
	}
	return text
}

// amountsByZone names the zones, with what goes on each in one visit, or in one
// pass if there are several.
func (p *planPage) amountsByZone(s *program.StepPlan) string {
	var parts []string
	for _, z := range s.Zones {
		part := z.Label()
		switch {
		case z.Draw != nil:
			part += " " + p.amount(s, s.OfPass(z.Draw.Amount)) + aPass(s)
		case z.Closed():
			part += " none"
		}
		if s.Step.Does == program.Mow {
			part += p.cut(s, z.Ground)
		}
		parts = append(parts, part)
	}
	if plain := len(s.Totals) == 0 && s.Step.Does != program.Mow; plain && p.Everywhere(s, s.Zones) {
		return p.allZones(s)
	}
	return strings.Join(parts, "; ")
}

// cut says how high the grass of a zone is cut, and at what height it is time.
func (p *planPage) cut(s *program.StepPlan, g program.Ground) string {
	height, at, ok := s.Step.CutAt(g)
	if !ok {
		return ""
	}
	return fmt.Sprintf(" to %s when it stands at %s", p.amounts.Height(height), p.amounts.Height(at))
}

// how says rate, passes, visits, tanks, water and rest.
func (p *planPage) how(s *program.StepPlan) string {
	var parts []string
	add := func(format string, v ...any) { parts = append(parts, fmt.Sprintf(format, v...)) }
	if rate, ok := s.Step.VisitRate(); ok && len(s.Totals) == 0 {
		add("no %s is laid; its rate is %s%s", s.Step.Product.Name, s.Step.RateText(p.amounts, rate), s.Step.InPasses())
	} else if ok {
		add("%s of %s at %s%s", p.howMuchIn(s), s.Step.Product.Name, s.Step.RateText(p.amounts, rate), s.Step.InPasses())
	} else if s.Step.ByLabel() {
		add("%s at the rate of its label", s.Step.Product.Name)
	}
	if s.Step.Passes > 1 {
		add("%s", p.passes(s))
	}
	if n := s.Visits(); n > 1 {
		add("%d visits in the season%s", n, s.ThereofDone())
	}
	if s.Step.Carrier.PerM2 > 0 {
		add("%s", p.tanks(s))
	}
	if w := s.Step.WaterIn; w != nil {
		add("water in %s within %s", p.amounts.Height(w.Depth), program.Lasting(w.Within))
	}
	if s.Step.KeepDry > 0 {
		add("keep dry for %s", program.Lasting(s.Step.KeepDry))
	}
	if s.Step.StayOff != "" {
		add("stay off %s", s.Step.StayOff)
	}
	return strings.Join(parts, "; ")
}

// passes says how often the ground is gone over, and what each time takes.
func (p *planPage) passes(s *program.StepPlan) string {
	text := fmt.Sprintf("%d passes", s.Step.Passes)
	if s.Step.ByLabel() {
		return fmt.Sprintf("%s, each %s", text, s.Step.PassByLabel())
	}
	if rate, ok := s.Step.PassRate(); ok && len(s.Totals) > 0 {
		text = fmt.Sprintf("each pass %s at %s", p.amount(s, s.OfPass(s.Totals[0].Amount)), s.Step.RateText(p.amounts, rate))
	}
	return text
}

// aPass tells amounts of one of several passes from those of a visit.
func aPass(s *program.StepPlan) string {
	if s.Step.Passes < 2 {
		return ""
	}
	return " a pass"
}

func (p *planPage) howMuchIn(s *program.StepPlan) string {
	if len(s.Totals) == 0 {
		return "nothing"
	}
	return p.amount(s, s.OfVisit(s.Totals[0].Amount))
}

// tanks says how the mix of a pass is made up.
func (p *planPage) tanks(s *program.StepPlan) string {
	mix := fmt.Sprintf("%s of mix%s at %s", p.amounts.Mix(s.Mix()), aPass(s), p.amounts.MixRate(s.Step.Carrier))
	f, ok := s.Fills()
	if !ok {
		return mix
	}
	each := func(fill material.Fill) string {
		return fmt.Sprintf("%s with %s in it", p.amounts.Mix(fill.Mix), p.amount(s, fill.Product))
	}
	var parts []string
	if f.Count > 0 {
		parts = append(parts, fmt.Sprintf("%d full of %s", f.Count, each(f.Full)))
	}
	if f.Last.Area > 0 {
		parts = append(parts, "the last "+each(f.Last))
	}
	return mix + ", tanks" + aPass(s) + ": " + strings.Join(parts, ", ")
}

// skipped tells why steps are left out.
func (p *planPage) skipped() {
	none := true
	for i := range p.Steps {
		if s := &p.Steps[i]; s.Status == program.Skipped {
			if none {
				p.line("\nLEFT OUT")
			}
			none = false
			p.wrapped("  ", fmt.Sprintf("%2d. %s: %s", i+1, s.Step.Name(), s.Why), "      ")
		}
	}
}
