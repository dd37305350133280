package program

import (
	_ "embed"
	"fmt"
	"slices"
	"strings"

	"example.org/turfplat/zones"
	"example.org/turfplat/zones/material"
	"example.org/turfplat/zones/turf"
)

var (
	// boundsCSV holds the most that is published of what goes down at one time;
	// an empty job, use or active ingredient is any.
	//
	//go:embed bounds.csv
	boundsCSV string

	bounds = mustReadBounds()
)

// A bound is the most that is published of something at one time.
type bound struct {
	of     string
	does   Job    // "" = any
	use    Use    // "" = any
	active string // "" = any that has no row of its own
	most   material.Rate
	source string
}

func mustReadBounds() []bound {
	var table []bound
	for _, r := range mustRows("bounds.csv", boundsCSV, "of", "does", "use", "active", "most", "source") {
		table = append(table, bound{r[0], Job(r[1]), Use(r[2]), r[3], must(mustFigure(r[4]).Rate()), r[5]})
	}
	return table
}

// boundsOn are the bounds that hold for a step.
func boundsOn(s *Step) []bound {
	var list []bound
	for _, b := range bounds {
		own := func(other bound) bool {
			return other.active != "" && other.of == b.of && other.does == b.does && other.use == b.use && other.holds(s)
		}
		if b.holds(s) && (b.active != "" || !slices.ContainsFunc(bounds, own)) {
			list = append(list, b)
		}
	}
	return list
}

// holds reports whether a bound is about steps such as one.
func (b bound) holds(s *Step) bool {
	return (b.does == "" || b.does == s.Does) && (b.use == "" || s.isFor(b.use)) &&
		(b.active == "" || strings.EqualFold(b.active, strings.TrimSpace(s.Product.Active)) || strings.EqualFold(b.active, s.Material))
}

// judgeSlip blocks a rate that is so far beyond all that is published that a
// figure or a unit must have slipped.
func (pl *planner) judgeSlip(s *StepPlan) {
	times := rules["rate_slip"].figure.SI()
	for _, b := range boundsOn(s.Step) {
		rate, what, ok := b.laidBy(s.Step)
		if !ok || !above(rate.PerM2, times*b.most.PerM2) {
			continue
		}
		v := verdict("rate_slip", s.grounds(), "%s of %s at one time is %.3g times the most that is published, %s: likely a slip of figure or unit; put the rate right, or say why under override",
			pl.rateOf(s, b.of, rate), what, rate.PerM2/b.most.PerM2, pl.rateOf(s, b.of, b.most))
		v.Source, v.forGood = b.source, true
		s.add(v)
		return
	}
}

// judgeHigh warns of a rate beyond all that is published, though not so far that
// it must be a slip. Nitrogen has rules of its own.
func (pl *planner) judgeHigh(s *StepPlan) {
	if s.tellsOf("rate_slip", "passes_over") {
		return // tells it all
	}
	for _, b := range boundsOn(s.Step) {
		rate, what, ok := b.laidBy(s.Step)
		if !ok || b.of == "nitrogen" || !above(rate.PerM2, b.most.PerM2) {
			continue
		}
		v := verdict("rate_high", s.grounds(), "%s of %s at one time is more than the most that is published, %s: go by %s",
			pl.rateOf(s, b.of, rate), what, pl.rateOf(s, b.of, b.most), s.Step.authority())
		v.Source = b.source
		s.add(v)
		return
	}
	pl.judgeSeedRate(s)
}

// authority is what has the last word on the rate of a step.
func (s *Step) authority() string {
	switch {
	case s.Labelled():
		return "the label"
	case s.Does == Spread || s.Does == Spray:
		return "the supplier's sheet"
	}
	return "what you know of the place"
}

