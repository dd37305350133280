package program

import (
	"slices"
	"time"

	"example.org/turfplat/geo/ingest"
	"example.org/turfplat/zones"
	"example.org/turfplat/zones/material"
	"example.org/turfplat/zones/soil"
	"example.org/turfplat/zones/turf"
)

// A Property is what a program is laid on.
type Property struct {
	ID, Name string
	Latitude float64 // degrees, north positive
	Units    zones.Units
	Region   string // whose law holds; "" = not known
	Zones    []zones.ZoneMeasure
}

// An Occasion is when a plan is made, and what is known then.
type Occasion struct {
	Year    int           // in which the season begins; 0 = that of Today
	Today   time.Time     // midnight UTC; zero = not known, so that nothing is ready yet
	Soil    *soil.Station // nil = there is no log
	Grasses *turf.Table   // nil = the built-in table
}

// A Plan is a program laid on a property.
type Plan struct {
	Property Property
	Program  *Program
	Year     int
	Today    time.Time
	Grounds  []Ground
	Steps    []StepPlan // in the program's order

	Purchases []material.Purchase // for all that is still to come
	Visit     []material.Draw     // what the steps that are ready take on one visit, on the zones that can be worked
	Products  []material.Product
	Feeds     []Feed
	Problems  []ingest.Problem // of the program on this property; none of them refuses it
}

// Status is how a step stands.
type Status string

// The statuses.
const (
	Ready   Status = "ready"
	Waiting Status = "waiting"
	Blocked Status = "blocked"
	Skipped Status = "skipped"
)

// A StepPlan is a step on the zones where it is done.
type StepPlan struct {
	Step    *Step
	Status  Status
	Why     string // the status in words
	From    time.Time
	To      time.Time // the last day; zero if the step has no dates
	Dates   string    // what the dates rest on
	Zones   []ZonePlan
	Totals  []Total
	Reasons []Verdict

	place  int    // in the program
	season season // that its dates lie in
	timing timing
}

// A ZonePlan is a step on one zone.
type ZonePlan struct {
	Ground
	Draw *material.Draw // what the whole season's visits take; nil if nothing is put down, or by label

	from   time.Time // the first day that no rule holds it back
	held   bool      // until a person sees to it
	closed bool      // for this season
	spared bool      // a rule holds it back while the step is ready
}

// A Total is what a step takes of a material on all its zones.
type Total struct {
	Material string
	Amount   material.Amount
}

// A Refusal is an error of what in a program cannot be as the occasion of a plan is.
type Refusal struct{ Problems []ingest.Problem }

func (r *Refusal) Error() string { return r.Problems[0].String() }

// Plan lays the program on a property. It returns a *Refusal for what was done after
// the day of the plan.
func (p *Program) Plan(on Property, at Occasion) (*Plan, error) {
	if slips := p.doneAfter(at.Today); len(slips) > 0 {
		return nil, &Refusal{slips}
	}
	pl := newPlanner(p, on, at)
	pl.choose()
	pl.time()
	pl.judge()
	pl.gatherReasons()
	pl.tellSources()
	pl.settle()
	return pl.plan, pl.load()
}

// HeldBack reports whether a rule holds a zone back while the step may be done
// on others.
func (z ZonePlan) HeldBack() bool { return z.spared }

// StepsBefore counts the steps whose dates end before a day, and all that have
// dates in the season.
func (p *Plan) StepsBefore(day time.Time) (past, all int) {
	for i := range p.Steps {
		s := &p.Steps[i]
		if s.To.IsZero() {
			continue
		}
		all++
		if s.To.Before(day) {
			past++
		}
	}
	return past, all
}

// Now are the zones on which a step can be worked: of one that is ready those that
// no rule holds back on the day of the plan, of others those that are not closed.
func (p *Plan) Now(s *StepPlan) []ZonePlan {
	var list []ZonePlan
	for _, z := range s.Zones {
		if !z.closed && !z.spared {
			list = append(list, z)
		}
	}
	return list
}

// Open are the zones that are not closed for the season, or all if all of them are.
func (s *StepPlan) Open() []ZonePlan {
	open := slices.DeleteFunc(slices.Clone(s.Zones), ZonePlan.Closed)
	if len(open) == 0 {
		return s.Zones
	}
	return open
}

// Closed reports whether no day of the season is left for the zone.
func (z ZonePlan) Closed() bool { return z.closed }

// Treated reports whether something may be put down on the zone, and a day of
// the season is left for it.
func (z ZonePlan) Treated() bool { return z.Apply && !z.closed }
