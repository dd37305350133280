package sun

import _ "embed"

// figuresCSV holds the figures of the trade by which turf is divided by its
// sun, each with what it rests on.
//
//go:embed figures.csv
var figuresCSV string

var figures = readFigures()

func readFigures() map[string]float64 {
	values := make(map[string]float64)
	for _, row := range builtIn("figures.csv", figuresCSV, "figure", "value", "unit", "basis") {
		values[row["figure"]] = row.number("value")
	}
	return values
}
