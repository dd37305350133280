package main

import (
	"fmt"
	"strings"

	"example.org/turfplat/zones/program"
)

// shopping is the list of what to buy for what is still to come.
func (p *planPage) shopping() {
	p.line("\nTO BUY for the rest of the season")
	t := newTable("lrrll")
	t.row("material", "needed", "to load", "buy", "left over")
	for _, b := range p.Purchases {
		t.row(b.Product, p.amounts.Amount(b.Needed).String(), p.amounts.Amount(b.ToLoad).String(), p.amounts.Packs(b), p.amounts.LeftOver(b))
	}
	p.table(t)
	p.line("to load is what is needed and %.3g %% more; rates stay as they are", 100*float64(p.Program.Carry))
	p.conditional()
	var byLabel []string
	for i := range p.Steps {
		if s := &p.Steps[i]; s.Status != program.Skipped && s.Step.ByLabel() {
			byLabel = append(byLabel, s.Step.Product.Name)
		}
	}
	if len(byLabel) > 0 {
		p.wrapped("", "by label, so not counted: "+strings.Join(unique(byLabel), ", "), "  ")
	}
}

// conditional names what is bought only if a need is found.
func (p *planPage) conditional() {
	for _, b := range p.Purchases {
		if need := p.NeededIf(b.Product); need != "" {
			p.wrapped("", fmt.Sprintf("%s: only if %s", b.Product, need), "  ")
		}
	}
}

func unique(list []string) []string {
	var once []string
	seen := make(map[string]bool)
	for _, s := range list {
		if !seen[s] {
			once = append(once, s)
		}
		seen[s] = true
	}
	return once
}
