package program

import (
	"fmt"

	"example.org/turfplat/zones"
	"example.org/turfplat/zones/material"
)

// judgeCovers holds the rate against the one that the pack means by the ground
// it covers. A pesticide far beyond that is held back: its label is the law.
func (pl *planner) judgeCovers(s *StepPlan) {
	pack, err := s.Step.Product.LabelRate()
	if err != nil || s.slipped() || s.tellsOf("passes_over") {
		return // told when the program was read, or by another rule
	}
	size := material.Figures{Units: pl.Property.Units}.Amount(s.Step.Product.Packs[0].Size)
	ground := zones.Figures{Units: pl.Property.Units}.Told(s.Step.Product.Covers)
	means := fmt.Sprintf("the %s that its pack means, %s for %s", pl.rateOf(s, "", pack), size, ground)
	if s.Step.Rate == nil {
		v := verdict("covers_rate", s.grounds(), "no rate is stated: write %s, if the label says so", means)
		v.Severity = Note
		s.add(v)
		return
	}
	if rate, pack, ok := s.Step.besidePack(); ok {
		pl.judgeBeside(s, rate, pack, means)
	}
}

// besidePack are the rate of a visit and that which the pack means, measured alike;
// false if one of them is not known.
func (s *Step) besidePack() (rate, pack material.Rate, ok bool) {
	pack, err := s.Product.LabelRate()
	rate, stated := s.VisitRate()
	if err != nil || !stated {
		return rate, pack, false
	}
	rate, err = rate.As(pack.By, s.Product.Density)
	return rate, pack, err == nil
}

// judgeBeside holds a rate against that of the pack.
func (pl *planner) judgeBeside(s *StepPlan, rate, pack material.Rate, means string) {
	allowed := rules["covers_rate"].figure.SI()
	name, how, what := "covers_rate", "more than", "go by the label"
	switch {
	case s.Step.Labelled() && above(rate.PerM2, rules["covers_over"].figure.SI()*pack.PerM2):
		name, how, what = "covers_over", "far more than", "put the rate right, or say why under override"
	case above(rate.PerM2, (1+allowed)*pack.PerM2):
	case above((1-allowed)*pack.PerM2, rate.PerM2):
		how = "less than"
	default:
		return
	}
	v := verdict(name, s.grounds(), "%s is %s %s: %s", pl.rateOf(s, "", rate), how, means, what)
	v.forGood = v.Severity == Block
	if how == "less than" {
		v.Severity = Note
	}
	s.add(v)
}
