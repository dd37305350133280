package soil

import (
	"time"

	"example.org/turfplat/zones/material"
)

// A Rule opens on the day whose trailing mean first reaches a temperature, and
// closes on the day whose trailing mean first reaches another.
type Rule struct {
	Falling   bool // reached from above
	Opens     material.Temperature
	HasClose  bool
	Closes    material.Temperature // beyond Opens, in the direction of the rule
	TrailDays int                  // of the trailing mean, at least 1
}

// Begins is the day from which a rule looks, given the first day of a season
// that runs from midwinter to midwinter: that day, for soil that warms; half a
// year later, for soil that cools, lest cool days of spring pass for autumn.
func (r Rule) Begins(season time.Time) time.Time {
	if r.Falling {
		return season.AddDate(0, 6, 0)
	}
	return season
}

// A Trailing is the mean of days that end with one.
type Trailing struct {
	Day     time.Time
	Mean    material.Temperature
	Days    int      // known, of those that should be
	Reading DayValue // of the day itself: the one that decides
}

// A State is how a window stands on the last day looked at.
type State int

// The states. A window is Unknown if no trailing mean can be made.
const (
	Unknown State = iota
	Waiting
	Open
	Closed
)

// A Window is what a rule says of a series of days.
type Window struct {
	State   State
	Opened  Trailing // the mean that reached the rule's temperature; zero Day = none did
	Closed  Trailing // the mean that closed it: its day is the first one outside
	Now     Trailing // the last mean that can be made
	Trend   Trend
	Already bool      // the first mean that can be made was there already
	Since   time.Time // if not zero, it may have opened from this day on: the days up to Opened are not known
	Missing int       // days up to the last one looked at that have no mean after Now
	Reason  string    // why the log cannot say, or not for sure; may be empty
}

// A Trend is how the temperature moves.
type Trend struct {
	PerDay material.Temperature
	Known  bool
}
