package render

import (
	"fmt"
	"strings"

	"example.org/turfplat/zones/material"
	"example.org/turfplat/zones/program"
)

// leftAlone lists the letters of the zones on which the step is not done.
func (s stepSheet) leftAlone() string {
	var letters []string
	for _, z := range s.measured.Zones {
		if _, there := s.done[z.ID]; !there {
			letters = append(letters, z.Letter)
		}
	}
	return strings.Join(letters, ", ")
}

// howTable says what goes down at which rate, and what is done after it.
func (s stepSheet) howTable() block {
	step := s.step.Step
	t := table{size: stepSize, columns: []column{{head: "How", width: headColumn}, {wrap: true}}}
	add := func(head, format string, v ...any) {
		t.rows = append(t.rows, []string{head, fmt.Sprintf(format, v...)})
	}
	if rest := s.leftAlone(); rest != "" {
		add("Leave alone", "%s", rest)
	}
	if step.Product.Name != "" {
		add("Material", "%s%s", s.letters.of(step.Product.Name), s.amountInPasses())
	}
	if rate, ok := step.VisitRate(); ok {
		add("Rate", "%s", s.rateText(rate))
	} else if step.ByLabel() {
		add("Rate", "only the label's%s: __________________", step.InPasses())
	}
	t.rows = append(t.rows, s.settingRows()...)
	if step.Passes > 1 {
		add("Passes", "%s", s.passesText())
	}
	if s.hasMix() {
		add("Mix", "%s%s at %s", s.amounts.Mix(s.step.Mix()), s.aPass(), s.amounts.MixRate(step.Carrier))
	}
	if n := s.step.Visits(); n > 1 {
		add("Visits", "%d in the season%s; figures are for one", n, s.step.ThereofDone())
	}
	if w := step.WaterIn; w != nil {
		add("Water in", "%s within %s", s.amounts.Height(w.Depth), program.Lasting(w.Within))
	}
	if step.KeepDry > 0 {
		add("Keep dry", "for %s", program.Lasting(step.KeepDry))
	}
	if step.StayOff != "" {
		add("Stay off", "%s", s.letters.of(step.StayOff))
	}
	if step.Does == program.Mow && step.Bagged {
		add("Clippings", "taken off")
	}
	return orNone(t)
}

// rateText writes the rate of a visit, that of a pass first.
func (s stepSheet) rateText(ofVisit material.Rate) string {
	step := s.step.Step
	if step.Passes == 1 {
		return step.RateText(s.amounts, ofVisit)
	}
	return fmt.Sprintf("%s a pass, %s in %d passes", step.RateText(s.amounts, ofVisit.Times(1/float64(step.Passes))), step.RateText(s.amounts, ofVisit), step.Passes)
}

// passesText says how a zone is gone over several times.
func (s stepSheet) passesText() string {
	text := fmt.Sprintf("%d, each over the whole of a zone, the next one across", s.step.Step.Passes)
	switch {
	case s.lanes != nil:
		text = fmt.Sprintf("%d, each with lanes of its own, every other one across the one before; lanes, fillings and what is left are of one pass", s.step.Step.Passes)
	case s.step.Step.Tank > 0 && s.hasMix():
		text += "; tanks are of one pass, mix them anew for the next"
	}
	return text
}
