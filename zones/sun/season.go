package sun

import (
	"fmt"
	"slices"
	"strings"
	"time"
)

// A Date is a day of the year. The 29th of February counts as the 28th.
type Date struct {
	Month time.Month
	Day   int
}

// String returns the date as a person would write it, "15 April".
func (d Date) String() string { return fmt.Sprintf("%d %s", d.Day, d.Month) }

// commonYear is the year in which the sun's way is followed: of the four
// between leap days the one whose dates drift least from the average.
const commonYear = 2026

// number returns the days since the first of January.
func (d Date) number() int {
	return time.Date(commonYear, d.Month, d.Day, 0, 0, 0, 0, time.UTC).YearDay() - 1
}

func dateOf(number int) Date {
	t := time.Date(commonYear, time.January, 1+number, 0, 0, 0, 0, time.UTC)
	return Date{t.Month(), t.Day()}
}

// acrossEquator returns the date six months on.
func (d Date) acrossEquator() Date {
	month := (d.Month+5)%12 + 1
	return Date{month, min(d.Day, daysIn(month))}
}

func daysIn(m time.Month) int { return time.Date(commonYear, m+1, 0, 0, 0, 0, 0, time.UTC).Day() }

// A Season is a run of days of the year, over the new year if From is later
// than To, both included. Its months may weigh more or less.
type Season struct {
	From, To Date
	Weights  [12]float64 // of a day in January, ... December; all zero = all alike
}

// ParseSeason reads a season written as month and day, "04-15..10-15"; a
// single day is "06-21..06-21", and "11-01..02-28" runs over the new year.
func ParseSeason(s string) (Season, error) {
	from, to, ok := strings.Cut(s, "..")
	if !ok {
		return Season{}, fmt.Errorf("%q is no season: write FROM..TO as month-day, such as 04-15..10-15", s)
	}
	var season Season
	var err error
	if season.From, err = parseDate(from); err != nil {
		return Season{}, err
	}
	if season.To, err = parseDate(to); err != nil {
		return Season{}, err
	}
	return season, nil
}

func parseDate(s string) (Date, error) {
	t, err := time.Parse("2006-01-02", "2000-"+s) // a leap year: knows the 29th of February
	if err != nil {
		return Date{}, fmt.Errorf("%q is no day of the year: write month-day, such as 04-15", s)
	}
	return Date{t.Month(), min(t.Day(), daysIn(t.Month()))}, nil
}

// acrossEquator returns the season six months on.
func (s Season) acrossEquator() Season {
	shifted := Season{From: s.From.acrossEquator(), To: s.To.acrossEquator()}
	for m, w := range s.Weights {
		shifted.Weights[(m+6)%12] = w
	}
	return shifted
}

// String returns the season as a person would write it: "15 April to 15
// October", "21 June".
func (s Season) String() string {
	if s.From == s.To {
		return s.From.String()
	}
	text := s.From.String() + " to " + s.To.String()
	days := s.days()
	if slices.ContainsFunc(days, func(d seasonDay) bool { return d.share != days[0].share }) {
		return text + ", weighted by month"
	}
	if idle := s.idleMonths(); len(idle) > 0 {
		text += " without " + strings.Join(idle, ", ")
	}
	return text
}

// idleMonths returns the months within the season that do not count.
func (s Season) idleMonths() []string {
	var idle []string
	for _, d := range s.dates() {
		name := d.Month.String()
		if s.weight(d.Month) <= 0 && !slices.Contains(idle, name) {
			idle = append(idle, name)
		}
	}
	return idle
}

// dates returns the days of a season in order.
func (s Season) dates() []Date {
	from, to := s.From.number(), s.To.number()
	if to < from {
		to += 365
	}
	dates := make([]Date, 0, to-from+1)
	for n := from; n <= to; n++ {
		dates = append(dates, dateOf(n%365))
	}
	return dates
}

// A seasonDay is a day of a season and its share of the mean.
type seasonDay struct {
	Date
	share float64 // all days of the season add up to 1
}

// days returns the days of a season that count, in order.
func (s Season) days() []seasonDay {
	var days []seasonDay
	sum := 0.0
	for _, d := range s.dates() {
		if w := s.weight(d.Month); w > 0 {
			days = append(days, seasonDay{d, w})
			sum += w
		}
	}
	for i := range days {
		days[i].share /= sum
	}
	return days
}

func (s Season) weight(m time.Month) float64 {
	if s.Weights == ([12]float64{}) {
		return 1
	}
	return s.Weights[m-1]
}
