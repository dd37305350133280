package program

import (
	"fmt"
	"time"

	"example.org/turfplat/zones"
	"example.org/turfplat/zones/material"
	"example.org/turfplat/zones/turf"
)

// visitFeed is what one visit puts down of nutrients, in kg on a square metre.
func (s *Step) visitFeed() material.Nutrients {
	if s.Rate == nil || s.Product.Grade == (material.Grade{}) {
		return material.Nutrients{}
	}
	rate, err := s.Product.Rate(s.Rate.Times(float64(s.Passes)))
	if err != nil {
		return material.Nutrients{} // told when the program was read
	}
	of := func(what material.Substance) float64 {
		r, err := s.Product.Delivers(what, rate)
		if err != nil {
			return 0
		}
		return r.PerM2
	}
	return material.Nutrients{N: of(material.Nitrogen), P2O5: of(material.Phosphate), K2O: of(material.Potash)}
}

// soluble is the nitrogen of a visit that acts at once.
func (s *Step) soluble() float64 { return s.visitFeed().N * (1 - float64(s.Product.Slow)) }

var (
	poundPer1000 = must(material.ParseUnit("lb / 1000 ft2"))
	gramPerM2    = must(material.ParseUnit("g / m2"))
)

// rate writes a rate of a nutrient in the units of the site.
func (pl *planner) rate(kgPerM2 float64) string {
	unit := poundPer1000
	if pl.Property.Units == zones.Metric {
		unit = gramPerM2
	}
	v, _ := material.Rate{By: material.Weight, PerM2: kgPerM2}.In(unit) // both are of a weight on an area
	return fmt.Sprintf("%.3g %s", v, unit)
}

// above reports whether a rate is over a limit by more than rounding.
func above(rate, limit float64) bool { return rate > limit*(1+1e-9) }

// ofSeason returns a step's zones with grass of a season.
func (pl *planner) ofSeason(s *StepPlan, wanted turf.Season) []Ground {
	var list []Ground
	for _, g := range s.grounds() {
		if g.season(pl.Program.Season) == wanted {
			list = append(list, g)
		}
	}
	return list
}

// judgeGreenUp keeps nitrogen off warm-season grass that is not green yet.
func (pl *planner) judgeGreenUp(s *StepPlan) {
	on := pl.ofSeason(s, turf.Warm)
	if s.Step.visitFeed().N == 0 || len(on) == 0 || pl.has(s, GreenUp) {
		return
	}
	if growth := pl.season.span(periods["warm_growth"].window); growth.holds(s.timing.span.from) {
		return
	}
	limit := rules["n_greenup"]
	if pl.warmBy(s.Step, limit.figure.SI(), 0) {
		return
	}
	v := verdict(limit.name, on, "no nitrogen before the grass is green all over: soil %s at %s and three mowings; then note checked: %s", pl.figures().Told(limit.figure), pl.figures().Prose("4 in"), GreenUp)
	if growth := pl.season.span(periods["warm_growth"].window); !growth.from.After(s.timing.span.to) {
		v.Until = growth.from
		v.Text += ", or wait for June's growth"
	}
	s.add(v)
}

// warmBy reports whether a step's own triggers, or those of the steps it
// follows, make sure of a soil temperature.
func (pl *planner) warmBy(s *Step, celsius float64, deep int) bool {
	if t := s.When.Soil; t != nil && t.AtLeast != nil && t.AtLeast.SI() >= celsius-1e-9 {
		return true
	}
	if s.When.After == nil || deep > len(pl.Steps) {
		return false
	}
	return pl.warmBy(pl.find(s.When.After.Step).Step, celsius, deep+1)
}

// judgeSummer warns of nitrogen on cool-season grass in summer.
func (pl *planner) judgeSummer(s *StepPlan) {
	on := pl.ofSeason(s, turf.Cool)
	summer := pl.season.span(periods["summer"].window)
	if s.Step.visitFeed().N == 0 || len(on) == 0 || !s.timing.span.meets(summer) {
		return
	}
	v := verdict("n_summer", on, "no nitrogen on cool-season grass from %s to %s", isoDay(summer.from), isoDay(summer.to))
	v.Until = summer.to.AddDate(0, 0, 1)
	s.add(v)
}

// judgeOnce holds what one visit puts down against what is allowed at a time.
func (pl *planner) judgeOnce(s *StepPlan) {
	if s.slipped() {
		return
	}
	feed := s.Step.visitFeed()
	pl.judgeLimit(s, "n_once", feed.N, "nitrogen at one time")
	pl.judgeLimit(s, "n_soluble", s.Step.soluble(), "soluble nitrogen at one time")
	if l, ok := lawOf(pl.region, "p_once"); ok && above(feed.P2O5, l.figure.SI()) {
		s.add(pl.unlawful(l, s.grounds(), fmt.Sprintf("%s of P2O5 at one time, more than %s", pl.rate(feed.P2O5), pl.figures().Told(l.figure))))
	}
	pl.judgeShade(s, feed.N)
}

