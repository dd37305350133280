package render

import (
	"fmt"

	"example.org/turfplat/zones/material"
	"example.org/turfplat/zones/program"
)

// hopperTable says how often the hopper is filled and with how much: as it is
// walked where lanes are drawn, else that of the user's own spreader for all
// zones together that no rule holds back.
func (s stepSheet) hopperTable() Block {
	if s.lanes != nil {
		return s.laneFillings()
	}
	rate, ok := s.step.Step.PassRate()
	if !ok || s.step.Step.Does != program.Spread {
		return nil
	}
	total := s.visitLoad().Times(1 / float64(s.step.Step.Passes))
	for _, setting := range s.plan.Program.Settings(s.step.Step, s.settingShare()) {
		hopper := setting.Hopper
		if hopper.Size <= 0 || hopper.By != total.By {
			continue
		}
		t := Table{Size: stepSize, Columns: []Column{{Head: "Hopper" + s.aPass() + ", " + s.letters.of(setting.Spreader)}, {Head: "Fill with", Anchor: End}, {Head: s.figures.areaUnit(), Anchor: End}}}
		add := func(head string, a material.Amount) {
			t.Rows = append(t.Rows, []string{head, s.measuredText(a), s.reachText(a.Size / rate.PerM2)})
		}
		full := int(total.Size/hopper.Size + 1e-9)
		if full > 0 {
			add(fmt.Sprintf("%d full", full), hopper)
		}
		if last := total.Size - float64(full)*hopper.Size; last > 1e-9*total.Size {
			add(lastTank(full), material.Amount{By: total.By, Size: last})
		}
		return t
	}
	return nil
}

// tankTable says how tanks are mixed: how many, and the last one apart.
func (s stepSheet) tankTable() Block {
	if s.step.Step.Tank == 0 || !s.hasMix() {
		return nil
	}
	f, known := s.step.Fills()
	if !known {
		return s.mixTable()
	}
	t := Table{Size: stepSize, Columns: []Column{
		{Head: "Tanks" + s.aPass()}, {Head: "Fill to", Anchor: End}, {Head: "Product", Anchor: End}, {Head: s.figures.areaUnit(), Anchor: End},
	}}
	add := func(head string, fill material.Fill) {
		t.Rows = append(t.Rows, []string{head, s.amounts.Mix(fill.Mix).String(), s.measuredText(fill.Product), s.reachText(float64(fill.Area))})
	}
	if f.Count > 0 {
		add(fmt.Sprintf("%d full", f.Count), f.Full)
	}
	if f.Last.Area > 0 {
		add(lastTank(f.Count), f.Last)
	}
	return orNone(t)
}

// mixTable is the table of tanks of what goes in by its label.
func (s stepSheet) mixTable() Block {
	t := Table{Size: stepSize, Columns: []Column{{Head: "Tanks" + s.aPass()}, {Head: "Fill to", Anchor: End}, {Head: "Product", Anchor: End}}}
	tank, mix := s.step.Step.Tank, s.step.Mix()
	full := int(float64(mix/tank) + 1e-9)
	if full > 0 {
		t.Rows = append(t.Rows, []string{fmt.Sprintf("%d full", full), s.amounts.Mix(tank).String(), s.step.Step.PassByLabel()})
	}
	if last := mix - material.Volume(full)*tank; last > 1e-9*mix {
		t.Rows = append(t.Rows, []string{lastTank(full), s.amounts.Mix(last).String(), s.step.Step.PassByLabel()})
	}
	return orNone(t)
}

func lastTank(full int) string {
	if full == 0 {
		return "1 in part"
	}
	return "1 more"
}
