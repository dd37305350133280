package sun

import (
	_ "embed"

	"example.org/turfplat/geo"
)

// gridsCSV holds the step of the grid by the area of the turf, the first row
// that is not too small deciding.
//
//go:embed grids.csv
var gridsCSV string

// StepFor returns the step, in metres, of a grid over turf of an area.
func StepFor(turf geo.Area) float64 {
	step := 0.0
	for _, row := range builtIn("grids.csv", gridsCSV, "up_to_m2", "step_m", "basis") {
		step = row.number("step_m")
		if row["up_to_m2"] != "" && float64(turf) < row.number("up_to_m2") {
			break
		}
	}
	return step
}
