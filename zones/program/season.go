package program

import "time"

// FirstYear and LastYear bound the years that programs are laid in; what lies
// beyond is a slip.
const (
	FirstYear = 1900
	LastYear  = 2199
)

// A season is the year in which a program runs its course: the calendar year
// in the north, July to June in the south.
type season struct {
	year  int
	south bool
}

// seasonOf is the season that a day lies in.
func seasonOf(day time.Time, h Hemisphere) season {
	s := season{day.Year(), h == South}
	if s.south && day.Month() < time.July {
		s.year--
	}
	return s
}

func (s season) previous() season { return season{s.year - 1, s.south} }

func (s season) next() season { return season{s.year + 1, s.south} }

// counts reports whether what was done on a day was done in the season.
func (s season) counts(day time.Time, w *Window) bool {
	return !day.Before(s.countsFrom(w)) && day.Before(s.next().countsFrom(w))
}

// countsFrom is the day from which what is done counts for the season: its first.
// A window over the new year belongs to the season that it began in, so there it is
// halfway from the end of the one before to the next.
func (s season) countsFrom(w *Window) time.Time {
	if w == nil {
		return s.first()
	}
	before := s.previous().span(*w)
	if before.to.Before(s.first()) {
		return s.first()
	}
	return before.to.Add(s.span(*w).from.Sub(before.to) / 2).Truncate(24 * time.Hour)
}

const halfYear = 6 // months between the seasons of the hemispheres

func (s season) first() time.Time {
	if s.south {
		return date(s.year, time.July, 1)
	}
	return date(s.year, time.January, 1)
}

func (s season) last() time.Time { return s.first().AddDate(1, 0, -1) }

// on turns a day written for the north into one of the season. A month that
// has no such day gives its last one.
func (s season) on(d MonthDay) time.Time {
	year, month := s.year, d.Month
	if s.south {
		if month += halfYear; month > time.December {
			month -= 12
			year++
		}
	}
	return date(year, month, min(d.Day, daysIn(year, month)))
}

// span lays a window into the season.
func (s season) span(w Window) span {
	from, to := s.on(w.From), s.on(w.To)
	if to.Before(from) {
		to = s.next().on(w.To)
	}
	return span{from, to}
}

func date(year int, month time.Month, day int) time.Time {
	return time.Date(year, month, day, 0, 0, 0, 0, time.UTC)
}

func daysIn(year int, month time.Month) int { return date(year, month+1, 0).Day() }

// A span is days in a row, the first and the last of them inside.
type span struct{ from, to time.Time }

func (s span) empty() bool { return s.to.Before(s.from) }

func (s span) holds(day time.Time) bool { return !day.Before(s.from) && !day.After(s.to) }

func (s span) meets(t span) bool { return !s.from.After(t.to) && !t.from.After(s.to) }

// within reports whether days of the two may lie less than so many days apart.
func (s span) within(t span, days int) bool {
	return s.from.Before(t.to.AddDate(0, 0, days)) && t.from.Before(s.to.AddDate(0, 0, days))
}

// days turns a time into whole days, begun ones counted.
func days(d time.Duration) int {
	const day = 24 * time.Hour
	return int((d + day - 1) / day)
}

func later(a, b time.Time) time.Time {
	if a.After(b) {
		return a
	}
	return b
}

func earlier(a, b time.Time) time.Time {
	if b.Before(a) {
		return b
	}
	return a
}

// isoDay writes a day as machines read it; none is "".
func isoDay(t time.Time) string {
	if t.IsZero() {
		return ""
	}
	return t.Format(time.DateOnly)
}
