package render

import (
	"fmt"

	"example.org/turfplat/zones"
	"example.org/turfplat/zones/material"
	"example.org/turfplat/zones/program"
)

// quantityTable says what goes on each zone, and how much is left after it.
func (s stepSheet) quantityTable() block {
	t := table{size: stepSize, columns: append([]column{
		{head: "Zone", width: letterColumn}, {wrap: true}, {head: s.figures.areaUnit(), anchor: End},
	}, s.quantityColumns()...)}
	left := s.visitLoad()
	for _, z := range s.measured.Zones {
		done, there := s.done[z.ID]
		if !there {
			continue
		}
		if done.Draw != nil && !done.HeldBack() {
			left.Size -= s.step.OfVisit(done.Draw.Amount).Size
		}
		words := s.zoneWords(z)
		if done.HeldBack() {
			words += ": " + notYet
		}
		t.rows = append(t.rows, append([]string{z.Letter, words, s.figures.Area(z.AreaM2, z.CI95M2)}, s.quantityCells(done, left)...))
	}
	if len(s.done) > 1 {
		t.totals = [][]string{s.totalRow("All", s.all)}
	}
	if s.heldLetters() != "" {
		t.totals = append(t.totals, s.totalRow("Now", s.now))
	}
	return t
}

// quantityColumns are those beyond zone and area: what goes down and what is
// left, or how high is cut.
func (s stepSheet) quantityColumns() []column {
	step := s.step.Step
	switch {
	case step.Does == program.Mow:
		return []column{{head: "Cut to", anchor: End}, {head: "When at", anchor: End}}
	case len(s.step.Totals) > 0:
		columns := []column{{head: s.amountHead(), anchor: End}}
		if s.hasMix() {
			columns = append(columns, column{head: s.mixHead(), anchor: End})
		}
		if s.tellsAllPasses() {
			columns = append(columns, column{head: fmt.Sprintf("%d passes", step.Passes), anchor: End})
		}
		if s.tellsLeft() {
			columns = append(columns, column{head: "Left", anchor: End})
		}
		return columns
	case step.ByLabel() && s.hasMix():
		return []column{{head: s.amountHead(), anchor: End}, {head: s.mixHead(), anchor: End}}
	case step.ByLabel():
		return []column{{head: s.amountHead(), anchor: End}}
	}
	return nil
}

// amountHead heads what goes on a zone each time it is gone over.
func (s stepSheet) amountHead() string {
	if s.step.Step.Passes > 1 {
		return "A pass"
	}
	return "Amount"
}

func (s stepSheet) mixHead() string {
	if s.step.Step.Passes > 1 {
		return "Mix a pass"
	}
	return "Mix"
}

// quantityCells are those of a zone; left is what remains of the visit's amount
// after it.
func (s stepSheet) quantityCells(z program.ZonePlan, left material.Amount) []string {
	step := s.step.Step
	switch {
	case step.Does == program.Mow:
		height, at, ok := step.CutAt(z.Ground)
		if !ok {
			return []string{"usual", ""}
		}
		return []string{s.amounts.Height(height), s.amounts.Height(at)}
	case z.Draw == nil && step.ByLabel() && s.hasMix():
		return []string{step.PassByLabel(), s.mixText(z.AreaM2)}
	case z.Draw == nil && step.ByLabel():
		return []string{step.PassByLabel()}
	case z.Draw == nil:
		return nil
	}
	cells := s.amountCells(s.step.OfVisit(z.Draw.Amount), z.AreaM2)
	if s.tellsLeft() {
		cells = append(cells, s.leftText(left))
	}
	return cells
}

// amountCells are what goes on ground, in square metres: in one pass first, with
// its mix, or then in all of them.
func (s stepSheet) amountCells(ofVisit material.Amount, groundM2 float64) []string {
	passes := s.step.Step.Passes
	cells := []string{s.measuredText(ofVisit.Times(1 / float64(passes)))}
	if s.hasMix() {
		cells = append(cells, s.mixText(groundM2))
	}
	if s.tellsAllPasses() {
		cells = append(cells, s.measuredText(ofVisit))
	}
	return cells
}

// tellsAllPasses reports whether the amounts of all passes are told zone by zone;
// of a mix those of one are, with its water.
func (s stepSheet) tellsAllPasses() bool { return s.step.Step.Passes > 1 && !s.hasMix() }

// tellsLeft reports whether what is left is told zone by zone. It is not where
// lanes run through several zones, tanks are mixed, or the ground is gone over
// more than once.
func (s stepSheet) tellsLeft() bool {
	return len(s.done) > 1 && s.lanes == nil && !s.hasMix() && s.step.Step.Passes == 1
}

// leftText writes what is left; what rounding leaves of nothing is nothing.
func (s stepSheet) leftText(left material.Amount) string {
	if left.Size <= 1e-9*s.visitTotal().Size {
		return "0"
	}
	return s.amounts.Amount(left).String()
}

// notYet stands on zones that a rule holds back.
const notYet = "not yet"

// zoneWords names a zone with what makes work on it different.
func (s stepSheet) zoneWords(z zones.ZoneMeasure) string {
	words := shortened(s.letters.of(z.Name), Regular, stepSize, twoLines)
	if z.SlopePercent > 0 {
		words += fmt.Sprintf(", slope %.0f\u00a0%%", z.SlopePercent)
	}
	return words
}
