package render

import (
	"fmt"

	"example.org/turfplat/zones/material"
	"example.org/turfplat/zones/program"
)

// hopperTable says how often the hopper is filled and with how much: as it is
// walked where lanes are drawn, else that of the user's own spreader for all
// zones together that no rule holds back.
func (s stepSheet) hopperTable() block {
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
		t := table{size: stepSize, columns: []column{{head: "Hopper" + s.aPass() + ", " + s.letters.of(setting.Spreader)}, {head: "Fill with", anchor: End}, {head: s.figures.areaUnit(), anchor: End}}}
		add := func(head string, a material.Amount) {
			t.rows = append(t.rows, []string{head, s.measuredText(a), s.reachText(a.Size / rate.PerM2)})
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
func (s stepSheet) tankTable() block {
	if s.step.Step.Tank == 0 || !s.hasMix() {
		return nil
	}
	f, known := s.step.Fills()
	if !known {
		return s.mixTable()
	}
	t := table{size: stepSize, columns: []column{
		{head: "Tanks" + s.aPass()}, {head: "Fill to", anchor: End}, {head: "Product", anchor: End}, {head: s.figures.areaUnit(), anchor: End},
	}}
	add := func(head string, fill material.Fill) {
		t.rows = append(t.rows, []string{head, s.amounts.Mix(fill.Mix).String(), s.measuredText(fill.Product), s.reachText(float64(fill.Area))})
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
func (s stepSheet) mixTable() block {
	t := table{size: stepSize, columns: []column{{head: "Tanks" + s.aPass()}, {head: "Fill to", anchor: End}, {head: "Product", anchor: End}}}
	tank, mix := s.step.Step.Tank, s.step.Mix()
	full := int(float64(mix/tank) + 1e-9)
	if full > 0 {
		t.rows = append(t.rows, []string{fmt.Sprintf("%d full", full), s.amounts.Mix(tank).String(), s.step.Step.PassByLabel()})
	}
	if last := mix - material.Volume(full)*tank; last > 1e-9*mix {
		t.rows = append(t.rows, []string{lastTank(full), s.amounts.Mix(last).String(), s.step.Step.PassByLabel()})
	}
	return orNone(t)
}

func lastTank(full int) string {
	if full == 0 {
		return "1 in part"
	}
	return "1 more"
}
