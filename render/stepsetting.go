package render

import (
	"fmt"

	"example.org/turfplat/geo"
	"example.org/turfplat/zones/material"
	"example.org/turfplat/zones/program"
)

// settingRows are the settings of the user's own spreaders, and what a strip of
// known ground must take to prove one.
func (s stepSheet) settingRows() [][]string {
	step := s.step.Step
	rate, ok := step.PassRate()
	if !ok || step.Does != program.Spread && step.Does != program.Seed {
		return nil
	}
	var rows [][]string
	for _, setting := range s.plan.Program.Settings(step, s.settingShare()) {
		text := fmt.Sprintf("%.1f on %s, by own calibration%s", setting.Number, s.letters.of(setting.Spreader), s.passText(rate))
		if setting.Err != nil {
			text = fmt.Sprintf("none on %s: %v", s.letters.of(setting.Spreader), setting.Err)
		}
		rows = append(rows, []string{"Setting", text})
	}
	if len(rows) == 0 {
		rows = [][]string{{"Setting", "______ by own calibration" + s.passText(rate)}}
	}
	once := "a pass"
	if s.lanes != nil {
		once = "walked once" // two lanes may make a pass
	}
	strip := geo.Area(500 * geo.FootM * geo.FootM)
	if s.figures.Metric() {
		strip = 50
	}
	return append(rows, []string{"Test strip", fmt.Sprintf("%s %s take %s %s", s.figures.Area(float64(strip), 0), s.figures.areaUnit(), s.amounts.Amount(rate.Times(s.settingShare()).Over(strip)), once)})
}

// passText is the rate for which a spreader is set where that is not all of it.
func (s stepSheet) passText(rate material.Rate) string {
	share := s.settingShare()
	if share == 1 {
		return ""
	}
	return fmt.Sprintf(", for %s walked once", s.amounts.Rate(rate.Times(share)))
}
