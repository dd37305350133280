package soil

import (
	"time"

	"example.org/turfplat/zones/material"
)

// A DegreeDay is the heat gathered up to a day and with it.
type DegreeDay struct {
	Day time.Time
	Sum float64 // degrees Celsius times days
}

// DegreeDays is the heat gathered day by day from a day on, as far as the days
// are known.
type DegreeDays struct {
	Days   []DegreeDay
	Filled int    // days of these that were not known and were filled in between their neighbours
	Reason string // why it ends before it was asked to; may be empty
}

// HeatOfDay is what a day adds to a sum: the mean of the day's highest and
// lowest temperature less the base, never less than nothing.
func HeatOfDay(highest, lowest, base material.Temperature) float64 {
	return max(0, float64((highest+lowest)/2-base))
}

// Reaches is the first day on which the sum is at least as much, in degrees
// Celsius times days.
func (d DegreeDays) Reaches(sum float64) (DegreeDay, bool) {
	for _, day := range d.Days {
		if day.Sum >= sum {
			return day, true
		}
	}
	return DegreeDay{}, false
}
