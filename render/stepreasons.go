package render

import (
	"strings"

	"example.org/turfplat/zones/program"
)

// reasonTable tells what speaks against the step, or for some zones of it.
func (s stepSheet) reasonTable() Block {
	t := Table{Size: stepSize, Columns: []Column{{Head: "Before you start", Wrap: true}}}
	if s.withheld() {
		t.Columns[0].Head = "What speaks against it"
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
		t.Rows = append(t.Rows, []string{capitalized(text)})
	}
	return orNone(t)
}

// withheldTable tells of a step that may not be done for which zones it was
// meant, and what would lift what speaks against it.
func (s stepSheet) withheldTable() Block {
	t := Table{Size: stepSize, Columns: []Column{{Head: "Do not do it", Width: headColumn}, {Wrap: true}}}
	var letters []string
	for _, z := range s.step.Zones {
		letters = append(letters, z.Letter)
	}
	if len(letters) > 0 {
		t.Rows = append(t.Rows, []string{"Meant for", strings.Join(letters, ", ")})
	}
	t.Rows = append(t.Rows, []string{"Left off", "rate, amounts, setting, fillings, boxes to tick"})
	for i, way := range s.step.LiftedBy() {
		head := ""
		if i == 0 {
			head = "Lifted by"
		}
		t.Rows = append(t.Rows, []string{head, capitalized(s.letters.of(way))})
	}
	return t
}
