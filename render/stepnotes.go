package render

// headColumn is the first column of tables of words, in millimetres.
const headColumn = 21.0

// cautionTable is what to mind, numbered.
func (s stepSheet) cautionTable() block {
	t := table{size: stepSize, columns: []column{{head: "Mind", wrap: true}}}
	for _, text := range s.step.Step.Minding() {
		t.rows = append(t.rows, []string{capitalized(s.letters.of(text))})
	}
	return orNone(t)
}

// noteTable has what the program tells of the step besides.
func (s stepSheet) noteTable() block {
	t := table{size: stepSize, columns: []column{{head: "Notes on the step", wrap: true}}}
	for _, text := range s.step.Step.Notes {
		t.rows = append(t.rows, []string{capitalized(s.letters.of(text))})
	}
	return orNone(t)
}

// accessTable has what the site file says of getting in; codes only if they
// were asked for.
func (s stepSheet) accessTable() block {
	a := s.plat.Site.Access
	t := table{size: stepSize, columns: []column{{head: "Access", width: headColumn}, {wrap: true}}}
	add := func(head, text string) {
		if text != "" {
			t.rows = append(t.rows, []string{head, s.letters.of(text)})
		}
	}
	add("Gate", a.Gate)
	if s.codes {
		add("Gate code", a.GateCode)
	} else if a.GateCode != "" {
		add("Gate code", "kept apart from this sheet")
	}
	add("Parking", a.Parking)
	add("Dog", a.Dog)
	add("Water", a.Water)
	add("Power", a.Power)
	add("Contact", a.Contact)
	return orNone(t)
}