// judgeLimit warns above a figure of the trade and blocks above one of law.
func (pl *planner) judgeLimit(s *StepPlan, name string, rate float64, what string) {
	if l, ok := lawOf(pl.region, name); ok {
		if above(rate, l.figure.SI()) {
			s.add(pl.unlawful(l, s.grounds(), fmt.Sprintf("%s of %s, more than %s", pl.rate(rate), what, pl.figures().Told(l.figure))))
		}
		return
	}
	if limit := rules[name].figure; above(rate, limit.SI()) {
		s.add(verdict(name, s.grounds(), "%s of %s, more than %s", pl.rate(rate), what, limit))
	}
}

// unlawful is the verdict that a law gives.
func (pl *planner) unlawful(l law, on []Ground, text string) Verdict {
	return Verdict{Rule: l.rule, Severity: Block, Zones: on, Source: l.cited(), Text: l.region + " law: " + text, forGood: true}
}

// judgeShade warns of more nitrogen at one time than shaded grass uses.
func (pl *planner) judgeShade(s *StepPlan, rate float64) {
	for _, g := range s.grounds() {
		limit, known := g.Grass.ShadeOnceN.Used()
		if g.shaded() && known && above(rate, limit.Most) {
			v := verdict("n_once", []Ground{g}, "%s of nitrogen at one time, more than %s for %s in shade", pl.rate(rate), pl.rate(limit.Most), g.Grass.Name)
			v.Source = turf.Citation(limit.Source)
			s.add(v)
		}
	}
}

// judgeBlackout keeps fertilizer out of the times in which law forbids it.
func (pl *planner) judgeBlackout(s *StepPlan) {
	if feed := s.Step.visitFeed(); feed.N == 0 && feed.P2O5 == 0 {
		return
	}
	for _, l := range lawsOf(pl.region, "blackout") {
		for _, year := range []int{pl.season.year - 1, pl.season.year, pl.season.year + 1} {
			dark := l.blackout(year)
			if s.timing.span.meets(dark) {
				v := pl.unlawful(l, s.grounds(), fmt.Sprintf("no fertilizer from %s to %s", isoDay(dark.from), isoDay(dark.to)))
				pl.keepOut(s, v, dark)
			}
		}
	}
}

// blackout is the time in which a law forbids fertilizer, from a day of a year.
func (l law) blackout(year int) span {
	from, to := onCalendar(year, l.window.From), onCalendar(year, l.window.To)
	if to.Before(from) {
		to = onCalendar(year+1, l.window.To)
	}
	return span{from, to}
}

// keepOut holds a step out of a time: it moves to after it, or ends before it.
func (pl *planner) keepOut(s *StepPlan, v Verdict, dark span) {
	v.Until = dark.to.AddDate(0, 0, 1)
	open := later(s.timing.span.from, pl.Today)
	v.forGood = false
	switch {
	case dark.holds(open) && dark.to.Before(s.timing.span.to):
	case dark.holds(open):
		v.forGood = true
	default: // the step begins before the time and may end before it
		v.Severity = Warn
		v.Text += ": be done before"
	}
	s.add(v)
}

// onCalendar is a day of a year as law has it, on either hemisphere.
func onCalendar(year int, d MonthDay) time.Time {
	return date(year, d.Month, min(d.Day, daysIn(year, d.Month)))
}

// judgeFrost keeps off frozen ground, by the log, what cannot be worked in there
// or would wash away; seed is told.
func (pl *planner) judgeFrost(s *StepPlan) {
	if pl.log == nil || !s.timing.span.holds(pl.Today) || !s.Step.meetsFrost() {
		return
	}
	now, ok := pl.log.soilNow(SoilTrigger{Days: 1, Depth: defaultDepth})
	if limit := rules["frozen"].figure; !ok || float64(now) > limit.SI() {
		return
	}
	v := verdict("frozen", s.grounds(), "the soil is frozen (%s at %s): wait until it has thawed and drained", degrees(now, pl.Property.Units), pl.figures().Told(defaultDepth))
	if isSeed(s.Step) {
		v.Severity = Warn
		v.Text = fmt.Sprintf("the soil is frozen (%s at %s): only seed that is to lie until spring", degrees(now, pl.Property.Units), pl.figures().Told(defaultDepth))
	}
	s.add(v)
}

// meetsFrost reports whether frozen ground stands against a step.
func (s *Step) meetsFrost() bool {
	return s.Does == Core || s.Does == Rake || s.Does.lays() && s.Does != Water
}
