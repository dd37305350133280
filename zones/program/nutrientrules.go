package program

import (
	"fmt"
	"slices"

	"example.org/turfplat/zones/turf"
)

// judgePhosphate asks for a soil test before phosphate.
func (pl *planner) judgePhosphate(s *StepPlan) {
	if s.Step.visitFeed().P2O5 == 0 || pl.has(s, SoilTestP) || pl.has(s, NewTurf) {
		return
	}
	var on []Ground
	for _, g := range s.grounds() {
		if !pl.sown(s, g) {
			on = append(on, g)
		}
	}
	if len(on) == 0 {
		return
	}
	const text = "phosphate without a soil test: choose a grade without it, or note checked: soil_test_p"
	if l, ok := lawOf(pl.region, "p_untested"); ok {
		v := pl.unlawful(l, on, text)
		v.forGood = false // a test lifts it
		s.add(v)
		return
	}
	s.add(verdict("p_untested", on, text))
}

// sown reports whether a zone is seeded about when a step is done.
func (pl *planner) sown(s *StepPlan, g Ground) bool {
	const about = 30 // days, in which a starter feed serves the seed
	for seed, on := range pl.others(s, isSeed) {
		if among(on, g.ID) && pl.near(s, seed, about) {
			return true
		}
	}
	return false
}

// judgePotash reminds of the soil test before potash for its own sake.
func (pl *planner) judgePotash(s *StepPlan) {
	feed := s.Step.visitFeed()
	if feed.K2O > 0 && feed.N == 0 && feed.P2O5 == 0 && !pl.has(s, SoilTestK) {
		s.add(verdict("k_untested", s.grounds(), "potash by a soil test only: note checked: %s when it asks for it", SoilTestK))
	}
}

// judgeSalt warns of more soluble salts than grass bears within two weeks.
func (pl *planner) judgeSalt(s *StepPlan) {
	const window = 14 // days that the rule's figure is for
	own := s.Step.salts()
	if own == 0 || s.slipped() {
		return
	}
	limit := rules["salt"].figure.SI()
	for _, g := range s.grounds() {
		sum, with := own, ""
		for other, on := range pl.others(s, func(o *Step) bool { return o.salts() > 0 }) {
			if other.standsBefore(s) && !other.slipped() && among(on, g.ID) && pl.near(s, other, window) {
				sum += other.Step.salts()
				with = " with " + other.Step.Name()
			}
		}
		if above(sum, limit) {
			s.add(verdict("salt", []Ground{g}, "%s of soluble nitrogen and potash%s within %s: leave two weeks between, or water in well", pl.rate(sum), with, inWords(window)))
		}
	}
}

// among reports whether a list holds the zone of an id.
func among(list []Ground, id string) bool {
	return slices.ContainsFunc(list, func(g Ground) bool { return g.ID == id })
}

// salts are the soluble nitrogen and potash of one visit.
func (s *Step) salts() float64 { return s.soluble() + s.visitFeed().K2O }

// judgeYear holds what each zone gets in the season against its budget: it warns
// at the step that passes it, and holds back one that goes several times beyond.
func (pl *planner) judgeYear() {
	for _, g := range pl.Grounds {
		lawP, hasP := lawOf(pl.region, "p_year")
		n, p := 0.0, 0.0
		for i := range pl.Steps {
			s := &pl.Steps[i]
			if !s.comes(pl) && !s.done() || s.slipped() || !among(s.grounds(), g.ID) {
				continue
			}
			feed, times := s.Step.visitFeed(), float64(s.visits())
			if !pl.judgeYearN(s, g, n+feed.N*times) {
				continue // nothing of it is laid there
			}
			n, p = n+feed.N*times, p+feed.P2O5*times
			if feed.P2O5 > 0 && hasP && above(p, lawP.figure.SI()) {
				s.add(pl.unlawful(lawP, []Ground{g}, fmt.Sprintf("%s of P2O5 in the season, more than %s", pl.rate(p), pl.figures().Told(lawP.figure))))
			}
		}
	}
}

// judgeYearN holds the nitrogen of a zone, with a step, against its budget; it
// reports whether the step may go there.
func (pl *planner) judgeYearN(s *StepPlan, g Ground, n float64) bool {
	limit, source := g.yearN()
	if s.Step.visitFeed().N == 0 || limit == 0 || !above(n, limit) {
		return true
	}
	name, text := "n_year", fmt.Sprintf("%s of nitrogen planned up to this step, more than %s for %s", pl.rate(n), pl.rate(limit), g.Grass.Name)
	if above(n, rules["n_year_slip"].figure.SI()*limit) && s.comes(pl) && !s.answersFor("rate_slip", g) {
		name = "n_year_slip"
		text = fmt.Sprintf("%s of nitrogen planned up to this step is %.3g times the %s that %s bears: likely a slip of figure, unit or visits; put it right, or say why under override", pl.rate(n), n/limit, pl.rate(limit), g.Grass.Name)
	}
	v := verdict(name, []Ground{g}, "%s", text)
	v.Source, v.forGood = source, v.Severity == Block
	return s.add(v) != Block
}

// yearN is the most nitrogen that a zone's grass should get in a year, in kg on
// a square metre, and who says so; 0 if that is not known.
func (g Ground) yearN() (float64, string) {
	figures := g.Grass.YearN
	if g.shaded() && len(g.Grass.ShadeYearN) > 0 {
		figures = g.Grass.ShadeYearN
	}
	used, known := figures.Used()
	if !known {
		return 0, ""
	}
	return used.Most, turf.Citation(used.Source)
}

// judgeTrend tells that a soil temperature is near.
func (pl *planner) judgeTrend(s *StepPlan) {
	t := s.Step.When.Soil
	if t == nil || t.AtLeast == nil || !s.Step.isFor(PreEmergent) || pl.log == nil || !s.timing.waitsFor(t.told(pl.figures())) {
		return
	}
	now, ok := pl.log.soilNow(*t)
	if !ok {
		return
	}
	switch {
	case float64(now) >= rules["stand_by"].figure.SI():
		s.add(verdict("stand_by", s.grounds(), "the soil is at %s: be ready within days", degrees(now, pl.Property.Units)))
	case float64(now) >= rules["order_product"].figure.SI():
		s.add(verdict("order_product", s.grounds(), "the soil is at %s: order the product now", degrees(now, pl.Property.Units)))
	}
}
