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

func (f Fit) String() string { return [...]string{"unknown", "fails", "bears", "thrives"}[f] }

// Suits says how the grass gets on with so many hours of direct sun a day,
// the mean over its season, by the figures that are used.
func (s Species) Suits(hours float64) Fit {
	wants, known := s.Sun.Used()
	least, bounded := s.LeastSun.Used()
	switch {
	case known && hours >= wants.Least:
		return Thrives
	case bounded && hours >= least.Least:
		return Bears
	case known || bounded:
		return Fails
	}
	return Unknown
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
