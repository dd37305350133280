package lanes

// A Filling is what is put into the hopper before a lane, or on it where a lane
// is longer than a filling lasts. The hopper is topped up, and the last time
// with no more than the lanes to come take.
type Filling struct {
	Lane   int     // its number
	On     bool    // on the lane, with the hopper empty
	Ground float64 // m2 that what is put in serves
	Full   float64 // m2 that what is then in the hopper serves
}

// mostFillings of a hopper are told one by one.
const mostFillings = 10_000

// Refills is how many times the hopper is filled on the way.
func (p Plan) Refills() int { return max(0, len(p.Fills)-1) }

// filledFor is the ground, in m2, that what is put in for a lane serves.
func (p Plan) filledFor(lane int) float64 {
	var ground float64
	for _, f := range p.Fills {
		if f.Lane == lane {
			ground += f.Ground
		}
	}
	return ground
}
