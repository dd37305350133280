package zones

import "math"

// Bearable rounds a figure to the step that its error can bear: 1, 5, 10, 50,
// 100 ... at most as large as the half-width of its 95 % interval.
func Bearable(value, ci95 float64) float64 {
	step := bearableStep(ci95)
	return math.Round(value/step) * step
}

func bearableStep(ci95 float64) float64 {
	step := 1.0
	for factor := 5.0; step*factor <= min(ci95, math.MaxFloat64/10); factor = 10 / factor {
		step *= factor
	}
	return step
}
