package main

import (
	"bytes"
	"fmt"
	"io"
	"strings"
	"time"

	"example.org/turfplat/zones/material"
	"example.org/turfplat/zones/program"
)

// A planPage is a plan as a person reads it: what is due, the season, the steps,
// the zones, what to buy, and what law and label ask.
type planPage struct {
	bytes.Buffer
	*program.Plan
	figures figures
	amounts material.Figures
}

func newPlanPage(p *program.Plan) *planPage {
	return &planPage{Plan: p, figures: figuresIn(p.Property.Units), amounts: material.Figures{Units: p.Property.Units}}
}

// printPlans writes a page a site, then what the truck takes to all of them.
func printPlans(w io.Writer, plans []*program.Plan) error {
	for i, p := range plans {
		if i > 0 {
			if _, err := io.WriteString(w, "\n\n"); err != nil {
				return err
			}
		}
		if err := printPlan(w, p); err != nil {
			return err
		}
	}
	if len(plans) < 2 {
		return nil
	}
	return printTruck(w, plans)
}

func printPlan(w io.Writer, p *program.Plan) error {
	page := newPlanPage(p)
	page.head()
	page.due()
	page.season()
	page.steps()
	page.zones()
	page.shopping()
	page.foot()
	_, err := page.WriteTo(w)
	return err
}

// amount writes what a step takes.
func (p *planPage) amount(s *program.StepPlan, a material.Amount) string {
	return s.Step.Measured(p.amounts, a).String()
}

// line writes one line of text.
func (p *planPage) line(format string, v ...any) { fmt.Fprintf(p, format+"\n", v...) }

func (p *planPage) table(t *table) { t.WriteTo(p) } // a buffer takes all

func (p *planPage) head() {
	name := p.Property.Name
	if name != p.Property.ID {
		name = fmt.Sprintf("%s (%s)", name, p.Property.ID)
	}
	p.line("%s: program %s, season %d", name, p.Program.Name, p.Year)
	if p.Today.IsZero() {
		p.line("no day is set, so nothing is due yet: --on DAY, or a log with --soil, tells what is")
		return
	}
	p.line("as of %s", program.LongDay(p.Today))
}

// due lists what can be done now, what is held back, and what comes next.
func (p *planPage) due() {
	if p.Today.IsZero() {
		return
	}
	p.line("")
	p.list("READY NOW", program.Ready)
	p.load()
	p.list("BLOCKED", program.Blocked)
	p.next()
}

func (p *planPage) list(head string, status program.Status) {
	none := true
	p.line("%s", head)
	for i := range p.Steps {
		if s := &p.Steps[i]; s.Status == status {
			none = false
			p.item(i, s)
		}
	}
	if none {
		p.line("  nothing")
	}
}

func (p *planPage) item(i int, s *program.StepPlan) {
	text := fmt.Sprintf("%2d. %s in %s", i+1, s.Step.Name(), p.where(s, p.workable(s)))
	if s.Step.OnlyIf != "" {
		text += ", only if " + s.Step.OnlyIf
	}
	if how := p.howMuch(s); how != "" {
		text += ": " + how
	}
	p.wrapped("  ", text+" ("+s.Why+")", "      ")
	for _, v := range s.Reasons {
		switch {
		case v.Severity == program.Warn:
			p.wrapped("      ! ", reasonText(v, s), "        ")
		case v.Severity == program.Block && s.Status == program.Ready:
			p.wrapped("      not ", reasonText(v, s), "        ")
		}
	}
}

// workable are the zones that an item is about: of a step that is ready those on
// which it can be done now.
func (p *planPage) workable(s *program.StepPlan) []program.ZonePlan {
	if s.Status == program.Ready {
		return p.Now(s)
	}
	return s.Zones
}

// reasonText is what a rule says of a step, and until when.
func reasonText(v program.Verdict, s *program.StepPlan) string {
	text := v.WithZones(s)
	if !v.Until.IsZero() {
		text += ", until " + program.ShortDay(v.Until)
	}
	return text
}

// load says what to put on the truck for what is ready.
func (p *planPage) load() {
	loads, err := program.Load([]*program.Plan{p.Plan})
	if err != nil || len(loads) == 0 {
		return // the plan itself was bought with the same packs
	}
	var parts []string
	for _, b := range loads {
		part := fmt.Sprintf("%s %s", p.amounts.Amount(b.ToLoad), b.Product)
		if p.NeededIf(b.Product) != "" {
			part += " (if needed)"
		}
		parts = append(parts, part)
	}
	p.wrapped("", "LOAD for one visit, "+p.allPasses()+"carry included: "+strings.Join(parts, ", "), "  ")
}

