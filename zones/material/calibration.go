package material

import (
	"math"

	"example.org/turfplat/geo"
)

// A StripRun is what a spreader put on a strip of known ground: an effective
// swath wide, so long as makes 500-1,000 ft2 (common practice, no source).
type StripRun struct {
	Start, Left   Amount // in the hopper, as weighed
	Swath, Length geo.Length
}

// Rate returns the rate at which the spreader ran.
func (s StripRun) Rate() (Rate, error) {
	if s.Start.By != s.Left.By || !(s.Left.Size >= 0 && s.Start.Size >= s.Left.Size) {
		return Rate{}, inputErrorf("weigh the hopper before and after in the same way", "more is left than was there")
	}
	if !(s.Swath > 0 && s.Length > 0) {
		return Rate{}, inputErrorf("measure the swath and the length of the strip", "the strip has no area")
	}
	return RateOf(Amount{s.Start.By, s.Start.Size - s.Left.Size}, geo.Area(s.Swath*s.Length))
}

// CourseLength returns how long a strip is that has an area.
func CourseLength(ground geo.Area, swath geo.Length) (geo.Length, error) {
	if !(swath > 0) {
		return 0, inputErrorf("measure the swath with trays", "the strip has no width")
	}
	return geo.Length(float64(ground) / float64(swath)), nil
}

// OffBy returns by what part of the wanted rate a measured one is above it,
// below it if negative, and whether that is within the tolerance.
func OffBy(measured, wanted Rate, tolerance Share) (off float64, within bool, err error) {
	if measured.By != wanted.By || measured.Of != wanted.Of || !(wanted.PerM2 > 0) {
		return 0, false, inputErrorf("", "the measured rate cannot be compared with the wanted one")
	}
	off = measured.PerM2/wanted.PerM2 - 1
	return off, math.Abs(off) <= float64(tolerance)+wholeParts, nil
}

// Crossed returns the rate of each of so many passes that together put down a
// rate.
func Crossed(r Rate, passes int) (Rate, error) {
	if passes < 1 {
		return Rate{}, inputErrorf("", "a rate takes at least one pass")
	}
	return r.Times(1 / float64(passes)), nil
}
