package program

import (
	_ "embed"
	"fmt"
	"slices"

	"example.org/turfplat/zones/material"
)

var (
	// boundsCSV holds the most that is published of what goes down at one time;
	// an empty job is any.
	//
	//go:embed bounds.csv
	boundsCSV string

	bounds = mustReadBounds()
)

// A bound is the most that is published of something at one time.
type bound struct {
	of     string
	does   Job // "" = any
	most   material.Rate
	source string
}

func mustReadBounds() []bound {
	var table []bound
	for _, r := range mustRows("bounds.csv", boundsCSV, "of", "does", "most", "source") {
		table = append(table, bound{r[0], Job(r[1]), must(mustFigure(r[2]).Rate()), r[3]})
	}
	return table
}

// judgeSlip blocks a rate that is so far beyond all that is published that a
// figure or a unit must have slipped.
func (pl *planner) judgeSlip(s *StepPlan) {
	times := rules["rate_slip"].figure.SI()
	for _, b := range bounds {
		rate, what, ok := b.laidBy(s.Step)
		if !ok || !above(rate.PerM2, times*b.most.PerM2) {
			continue
		}
		v := verdict("rate_slip", s.grounds(), "%s of %s at one time is %.3g times the most that is published, %s: likely a slip of figure or unit; put the rate right, or say why under override",
			pl.rateOf(s, rate), what, rate.PerM2/b.most.PerM2, pl.rateOf(s, b.most))
		v.Source, v.forGood = b.source, true
		s.add(v)
		return
	}
}

// laidBy is what a step lays at one time of what the bound is on; false if it
// lays none of it, or measures it otherwise.
func (b bound) laidBy(s *Step) (rate material.Rate, what string, ok bool) {
	if b.does != "" && b.does != s.Does {
		return rate, "", false
	}
	feed := s.visitFeed()
	rate, what, ok = material.Rate{By: material.Weight}, b.of, true
	switch b.of {
	case "nitrogen":
		rate.PerM2 = feed.N
	case "phosphate (P2O5)":
		rate.PerM2 = feed.P2O5
	case "potash (K2O)":
		rate.PerM2 = feed.K2O
	case "mix":
		rate = s.Carrier
	default:
		rate, ok = s.VisitRate()
		what = s.Product.Name
	}
	return rate, what, ok && rate.By == b.most.By
}

// rateOf writes a rate as steps have theirs written: of water, its depth.
func (pl *planner) rateOf(s *StepPlan, r material.Rate) string {
	figures := material.Figures{Units: pl.Property.Units}
	if s.Step.Does == Water {
		return figures.Height(r.Depth())
	}
	if r.By == material.Liquid {
		return figures.MixRate(r).String()
	}
	return figures.Rate(r).String()
}

// slipped reports whether a step's rate is taken for a slip: nothing is reckoned
// with it.
func (s *StepPlan) slipped() bool {
	return slices.ContainsFunc(s.Reasons, func(v Verdict) bool { return v.Rule == "rate_slip" && v.Severity == Block })
}

// closedText says why a step is not done in this season.
func (s *StepPlan) closedText() string {
	if s.slipped() {
		return s.blockText() // it may be, once the rate is right
	}
	return fmt.Sprintf("not this season: %s", s.blockText())
}
