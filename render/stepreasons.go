package render

import (
	"strings"

	"example.org/turfplat/zones/program"
)

// reasonTable tells what speaks against the step, or for some zones of it.
func (s stepSheet) reasonTable() block {
	t := table{size: stepSize, columns: []column{{head: "Before you start", wrap: true}}}
	if s.withheld() {
		t.columns[0].head = "What speaks against it"
	}
	for _, v := range s.step.Reasons {
		if v.Severity == program.Note {
			continue
		}
		text := s.letters.of(v.WithZones(s.step))
		if !v.Until.IsZero() {
			text += ", until " + program.ShortDay(v.Until)
		}
		if v.Severity == program.Block {
			text = "BLOCKED: " + text
		}
		t.rows = append(t.rows, []string{capitalized(text)})
	}
	return orNone(t)
}

// withheldTable tells of a step that may not be done for which zones it was
// meant, and what would lift what speaks against it.
func (s stepSheet) withheldTable() block {
	t := table{size: stepSize, columns: []column{{head: "Do not do it", width: headColumn}, {wrap: true}}}
	var letters []string
	for _, z := range s.step.Zones {
		letters = append(letters, z.Letter)
	}
	if len(letters) > 0 {
		t.rows = append(t.rows, []string{"Meant for", strings.Join(letters, ", ")})
	}
	t.rows = append(t.rows, []string{"Left off", "rate, amounts, setting, fillings, boxes to tick"})
	for i, way := range s.step.LiftedBy() {
		head := ""
		if i == 0 {
			head = "Lifted by"
		}
		t.rows = append(t.rows, []string{head, capitalized(s.letters.of(way))})
	}
	return t
}
