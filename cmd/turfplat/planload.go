package main

import (
	"fmt"
	"strings"

	"example.org/turfplat/zones/material"
	"example.org/turfplat/zones/program"
)

// zones is the table of zones: their grass, and their nutrients against the
// budget.
func (p *planPage) zones() {
	p.line("\nTHE ZONES, and what the season feeds them (%s)", p.rateUnit())
	t := newTable("llrlrrrr")
	t.row("", "zone", p.figures.areaUnit(), "grass", "N", "of at most", "P2O5", "K2O")
	for _, f := range p.Feeds {
		limit := "not known"
		if f.Limit > 0 {
			limit = p.feed(f.Limit)
		}
		t.row(f.Letter, f.Label(), p.figures.Area(f.AreaM2, f.CI95M2), grass(f.Ground), p.feed(f.N), limit, p.feed(f.P2O5), p.feed(f.K2O))
	}
	p.table(t)
	for _, g := range p.Grounds {
		if !g.Apply {
			p.line("%s  %s: nothing is applied here", g.Letter, g.Label())
		}
	}
}

func grass(g program.Ground) string {
	said := []string{g.Grass.Name}
	if !g.Known {
		said = []string{"not known"}
	}
	if g.Exposure != "" {
		said = append(said, g.Exposure)
	}
	if g.Watered {
		said = append(said, "irrigated")
	}
	return strings.Join(said, ", ")
}

func (p *planPage) rateUnit() string {
	return p.amounts.Rate(material.Rate{By: material.Weight, PerM2: 1}).Unit.String()
}

func (p *planPage) feed(kgPerM2 float64) string {
	if kgPerM2 == 0 {
		return "0"
	}
	return p.amounts.Rate(material.Rate{By: material.Weight, PerM2: kgPerM2}).Number()
}

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

// foot says what law, label and good sense ask.
func (p *planPage) foot() {
	p.line("")
	for _, text := range program.Footers() {
		p.wrapped("", text, "")
	}
}
