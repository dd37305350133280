package lanes

import (
	"example.org/turfplat/geo"
	"example.org/turfplat/zones"
	"example.org/turfplat/zones/material"
)

// A Load is what is in the hopper, for a step of a season's program.
type Load struct {
	Step     string
	Material string
	Rate     material.Rate // of the product, what goes on a place in one pass; zero = by label
	Passes   int           // how often the ground is gone over; 0 = once
}

// Several reports whether the ground is gone over more than once.
func (l *Load) Several() bool { return l != nil && l.Passes > 1 }

// passes is how often the ground is gone over.
func (l *Load) passes() int {
	if l.Several() {
		return l.Passes
	}
	return 1
}

// Known reports whether it is known how much goes on the ground.
func (l *Load) Known() bool { return l != nil && l.Rate.PerM2 > 0 }

// For returns what goes on ground, in square metres.
func (l *Load) For(ground float64) material.Amount { return l.Rate.Over(geo.Area(ground)) }

// loadUnits are those in which machines read what is in a hopper.
var loadUnits = map[material.Measure]map[zones.Units]material.Unit{
	material.Weight: {zones.US: mustUnit("lb"), zones.Metric: mustUnit("kg")},
	material.Bulk:   {zones.US: mustUnit("yd3"), zones.Metric: mustUnit("m3")},
	material.Liquid: {zones.US: mustUnit("gal"), zones.Metric: mustUnit("L")},
}

func mustUnit(text string) material.Unit {
	u, err := material.ParseUnit(text)
	if err != nil {
		panic("lanes: " + err.Error())
	}
	return u
}

// Unit is that in which amounts of the load are told.
func (l *Load) Unit(units zones.Units) material.Unit {
	if units != zones.Metric {
		units = zones.US
	}
	return loadUnits[l.Rate.By][units]
}

// On returns what goes on ground, in square metres, in the unit in which the
// load is told.
func (l *Load) On(units zones.Units, ground float64) float64 {
	number, err := l.For(ground).In(l.Unit(units))
	if err != nil {
		panic("lanes: " + err.Error()) // unit and rate are of one measure
	}
	return number
}

// A LoadSummary is what of a product the plan takes, in the form in which
// machines read it. Amounts are the rate times the ground, of one pass but for
// total_all_passes; what is loaded beyond that is not in them.
type LoadSummary struct {
	Step     string  `json:"step"`
	Material string  `json:"material"`
	Unit     string  `json:"unit,omitempty"`
	Passes   int     `json:"passes,omitempty"`      // how often the ground is gone over, if more than once
	Rate     float64 `json:"rate_per_m2,omitempty"` // of the unit
	Total    float64 `json:"total,omitempty"`       // on lanes and by hand
	ByHand   float64 `json:"by_hand,omitempty"`
	AllTotal float64 `json:"total_all_passes,omitempty"` // if there are several
}

func (l *Load) summary(units zones.Units, c Coverage) *LoadSummary {
	if l == nil {
		return nil
	}
	s := &LoadSummary{Step: l.Step, Material: l.Material}
	if l.Several() {
		s.Passes = l.Passes
	}
	if l.Known() {
		s.Unit, s.Rate = l.Unit(units).String(), l.On(units, 1)
		s.Total, s.ByHand = l.On(units, c.Ground+c.Hand), l.On(units, c.Hand)
		s.AllTotal = float64(s.Passes) * s.Total
	}
	return s
}
