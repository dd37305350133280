package program

import (
	"strconv"

	"example.org/turfplat/zones/material"
)

// TaskColumns are the columns of the task list, in order.
var TaskColumns = []string{
	"site", "step", "title", "does", "status", "why", "from", "to", "zone", "zone_name", "area_m2",
	"material", "rate", "amount", "unit", "visits", "reasons", "passes", "pass_rate",
}

// Tasks are the rows of the task list: a row a step and zone, or one for a step
// without zones. Amounts are those of all visits and passes, rate is that of a
// visit, pass_rate that of one pass; numbers in the fewest digits that give them
// back.
func (p *Plan) Tasks() [][]string {
	var rows [][]string
	for i := range p.Steps {
		s := &p.Steps[i]
		head := []string{p.Property.ID, s.Step.ID, s.Step.Name(), string(s.Step.Does), string(s.Status), s.Why, isoDay(s.From), isoDay(s.To)}
		if len(s.Zones) == 0 {
			rows = append(rows, append(head, "", "", "", "", "", "", "", "", p.reasonsOn(s, ""), "", ""))
		}
		for _, z := range s.Zones {
			rows = append(rows, append(head[:len(head):len(head)], p.zoneCells(s, z)...))
		}
	}
	return rows
}

func (p *Plan) zoneCells(s *StepPlan, z ZonePlan) []string {
	cells := []string{z.ID, z.Name, plain(z.AreaM2), s.Step.materialName(), "", "", "", strconv.Itoa(s.visits()), p.reasonsOn(s, z.ID), strconv.Itoa(s.Step.Passes), ""}
	if s.Step.ByLabel() {
		cells[4], cells[10] = "by label", s.Step.PassByLabel()
	}
	if z.Draw != nil {
		figures := material.Figures{Units: p.Property.Units}
		visit, _ := s.Step.VisitRate() // there is one, or nothing would be drawn
		pass, _ := s.Step.PassRate()
		amount, unit := amountIn(z.Draw.Amount, p.Property.Units)
		cells[4], cells[5], cells[6], cells[10] = s.Step.RateText(figures, visit), plain(amount), unit.String(), s.Step.RateText(figures, pass)
	}
	return cells
}

// reasonsOn are the warnings and blocks that bear on a zone.
func (p *Plan) reasonsOn(s *StepPlan, zone string) string {
	var texts []string
	for _, v := range s.Reasons {
		if v.Severity != Note && (zone == "" || among(v.Zones, zone)) {
			texts = append(texts, string(v.Severity)+": "+v.Text)
		}
	}
	return joinNonempty("; ", texts...)
}

func plain(v float64) string { return strconv.FormatFloat(v, 'g', -1, 64) }
