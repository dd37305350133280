package program

import _ "embed"

var (
	// ticksCSV holds what a crew ticks off at a job, with a use, or if a step
	// asks for something; an empty cell is any. The order is that of the work.
	//
	//go:embed ticks.csv
	ticksCSV string

	ticks = mustRows("ticks.csv", ticksCSV, "does", "use", "if", "text", "source")
)

// Ticks is what a crew ticks off at the step, in the order of the work.
func (s *Step) Ticks() []string {
	asks := map[string]bool{"": true, "water_in": s.WaterIn != nil, "stay_off": s.StayOff != ""}
	var list []string
	for _, row := range ticks {
		if s.meets(row[0], row[1]) && asks[row[2]] {
			list = append(list, row[3])
		}
	}
	return list
}

// meets reports whether a row about a job and a use bears on the step; an empty
// one is any, pesticide any use of one.
func (s *Step) meets(does, use string) bool {
	return (does == "" || does == string(s.Does)) &&
		(use == "" || s.isFor(Use(use)) || use == "pesticide" && s.Labelled())
}
