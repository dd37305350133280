package soil

import (
	"fmt"
	"time"

	"example.org/turfplat/zones/material"
)

// A Rule opens on the day whose trailing mean first reaches a temperature, and
// closes on the day whose trailing mean first reaches another.
type Rule struct {
	Falling   bool // both are reached from above
	Opens     material.Temperature
	HasClose  bool
	Closes    material.Temperature // beyond Opens, the way that the rule looks
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
	State       State
	Opened      Trailing  // the mean that reached the rule's temperature; zero = none did
	Closed      Trailing  // the mean that closed it, its day being the first outside; zero = none did
	Now         Trailing  // the last mean that can be made
	Trend       Trend     // of the days up to Now
	Already     bool      // the first mean that can be made had reached the temperature
	MaybeSince  time.Time // the first of the days before Opened without a mean, on which it may have opened; zero = none
	UnknownDays int       // after Now, up to the last one looked at
	Doubt       string    // why the log cannot say, or not for sure; "" if it can
}

// Window looks through the days of a series from one on, up to and with
// another. Days before them count in trailing means and in nothing else.
func (r Rule) Window(s Series, from, upTo time.Time) Window {
	var w Window
	expected := from
	for _, t := range trailings(s.Days, r.TrailDays) {
		if t.Day.Before(from) || t.Day.After(upTo) {
			continue
		}
		if w.Opened.Day.IsZero() && r.reaches(t.Mean, r.Opens) {
			w.Opened, w.Already = t, w.Now.Day.IsZero()
			if expected.Before(t.Day) {
				w.MaybeSince = expected
			}
		}
		if r.HasClose && w.State != Closed && !w.Opened.Day.IsZero() && r.reaches(t.Mean, r.Closes) {
			w.Closed = t
		}
		w.Now, expected = t, t.Day.AddDate(0, 0, 1)
		w.State = w.state()
	}
	if w.State != Unknown {
		w.Trend = trend(s.Days, w.Now.Day)
		w.UnknownDays = daysBetween(w.Now.Day, upTo)
	}
	w.Doubt = r.doubt(w, from, upTo)
	return w
}

// state is that of a window in which a mean was made.
func (w Window) state() State {
	switch {
	case w.Opened.Day.IsZero():
		return Waiting
	case w.Closed.Day.IsZero():
		return Open
	}
	return Closed
}

// hair is what rounding may take from a mean, in degrees.
const hair = 1e-9

// reaches reports whether a temperature is beyond another, the way that the
// rule looks.
func (r Rule) reaches(t, wanted material.Temperature) bool {
	if r.Falling {
		return t <= wanted+hair
	}
	return t >= wanted-hair
}

// doubt says why the log does not tell how the window stands; "" if it does.
func (r Rule) doubt(w Window, from, upTo time.Time) string {
	switch {
	case w.State == Unknown:
		return fmt.Sprintf("no mean of %d days can be made from %s to %s", r.TrailDays, isoDay(from), isoDay(upTo))
	case w.State != Closed && w.UnknownDays > 0:
		return fmt.Sprintf("no mean of %d days can be made after %s", r.TrailDays, isoDay(w.Now.Day))
	case !w.MaybeSince.IsZero():
		return fmt.Sprintf("no mean of %d days can be made from %s until it opened", r.TrailDays, isoDay(w.MaybeSince))
	}
	return ""
}
