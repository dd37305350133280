package main

import (
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
		t.row(f.Letter, f.Label(), p.figures.Area(f.AreaM2, f.CI95M2), grass(f.Ground), p.feed(f.N)+f.More(material.Nitrogen), limit, p.feed(f.P2O5)+f.More(material.Phosphate), p.feed(f.K2O)+f.More(material.Potash))
	}
	p.table(t)
	for _, told := range append([]string{p.Uncounted()}, p.Lapses()...) {
		if told != "" {
			p.wrapped("", told, "  ")
		}
	}
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
