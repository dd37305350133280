package render

import (
	"example.org/turfplat/geo"
	"example.org/turfplat/zones/material"
	"example.org/turfplat/zones/program"
)

// visitLoad is what one visit takes to the zones that no rule holds back.
func (s stepSheet) visitLoad() material.Amount {
	load := s.visitTotal()
	for _, g := range s.measured.Zones {
		if z := s.done[g.ID]; z.Draw != nil && z.HeldBack() {
			load.Size -= s.step.OfVisit(z.Draw.Amount).Size
		}
	}
	return load
}

func (s stepSheet) hasMix() bool { return s.step.Step.Carrier.PerM2 > 0 }

func (s stepSheet) mixText(m2 float64) string {
	return s.amounts.Mix(material.Volume(s.step.Step.Carrier.Over(geo.Area(m2)).Size)).String()
}

// visitTotal is what one visit takes; nothing of what goes by label.
func (s stepSheet) visitTotal() material.Amount {
	if len(s.step.Totals) == 0 {
		return material.Amount{}
	}
	return s.step.OfVisit(s.step.Totals[0].Amount)
}

func (s stepSheet) measuredText(a material.Amount) string {
	return s.step.Step.Measured(s.amounts, a).String()
}

// amountText is what one pass puts on a zone; "" of nothing, or by label.
func (s stepSheet) amountText(z program.ZonePlan) string {
	if z.Draw == nil {
		return ""
	}
	return s.measuredText(s.step.OfPass(z.Draw.Amount)) + s.aPass()
}

// aPass tells figures of one of several passes from those of a visit.
func (s stepSheet) aPass() string {
	if s.step.Step.Passes > 1 {
		return " a pass"
	}
	return ""
}

// amountInPasses is what all passes of a visit take together on the zones that no
// rule holds back; "" if there is one pass.
func (s stepSheet) amountInPasses() string {
	if s.step.Step.Passes < 2 || len(s.step.Totals) == 0 {
		return ""
	}
	return ", " + s.measuredText(s.visitLoad()) + s.step.Step.InPasses()
}

// reachText is the ground that a fill is for, which no spreader or sprayer keeps
// to better than a twentieth.
func (s stepSheet) reachText(m2 float64) string {
	return s.figures.Area(m2, m2*float64(material.StripTolerance.Share()))
}