// allPasses says that a load is for all passes, where a step that is ready has
// several.
func (p *planPage) allPasses() string {
	for i := range p.Steps {
		if s := &p.Steps[i]; s.Status == program.Ready && len(s.Totals) > 0 && s.Step.Passes > 1 {
			return "all passes and "
		}
	}
	return ""
}

// next tells the steps whose dates come next.
func (p *planPage) next() {
	var first time.Time
	var names []string
	for i := range p.Steps {
		s := &p.Steps[i]
		if s.Status != program.Waiting || !s.From.After(p.Today) {
			continue
		}
		switch {
		case first.IsZero() || s.From.Before(first):
			first, names = s.From, []string{s.Step.Name()}
		case s.From.Equal(first):
			names = append(names, s.Step.Name())
		}
	}
	if len(names) > 0 {
		p.wrapped("", fmt.Sprintf("NEXT, from %s: %s", program.LongDay(first), strings.Join(names, ", ")), "  ")
	}
}

// season is the table of all steps.
func (p *planPage) season() {
	p.line("\nTHE SEASON, in order")
	t := newTable("rlllll")
	t.row("", "step", "status", "dates", "zones", "takes")
	for i := range p.Steps {
		s := &p.Steps[i]
		t.row(fmt.Sprint(i+1), s.Step.Name(), string(s.Status), s.Window(), p.letters(s), p.takes(s))
	}
	p.table(t)
}

// letters are those of the zones on which a step is done in the season.
func (p *planPage) letters(s *program.StepPlan) string {
	var letters []string
	for _, z := range s.Open() {
		letters = append(letters, z.Letter)
	}
	return strings.Join(letters, " ")
}

// where names zones of a step.
func (p *planPage) where(s *program.StepPlan, on []program.ZonePlan) string {
	if p.Everywhere(s, on) {
		return p.allZones(s)
	}
	var names []string
	for _, z := range on {
		names = append(names, z.Label())
	}
	return strings.Join(names, "; ")
}

// allZones is what a step is done on that is done wherever it may be.
func (p *planPage) allZones(s *program.StepPlan) string {
	if p.Barred(s) {
		return "all treated zones"
	}
	return "all zones"
}

// takes says what the whole season's visits take.
func (p *planPage) takes(s *program.StepPlan) string {
	switch {
	case s.Status == program.Skipped:
		return ""
	case s.Step.ByLabel():
		return "by label"
	}
	var parts []string
	for _, t := range s.Totals {
		parts = append(parts, p.amount(s, t.Amount)+" "+t.Material+inVisits(s))
	}
	return strings.Join(parts, ", ")
}

// inVisits says that an amount is of all visits, and of all their passes.
func inVisits(s *program.StepPlan) string {
	switch n := s.Visits(); {
	case n > 1 && s.Step.Passes > 1:
		return fmt.Sprintf(" in %d visits of %d passes", n, s.Step.Passes)
	case n > 1:
		return fmt.Sprintf(" in %d visits", n)
	}
	return s.Step.InPasses()
}

// howMuch says what one visit takes on the zones that it is about.
func (p *planPage) howMuch(s *program.StepPlan) string {
	if s.Step.ByLabel() {
		return s.Step.Product.Name + " by label" + s.Step.InPasses()
	}
	var parts []string
	for _, t := range s.Totals {
		sum := material.Amount{By: t.Amount.By}
		for _, z := range p.workable(s) {
			if z.Draw != nil {
				sum.Size += z.Draw.Amount.Size
			}
		}
		parts = append(parts, fmt.Sprintf("%s of %s%s", p.amount(s, s.OfVisit(sum)), t.Material, s.Step.InPasses()))
	}
	return strings.Join(parts, ", ")
}

// foot says what law, label and good sense ask.
func (p *planPage) foot() {
	p.line("")
	for _, text := range program.Footers(p.amounts) {
		p.wrapped("", text, "")
	}
}

const pageWidth = 88 // characters

// wrapped writes text in lines, the first after a lead, the others after a
// hang.
func (p *planPage) wrapped(lead, text, hang string) {
	line := lead
	for i, word := range strings.Fields(text) {
		if i > 0 && len([]rune(line))+1+len([]rune(word)) > pageWidth {
			p.line("%s", line)
			line = hang + word
			continue
		}
		if i > 0 {
			line += " "
		}
		line += word
	}
	p.line("%s", line)
}
