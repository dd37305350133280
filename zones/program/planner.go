package program

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"time"

	"example.org/turfplat/geo/ingest"
	"example.org/turfplat/zones"
	"example.org/turfplat/zones/turf"
)

// A planner is a plan in the making.
type planner struct {
	*Plan
	plan    *Plan
	log     *record // nil = there is none, or no day to read it on
	grasses *turf.Table
	season  season
	region  string
}

func newPlanner(p *Program, on Property, at Occasion) *planner {
	plan := &Plan{Property: on, Program: p, Today: at.Today}
	pl := &planner{Plan: plan, plan: plan, grasses: at.Grasses, region: cmp.Or(p.Region, on.Region)}
	if at.Soil != nil && pl.known() {
		pl.log = &record{at.Soil, at.Today, on.Units}
	}
	if pl.grasses == nil {
		pl.grasses = turf.Default()
	}
	half := p.Hemisphere
	if half == "" {
		half = HemisphereAt(on.Latitude)
	}
	pl.season = season{at.Year, half == South}
	if at.Year == 0 {
		pl.season = seasonOf(at.Today, half)
	}
	plan.Year = pl.season.year
	plan.Grounds = grounds(on.Zones, pl.grasses)
	for i := range p.Steps {
		plan.Steps = append(plan.Steps, StepPlan{Step: p.told(&p.Steps[i], plan.figures()), place: i})
	}
	for i := range plan.Steps {
		s := &plan.Steps[i]
		s.season = pl.seasonOf(s.Step, at.Year == 0)
	}
	pl.tellAssumptions(half)
	return pl
}

// seasonOf is the season in which a step is planned: that of the plan or, of a
// window over the new year that is still open from the season before, that one,
// unless the year is stated.
func (pl *planner) seasonOf(s *Step, byDay bool) season {
	if before := pl.season.previous(); byDay && s.When.Window != nil && before.span(*s.When.Window).holds(pl.Today) {
		return before
	}
	return pl.season
}

// tellAssumptions notes what the plan takes for granted.
func (pl *planner) tellAssumptions(half Hemisphere) {
	const tropic = 23.44 // degrees: between the tropics the sun stands overhead
	if abs := max(pl.Property.Latitude, -pl.Property.Latitude); abs < tropic {
		pl.note("tropics", "the site lies in the tropics, where grass has wet and dry seasons and no winter", "write the windows for it; those of built-in programs do not fit")
	}
	if half != HemisphereAt(pl.Property.Latitude) {
		pl.note("hemisphere", fmt.Sprintf("the program says %s, the site lies in the %s", half, HemisphereAt(pl.Property.Latitude)), "is the latitude right?")
	}
	for _, g := range pl.Grounds {
		if !g.Apply || g.Known {
			continue
		}
		pl.noteGrass(g)
	}
	pl.noteExposure()
	pl.tellSpeciesNamed()
	pl.noteRegion()
	pl.noteSeason()
	pl.tellUnnamed()
}

// noteSeason tells that a program for grass of one season lies on grass of the
// other, of which no step of it speaks.
func (pl *planner) noteSeason() {
	written, other := pl.Program.Season, turf.Warm
	if written == turf.Warm {
		other = turf.Cool
	}
	if written == "" || slices.ContainsFunc(pl.Steps, func(s StepPlan) bool { return s.Step.Where.Season == other }) {
		return
	}
	var on []string
	treated := 0
	for _, g := range pl.Grounds {
		if !g.Apply {
			continue
		}
		treated++
		if g.Known && g.Grass.Season == other {
			on = append(on, ingest.Quoted(g.Label()))
		}
	}
	where := "zones " + joined(on) + " have"
	switch {
	case len(on) == 0:
		return
	case len(on) == treated:
		where = "all zones have"
	case len(on) == 1:
		where = "zone " + on[0] + " has"
	}
	pl.note("season_differs", fmt.Sprintf("the program is for %s-season grass, %s %s-season grass: its dates and feeds do not fit there", written, where, other),
		fmt.Sprintf("lay a program for %s-season grass there, as the built-in one, or give its steps where: {season: %s}", other, written))
}

// noteRegion tells whose law the program is held against, where that is in
// doubt.
func (pl *planner) noteRegion() {
	if site := pl.Property.Region; site != "" && site != pl.region && !slices.Contains(zones.RegionsAround(pl.region), site) {
		pl.note("region_differs", fmt.Sprintf("the program is for %s, the site lies in %s: the law of %s is held against it", pl.region, site, pl.region), "take the region out of the program, or put it right")
	}
	if pl.region != "" && !hasLaw(pl.region) && slices.ContainsFunc(pl.Steps, func(s StepPlan) bool { return s.Step.isFor(Fertilizer) }) {
		pl.note("region_lawless", fmt.Sprintf("no law of fertilizers of %s is known here, so none is held against the program", pl.region), "look it up before feeding")
	}
}

