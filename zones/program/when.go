package program

import (
	"time"

	"example.org/turfplat/zones/material"
)

// When is what a step waits for. All that is stated must hold; nothing stated
// is any time after the step before it.
type When struct {
	Window     *Window
	Soil       *SoilTrigger
	DegreeDays *DegreeDays
	After      *After
	Before     string // a step that this one must come before
	Mowings    int    // since the step of After, else since mowing began
}

// SoilTrigger opens when the mean of the trailing days reaches a temperature.
type SoilTrigger struct {
	AtLeast *material.Quantity // it warms to this; nil = it does not open so
	AtMost  *material.Quantity // it cools to this
	Closes  *material.Quantity // the temperature that ends it; nil = none
	Depth   material.Quantity  // a length
	Days    int
	Lowest  bool // the daily minimum counts, not the mean
}

// The trigger of a soil rule that does not say: the mean of five days at 2 in
// (common practice, no source).
const defaultTrailing = 5

var defaultDepth = must(material.Parse("2 in"))

func (t SoilTrigger) closesBeforeItOpens() bool {
	switch {
	case t.Closes == nil:
		return false
	case t.AtLeast != nil:
		return t.Closes.SI() <= t.AtLeast.SI()
	}
	return t.Closes.SI() >= t.AtMost.SI()
}

// DegreeDays opens when the degree days since a day reach a sum.
type DegreeDays struct {
	Base    material.Quantity // a temperature; the sums are in its unit
	From    MonthDay
	AtLeast float64
	Closes  float64 // 0 = none
}

// After follows another step by so many days.
type After struct {
	Step        string
	Least, Most int
}

// MonthDay is a day of any year, as it stands in a program written for the
// north.
type MonthDay struct {
	Month time.Month
	Day   int
}

// Window is from a day to a day, both of them inside; it may run over the end
// of the year.
type Window struct{ From, To MonthDay }
