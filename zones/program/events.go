package program

import (
	"fmt"
	"strconv"
	"strings"

	"example.org/turfplat/zones/calendar"
	"example.org/turfplat/zones/material"
)

// CalendarOf is the steps of plans as days in one calendar, that of each site
// named where there are several.
func CalendarOf(plans []*Plan, product string) calendar.Calendar {
	if len(plans) == 0 {
		return calendar.Calendar{Product: product}
	}
	all := plans[0].calendar(product)
	if len(plans) == 1 {
		return all
	}
	all.Name, all.Events = plans[0].Program.Name, nil
	for _, p := range plans {
		for _, e := range p.calendar(product).Events {
			e.Summary += ", " + p.Property.Name
			all.Events = append(all.Events, e)
		}
	}
	return all
}

// calendar is the plan's steps as days in a calendar, each from its first day to
// its last; those that are skipped, or have no dates, are left out. The stamp is
// the day of the plan, else the first of the season, so that a plan gives the
// same calendar on any day.
func (p *Plan) calendar(product string) calendar.Calendar {
	c := calendar.Calendar{Product: product, Name: p.Property.Name + ", " + p.Program.Name, Stamp: p.Today}
	if c.Stamp.IsZero() {
		c.Stamp = date(p.Year, 1, 1)
	}
	for i := range p.Steps {
		s := &p.Steps[i]
		if s.Status == Skipped || s.From.IsZero() || s.From.After(s.To) {
			continue
		}
		c.Events = append(c.Events, calendar.Event{
			UID:   calendar.UID(p.Property.ID, p.Program.Name, strconv.Itoa(s.season.year), s.Step.ID),
			First: s.From, Last: s.To,
			Summary:     fmt.Sprintf("%s (%s)", s.Step.Name(), s.Status),
			Description: p.eventText(s),
			Location:    p.Property.Name,
			Categories:  []string{string(s.Step.Does)},
		})
	}
	return c
}

// eventText tells in a few lines what a crew needs.
func (p *Plan) eventText(s *StepPlan) string {
	figures := material.Figures{Units: p.Property.Units}
	lines := []string{fmt.Sprintf("%s %s", s.Status, s.Why)}
	if s.Step.OnlyIf != "" {
		lines = append(lines, "only if "+s.Step.OnlyIf)
	}
	for _, z := range s.Zones {
		line := z.Label()
		switch {
		case z.Draw != nil:
			line += ": " + figures.Amount(s.OfVisit(z.Draw.Amount)).String() + " " + z.Draw.Product + s.Step.InPasses()
		case s.Step.ByLabel():
			line += ": " + s.Step.Product.Name + " by label" + s.Step.InPasses()
		}
		lines = append(lines, line)
	}
	for _, v := range s.Reasons {
		if v.Severity != Note {
			lines = append(lines, string(v.Severity)+": "+v.WithZones(s))
		}
	}
	for _, c := range s.Step.Minding() {
		lines = append(lines, "mind: "+c)
	}
	return strings.Join(lines, "\n")
}
