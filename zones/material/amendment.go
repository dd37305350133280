package material

import (
	"math"

	"example.org/turfplat/geo"
)

// InRootZone returns the rate of bulk material that makes up a part of a root
// zone so deep, when it is tilled in.
func InRootZone(part Share, depth geo.Length) Rate {
	return DepthOf(depth*geo.Length(part), Bulk)
}

// LimeRate returns the rate of a lime that does what a rate of pure limestone
// was recommended for. The calcium carbonate equivalent of the lime may be
// more than the whole, as that of burnt lime is.
func LimeRate(recommended Rate, equivalent Share) (Rate, error) {
	if !(equivalent > 0) {
		return Rate{}, inputErrorf("state its calcium carbonate equivalent, such as 80 %", "how much of the lime acts is not known")
	}
	return recommended.Times(1 / float64(equivalent)), nil
}

// wholeParts is by how much of itself a part may exceed its limit through
// rounding of the arithmetic.
const wholeParts = 1e-9

// Split divides a rate into the fewest equal parts that each keep within a
// limit for one time.
func (r Rate) Split(limit Rate) (parts int, each Rate, err error) {
	if r.By.dimension() != limit.By.dimension() || !(limit.PerM2 > 0) {
		return 0, Rate{}, inputErrorf("", "a %s rate has no limit in a %s one", r.By, limit.By)
	}
	n := math.Max(1, math.Ceil(r.PerM2/limit.PerM2*(1-wholeParts)))
	if !(n <= math.MaxInt32) {
		return 0, Rate{}, inputErrorf("", "the rate is too far above its limit")
	}
	return int(n), r.Times(1 / n), nil
}