// judgeSeedRate warns of more seed than is published for its grass: that which
// the material names, else that of the zone.
func (pl *planner) judgeSeedRate(s *StepPlan) {
	if !isSeed(s.Step) || s.Step.Rate == nil || s.Step.Rate.By != material.Weight {
		return
	}
	rate := s.Step.Rate.Times(float64(s.Step.Passes))
	named, isNamed := pl.seedOf(s.Step.Material)
	for _, g := range s.grounds() {
		grass, hint := g.Grass, "; name the grass of the seed if it is another one"
		if isNamed {
			grass, hint = named, ""
		}
		if most, known := grass.Seeding.Used(); known && above(rate.PerM2, most.Most) {
			v := verdict("rate_high", []Ground{g}, "%s of seed is more than new turf of %s takes, %s%s", pl.rateOf(s, "seed", rate), grass.Name, pl.rate(most.Most), hint)
			v.Source = turf.Citation(most.Source)
			s.add(v)
		}
	}
}

// seedOf is the grass that a material says it is seed of.
func (pl *planner) seedOf(name string) (turf.Species, bool) {
	for _, word := range []string{"overseed", "seed"} {
		name = strings.TrimSpace(strings.ReplaceAll(strings.ToLower(name), word, " "))
	}
	return pl.grasses.Find(name)
}

// laidBy is what a step lays at one time of what the bound is on; false if it
// lays none of it, or measures it otherwise.
func (b bound) laidBy(s *Step) (rate material.Rate, what string, ok bool) {
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
	case "active ingredient":
		rate, what, ok = s.activeRate(b.most.Of), s.Product.Active, true
	default:
		rate, ok = s.VisitRate()
		what = s.Product.Name
	}
	return rate, what, ok && rate.By == b.most.By
}

// activeRate is how much of its active ingredient a step lays at one time; 0 if
// that is not known.
func (s *Step) activeRate(of material.Substance) material.Rate {
	rate, ok := s.VisitRate()
	if !ok {
		return material.Rate{}
	}
	active, err := s.Product.Delivers(of, rate)
	if err != nil {
		return material.Rate{} // its strength is not stated, or in the other way
	}
	return active
}

// rateOf writes a rate of something as steps have theirs written; of an active
// ingredient, as labels have it.
func (pl *planner) rateOf(s *StepPlan, of string, r material.Rate) string {
	figures := material.Figures{Units: pl.Property.Units}
	switch {
	case r.Of == material.Active || r.Of == material.AcidEquivalent:
		return pl.labelRate(r)
	case of == "mix":
		return figures.MixRate(r).String()
	}
	return s.Step.RateText(figures, r)
}

// labelRate writes a rate of an active ingredient as labels have it.
func (pl *planner) labelRate(r material.Rate) string {
	by, over := "lb", "acre"
	if pl.Property.Units == zones.Metric {
		by, over = "kg", "ha"
	}
	v, _ := r.In(must(material.ParseUnit(by + " / " + over))) // both are of a weight on an area
	of := map[material.Substance]string{material.Active: "ai", material.AcidEquivalent: "ae"}[r.Of]
	return fmt.Sprintf("%.3g %s %s / %s", v, by, of, over)
}

// slipped reports whether a step's rate is taken for a slip: nothing is reckoned
// with it.
func (s *StepPlan) slipped() bool { return s.blockedBy("rate_slip", "covers_over", "passes_over") }

// tellsOf reports whether one of some rules has said something of a step.
func (s *StepPlan) tellsOf(names ...string) bool {
	return slices.ContainsFunc(s.Reasons, func(v Verdict) bool { return slices.Contains(names, v.Rule) })
}

// blockedBy reports whether one of some rules holds a step back.
func (s *StepPlan) blockedBy(names ...string) bool {
	return slices.ContainsFunc(s.Reasons, func(v Verdict) bool { return v.Severity == Block && slices.Contains(names, v.Rule) })
}

// closedText says why a step is not done in this season.
func (s *StepPlan) closedText() string {
	if s.slipped() || s.blockedBy("n_year_slip") {
		return s.blockText() // it may be, once the rate is right
	}
	return fmt.Sprintf("not this season: %s", s.blockText())
}
