package render

import (
	"example.org/turfplat/geo"
	"example.org/turfplat/zones"
	"example.org/turfplat/zones/material"
	"example.org/turfplat/zones/program"
)

// A stepTotal is what zones on which the step is done come to together.
type stepTotal struct {
	ground zones.AreaMeasure // with the error of the whole, which is not the sum of theirs
	areaM2 float64           // sum of their areas, for which material is reckoned
	amount material.Amount   // for one visit
}

// sumUp adds up the zones that count.
func (s stepSheet) sumUp(counts func(program.ZonePlan) bool) (stepTotal, error) {
	var worked []geo.Region
	t := stepTotal{amount: material.Amount{By: s.visitTotal().By}}
	for i, z := range s.measured.Zones {
		done, there := s.done[z.ID]
		if !there || !counts(done) {
			continue
		}
		worked = append(worked, s.plat.Zones[i].Region)
		t.areaM2 += z.AreaM2
		if done.Draw != nil {
			t.amount.Size += s.step.OfVisit(done.Draw.Amount).Size
		}
	}
	var err error
	t.ground, err = measureAll(s.plat, worked)
	return t, err
}

func (s stepSheet) totalRow(head string, t stepTotal) []string {
	return append([]string{"", head, s.figures.Area(t.ground.AreaM2, t.ground.CI95M2)}, s.totalCells(t)...)
}

func (s stepSheet) totalCells(t stepTotal) []string {
	switch {
	case len(s.step.Totals) == 0 && s.step.Step.ByLabel() && s.hasMix():
		return []string{"", s.mixText(t.areaM2)}
	case len(s.step.Totals) == 0:
		return nil
	}
	return s.amountCells(t.amount, t.areaM2)
}
