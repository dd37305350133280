package program

import (
	"fmt"

	"example.org/turfplat/geo/ingest"
	"example.org/turfplat/zones/material"
)

// judgePasses asks about a pesticide of which one pass keeps within what its pack
// or the published bounds allow, and all passes of a visit do not: likely the rate
// of a visit stands where that of one pass belongs. It holds the step back where
// the pack or the active ingredient says so; other bounds rest on too little.
func (pl *planner) judgePasses(s *StepPlan) {
	if !s.Step.Labelled() || s.Step.Passes < 2 || s.slipped() {
		return
	}
	if all, pack, ok := s.Step.besidePack(); ok && s.Step.passesExceed(all, pack, rules["covers_rate"].figure.SI()) {
		pl.askOfPasses(s, all, pack, "", "its pack means", rules["passes_over"].source, Block)
		return
	}
	for _, b := range boundsOn(s.Step) {
		if b.of != "active ingredient" && b.of != "product" {
			continue // food has rules of its own, and a mix is of one pass
		}
		if all, _, ok := b.laidBy(s.Step); ok && s.Step.passesExceed(all, b.most, 0) {
			severity := Block
			if b.active == "" {
				severity = Warn
			}
			pl.askOfPasses(s, all, b.most, b.of, "is published at one time", b.source, severity)
			return
		}
	}
}

// passesExceed reports whether all passes of a visit together lay more than a
// limit, give or take a share of it, and one of them does not.
func (s *Step) passesExceed(all, limit material.Rate, share float64) bool {
	most := (1 + share) * limit.PerM2
	return above(all.PerM2, most) && !above(all.PerM2/float64(s.Passes), most)
}

// askOfPasses tells what all passes lay and what is allowed, and where the file
// says so.
func (pl *planner) askOfPasses(s *StepPlan, all, limit material.Rate, of, who, source string, severity Severity) {
	n := s.Step.Passes
	v := verdict("passes_over", s.grounds(), "the rate is of one pass, and %d passes lay %s in all, more than the %s that %s: state 1/%d of the label's rate or passes: 1, or say under override why the label allows it",
		n, pl.rateOf(s, of, all), pl.rateOf(s, of, limit), who, n)
	v.Severity, v.Source, v.forGood = severity, source, severity == Block
	if s.add(v) == Note {
		return // the file answers for it
	}
	pl.plan.Problems = append(pl.plan.Problems, ingest.Problem{Severity: ingest.Warning, Code: v.Rule, Place: s.Step.places["passes"],
		Text: fmt.Sprintf("%d passes of the rate lay %s in all, more than the %s that %s", n, pl.rateOf(s, of, all), pl.rateOf(s, of, limit), who),
		Hint: fmt.Sprintf("rate is of one pass: state 1/%d of the label's rate or passes: 1; where the label allows it, say so under override: {rule: passes_over, reason: ...}", n)})
}
