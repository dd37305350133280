package sun

import "time"

// A Date is a day of the year. The 29th of February counts as the 28th.
type Date struct {
	Month time.Month
	Day   int
}

// A Season is a run of days of the year, over the new year if From is later
// than To, both included. Its months may weigh more or less.
type Season struct {
	From, To Date
	Weights  [12]float64 // of a day in January, ... December; all zero = all alike
}

// ParseSeason reads a season written as month and day, "04-15..10-15"; a
// single day is "06-21..06-21", and "11-01..02-28" runs over the new year.
func ParseSeason(s string) (Season, error) { return Season{}, nil }

// Cool returns the season of cool-season grasses at a latitude.
func Cool(lat float64) Season { return Season{} }

// Warm returns the season of warm-season grasses at a latitude.
func Warm(lat float64) Season { return Season{} }

// String returns the season as a person would write it: "15 April to 15
// October", "21 June".
func (s Season) String() string { return "" }
