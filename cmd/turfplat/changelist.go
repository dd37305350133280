package main

import (
	"fmt"
	"strings"

	"example.org/turfplat/zones"
)

// extendedAccount is the machine form of what extending a site changed.
type extendedAccount struct {
	surveyAccount
	Revision int            `json:"revision"`
	Changes  []zones.Change `json:"changes"`
}

// tellChanges lists what a survey took and what it changed in a site. What was
// surveyed again with the same outcome is only counted.
func (s *surveyor) tellChanges(x zones.Extension, units zones.Units) error {
	account := s.account(x.New, units)
	if s.json {
		return writeJSON(s.out, extendedAccount{account, x.Revision, x.Changes}, " ")
	}
	for _, line := range account.Took {
		fmt.Fprintln(s.out, line)
	}
	f, t, same := figuresIn(units), newTable("lllrrrrl"), 0
	t.row("change", "kind", "object", "before", "now", "by", "+/-", "")
	for _, c := range x.Changes {
		if c.What == zones.Unchanged && !c.Moved() {
			same++
			continue
		}
		t.row(changeRow(f, c)...)
	}
	fmt.Fprintln(s.out)
	if len(t.rows) > 1 {
		if _, err := t.WriteTo(s.out); err != nil {
			return err
		}
	}
	_, err := fmt.Fprintln(s.out, changeSum(x, same))
	return err
}

// changeSum tells what all changes come to.
func changeSum(x zones.Extension, same int) string {
	sum := ""
	if same > 0 {
		sum = fmt.Sprintf("surveyed again and the same: %d\n", same)
	}
	if !x.Altered() {
		return sum + fmt.Sprintf("nothing changed: revision %d stays", x.Revision)
	}
	return sum + fmt.Sprintf("revision %d", x.Revision)
}

// changeRow tells what became of an object: its measure before and now, both
// as rounded as the surer of the two bears, by how much they differ, the 95 %
// interval of what was surveyed now, and a word on it.
func changeRow(f figures, c zones.Change) []string {
	surest := min(c.Before.CI95M2, c.After.CI95M2)
	if c.Before.AreaM2 == 0 {
		surest = c.After.CI95M2
	} else if c.After.AreaM2 == 0 {
		surest = c.Before.CI95M2
	}
	return []string{string(c.What), string(c.Kind), c.Label(), f.extent(c.Before, surest), f.extent(c.After, surest),
		growth(c.Before, c.After), f.intervalOf(c.After), changeRemark(c)}
}

// extent prints an area or the length of a line with its unit.
func (f figures) extent(e zones.Extent, ci95M2 float64) string {
	switch {
	case e.AreaM2 > 0:
		return f.Area(e.AreaM2, ci95M2) + " " + f.areaUnit()
	case e.LengthM > 0:
		return f.length(e.LengthM)
	}
	return ""
}

// intervalOf prints half of the 95 % interval of an area.
func (f figures) intervalOf(e zones.Extent) string {
	if e.AreaM2 == 0 {
		return ""
	}
	return f.PlusMinus(e.CI95M2)
}

// growth prints by how much an area, or the length of a line, grew.
func growth(before, after zones.Extent) string {
	switch {
	case before.AreaM2 > 0 && after.AreaM2 > 0:
		return fmt.Sprintf("%+.1f %%", 100*(after.AreaM2/before.AreaM2-1))
	case before.LengthM > 0 && after.LengthM > 0:
		return fmt.Sprintf("%+.1f %%", 100*(after.LengthM/before.LengthM-1))
	}
	return ""
}

func changeRemark(c zones.Change) string {
	switch {
	case c.What == zones.Unchanged:
		return "within 2 % and the errors of both: the stored edge stays"
	case len(c.Parents) > 0:
		return "out of " + strings.Join(c.Parents, ", ")
	}
	return c.Why
}
