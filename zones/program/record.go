package program

import (
	"time"

	"example.org/turfplat/zones/material"
)

// A SoilRecord is what a log of temperatures tells. Days are midnights UTC;
// nothing after the day named last is looked at.
type SoilRecord interface {
	// Soil tells when the soil first met a trigger on or after a day.
	Soil(t SoilTrigger, since, upTo time.Time) Opening
	// DegreeDays tells when the sum since a day was reached.
	DegreeDays(g DegreeDays, since, upTo time.Time) Opening
	// SoilNow is the soil's mean temperature over the days of a trigger that
	// end with a day, at its depth; false if the log does not tell.
	SoilNow(t SoilTrigger, day time.Time) (material.Temperature, bool)
	// AirMax is the day's highest temperature of the air; false if the log does
	// not tell.
	AirMax(day time.Time) (material.Temperature, bool)
}

// An Opening is when a trigger opened and closed a window, by a log.
type Opening struct {
	Opened, Closed time.Time // zero = not yet
	Decided        string    // the reading that opened it, in words
	Now            string    // how it stands and which way it goes, in words; "" = not known
	Unsure         string    // why the log cannot say; "" if it can
}
