package turf

import (
	"cmp"
	"slices"
)

// A Fit says how a grass and the sun of a place go together.
type Fit int

// The fits, the worst first.
const (
	Unknown Fit = iota // the table has no hours for the grass
	Fails              // thins out: less than its least sun
	Bears              // lives, but not at its best
	Thrives            // has all the sun it wants
)

// String says what the grass has of sun.
func (f Fit) String() string {
	return [...]string{"sun needed not known", "too little sun", "short of sun", "enough sun"}[f]
}

// A SunNeed is the hours of direct sun a day, the mean over its season, by
// which a grass is judged: the least of the figures that are used.
type SunNeed struct {
	Grass        string   `json:"grass"`                  // as the table names it
	Enough       *float64 `json:"enough_hours,omitempty"` // from here on it thrives; nil = not known
	EnoughSource string   `json:"enough_source,omitempty"`
	Least        *float64 `json:"least_hours,omitempty"` // below it thins out; nil = not known
	LeastSource  string   `json:"least_source,omitempty"`
}

// SunNeed returns the sun that a grass needs; false if the table has no hours
// for it.
func (s Species) SunNeed() (SunNeed, bool) {
	need := SunNeed{Grass: s.Name}
	wants, known := s.Sun.Used()
	if known {
		need.Enough, need.EnoughSource = &wants.Least, Citation(wants.Source)
	}
	least, bounded := s.LeastSun.Used()
	if bounded {
		need.Least, need.LeastSource = &least.Least, Citation(least.Source)
	}
	return need, known || bounded
}

// Fit says how the grass gets on with so many hours.
func (n SunNeed) Fit(hours float64) Fit {
	switch {
	case n.Enough != nil && hours >= *n.Enough:
		return Thrives
	case n.Least != nil && hours >= *n.Least:
		return Bears
	case n.Enough != nil || n.Least != nil:
		return Fails
	}
	return Unknown
}

// Limits are the hours at which the fit changes, in descending order, one or
// two; none if the grass makes do with no sun at all.
func (n SunNeed) Limits() []float64 {
	var limits []float64
	for _, hours := range []*float64{n.Enough, n.Least} {
		if hours != nil && *hours > 0 && (len(limits) == 0 || *hours < limits[0]) {
			limits = append(limits, *hours)
		}
	}
	return limits
}

// Suits says how the grass gets on with so many hours of direct sun a day,
// the mean over its season, by the figures that are used.
func (s Species) Suits(hours float64) Fit {
	need, _ := s.SunNeed()
	return need.Fit(hours)
}

// Better returns the grasses of a season, or of any if it is "", that thrive
// with so many hours of direct sun a day; if none does, those that bear it.
// Those that bear most shade come first. None is better for less sun than any
// grass bears: such ground wants a bed.
func (t *Table) Better(hours float64, season Season) []Species {
	best := Bears
	var fit []Species
	for _, s := range t.species {
		if season != "" && s.Season != season {
			continue
		}
		switch f := s.Suits(hours); {
		case f > best:
			best, fit = f, []Species{s}
		case f == best:
			fit = append(fit, s)
		}
	}
	slices.SortStableFunc(fit, func(a, b Species) int { return cmp.Compare(a.rank(), b.rank()) })
	return fit
}

// rank is the shade rank, unknown ones last.
func (s Species) rank() int {
	if s.ShadeRank == 0 {
		return 1 << 30
	}
	return s.ShadeRank
}