// tellSpeciesNamed warns of grasses that steps are for and the species table lacks.
func (pl *planner) tellSpeciesNamed() {
	told := make(map[string]bool)
	for i := range pl.Steps {
		s := pl.Steps[i].Step
		for _, name := range s.Where.Species {
			if _, known := pl.grasses.Find(name); known || told[strings.ToLower(name)] {
				continue
			}
			told[strings.ToLower(name)] = true
			pl.note("where_species", fmt.Sprintf("step %s is for species %s, which is not known: no zone has it", s.ID, ingest.Quoted(name)), pl.speciesHint(name))
		}
	}
}

// speciesHint says which grass was perhaps meant.
func (pl *planner) speciesHint(name string) string {
	if near := pl.grasses.Nearest(name); near != "" {
		return "did you mean " + near + "?"
	}
	return "give it a name of the species table"
}

func (pl *planner) noteGrass(g Ground) {
	taken := "steps for one season of grass leave it out"
	if s := pl.Program.Season; s != "" {
		taken = fmt.Sprintf("taken for %s-season grass, as the program says", s)
	}
	if g.Species == "" {
		pl.note("species_missing", fmt.Sprintf("zone %s names no species: %s", ingest.Quoted(g.Label()), taken), "give the zone a species, or the site one for all its turf")
		return
	}
	pl.note("species_unknown", fmt.Sprintf("zone %s: species %s is not known: %s", ingest.Quoted(g.Label()), ingest.Quoted(g.Species), taken), pl.speciesHint(g.Species))
}

func (pl *planner) note(code, text, hint string) {
	pl.plan.Problems = append(pl.plan.Problems, ingest.Problem{Severity: ingest.Warning, Code: code,
		Place: ingest.Place{Source: pl.Property.ID, Feature: -1}, Text: text, Hint: hint})
}

// noteExposure tells that steps go by an exposure which no zone states.
func (pl *planner) noteExposure() {
	if slices.ContainsFunc(pl.Grounds, func(g Ground) bool { return g.Apply && g.Exposure != "" }) {
		return
	}
	var names []string
	for i := range pl.Steps {
		if s := pl.Steps[i].Step; len(s.Where.Exposure) > 0 {
			names = append(names, s.Name())
		}
	}
	if len(names) > 0 {
		pl.note("exposure_missing", "no zone states its exposure, so what goes by it is left out: "+joined(names), "give the zones an exposure, or have it worked out: plan and map with --sun, zone --sun into a site file")
	}
}

// choose finds the zones of each step.
func (pl *planner) choose() {
	for i := range pl.Steps {
		s := &pl.Steps[i]
		var barred []Ground
		for _, g := range pl.Grounds {
			if !s.Step.Where.holds(g, pl.Program.Season, pl.grasses) {
				continue
			}
			switch {
			case g.Apply || !s.Step.Does.lays():
				s.Zones = append(s.Zones, ZonePlan{Ground: g})
			case g.named(s.Step.Where.Zones):
				barred = append(barred, g)
			}
		}
		if len(barred) > 0 {
			s.Reasons = append(s.Reasons, Verdict{Rule: "no_application", Severity: Block, Zones: barred, Source: rules["no_application"].source,
				Text: "nothing is applied on " + labels(barred), forGood: true})
		}
	}
}

func (s *StepPlan) grounds() []Ground {
	var list []Ground
	for _, z := range s.Zones {
		list = append(list, z.Ground)
	}
	return list
}

// find returns the plan of a step by its id.
func (pl *planner) find(id string) *StepPlan {
	for i := range pl.Steps {
		if pl.Steps[i].Step.ID == id {
			return &pl.Steps[i]
		}
	}
	return nil
}

// shared returns the zones that two steps have in common, in the order of the
// second.
func shared(a, b *StepPlan) []Ground {
	var list []Ground
	for _, z := range b.Zones {
		for _, other := range a.Zones {
			if other.ID == z.ID {
				list = append(list, z.Ground)
			}
		}
	}
	return list
}

// known reports whether the day of the plan is known.
func (pl *planner) known() bool { return !pl.Today.IsZero() }

// past reports whether a day lies before the day of the plan.
func (pl *planner) past(day time.Time) bool { return pl.known() && day.Before(pl.Today) }
