package turf

import (
	"errors"
	"fmt"
	"io"
	"maps"
	"slices"
	"strconv"
	"strings"

	"example.org/turfplat/zones/tables"
)

// Read reads a user's table and returns it merged over the built-in one: CSV
// with a column name and any of also, season, shade_rank and those of figures.
// A cell of figures holds ranges with their sources, parted by semicolons:
// "6-8 Cornell; <=9 own trial". A row for a known grass, whichever of its
// names it goes by, replaces the figures it gives and keeps the others; a new
// grass needs its season. All bad cells are told, each with its line.
func Read(r io.Reader) (*Table, error) { return read(r, Default()) }

func read(r io.Reader, base *Table) (*Table, error) {
	t := &Table{species: base.Species(), at: maps.Clone(base.at)}
	var header []string
	err := tables.Read(r, "grasses", func(columns []string) error {
		header = columns
		return checkHeader(columns)
	}, func(record []string) []error { return t.merge(header, record) })
	if err != nil {
		return nil, err
	}
	return t, nil
}

// wordColumns are those that do not hold figures.
var wordColumns = []string{"name", "also", "season", "shade_rank"}

func checkHeader(header []string) error {
	var known []string
	known = append(known, wordColumns...)
	for _, c := range columns {
		known = append(known, c.name)
	}
	if !slices.Contains(header, "name") {
		return errors.New("there is no column name")
	}
	for i, name := range header {
		if !slices.Contains(known, name) {
			return fmt.Errorf("column %q is not known; there are %s", name, strings.Join(known, ", "))
		}
		if slices.Contains(header[:i], name) {
			return fmt.Errorf("column %q stands twice", name)
		}
	}
	return nil
}

// merge takes a row into the table, and returns all that is wrong with it.
func (t *Table) merge(header, record []string) []error {
	cells := make(map[string]string)
	for i, name := range header {
		cells[name] = strings.TrimSpace(record[i])
	}
	if key(cells["name"]) == "" {
		return []error{errors.New("the grass has no name")}
	}
	at := t.index(cells["name"])
	s := Species{Name: cells["name"]}
	if at >= 0 {
		s = t.species[at]
	}
	bad := append(s.takeWords(cells), s.takeFigures(cells)...)
	bad = append(bad, s.checkSun()...)
	bad = append(bad, t.checkNames(s, at)...)
	if len(bad) > 0 {
		return bad
	}
	t.put(s, at)
	return nil
}

// put gives a grass its place, or a new one if it has none.
func (t *Table) put(s Species, at int) {
	if at < 0 {
		at = len(t.species)
		t.species = append(t.species, s)
	}
	t.species[at] = s
	for _, name := range s.names() {
		t.at[key(name)] = at
	}
}

func (s *Species) takeWords(cells map[string]string) (bad []error) {
	if also := cells["also"]; also != "" {
		s.Also = slices.Clone(s.Also) // the old slice is another table's
		for name := range strings.SplitSeq(also, "|") {
			if key(name) != "" {
				s.Also = append(s.Also, strings.TrimSpace(name))
			}
		}
	}
	if season := Season(cells["season"]); season != "" {
		s.Season = season
	}
	if s.Season != Cool && s.Season != Warm {
		bad = append(bad, fmt.Errorf("%s: season %q is neither cool nor warm", s.Name, s.Season))
	}
	if rank := cells["shade_rank"]; rank != "" {
		n, err := strconv.Atoi(rank)
		if err != nil || n < 1 || n > 99 {
			bad = append(bad, fmt.Errorf("%s: shade_rank %q is not a whole number from 1, the most shade, to 99", s.Name, rank))
		}
		s.ShadeRank = n
	}
	return bad
}

// takeFigures takes the figures of a row in place of those there were.
func (s *Species) takeFigures(cells map[string]string) (bad []error) {
	fresh := make(map[*Figures]bool)
	for _, c := range columns {
		figures, err := parseFigures(cells[c.name], c.factor, c.most)
		if err != nil {
			bad = append(bad, fmt.Errorf("%s: %s %w", s.Name, c.name, err))
		}
		if len(figures) == 0 {
			continue
		}
		have := c.figures(s)
		if !fresh[have] {
			*have, fresh[have] = nil, true
		}
		*have = append(*have, figures...)
	}
	return bad
}

// checkSun refuses a grass that thins out with sun enough.
func (s Species) checkSun() (bad []error) {
	if n, _ := s.SunNeed(); n.Enough != nil && n.Least != nil && *n.Least > *n.Enough {
		bad = append(bad, fmt.Errorf("%s: least_sun_h %g is above sun_h %g: give both", s.Name, *n.Least, *n.Enough))
	}
	return bad
}

// checkNames refuses names that another grass goes by.
func (t *Table) checkNames(s Species, at int) (bad []error) {
	for _, name := range s.names() {
		if other := t.index(name); other >= 0 && other != at {
			bad = append(bad, fmt.Errorf("%s: %q is a name of %s already", s.Name, name, t.species[other].Name))
		}
	}
	return bad
}
