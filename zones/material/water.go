package material

import (
	"math"
	"time"

	"example.org/turfplat/geo"
)

// Precipitation is how fast water comes down on the ground, in metres a
// second.
type Precipitation float64

// Flow is how much flows, in cubic metres a second.
type Flow float64

// CaughtIn returns the precipitation that fills straight-sided cans to these
// depths in a time.
func CaughtIn(cans []geo.Length, run time.Duration) (Precipitation, error) {
	if len(cans) == 0 || run <= 0 {
		return 0, inputErrorf("set out cans, run the water for a known time, measure each", "no water caught in a time")
	}
	sum := 0.0
	for _, depth := range cans {
		sum += float64(depth)
	}
	return Precipitation(sum / float64(len(cans)) / run.Seconds()), nil
}

// FlowOver returns the precipitation of a flow spread over an area.
func FlowOver(f Flow, ground geo.Area) (Precipitation, error) {
	if !(ground > 0) {
		return 0, inputErrorf("", "water on no ground has no precipitation rate")
	}
	return Precipitation(float64(f) / float64(ground)), nil
}

// RunTime returns how long water runs until it lies a depth deep.
func (p Precipitation) RunTime(depth geo.Length) (time.Duration, error) {
	seconds := float64(depth) / float64(p)
	if !(p > 0) || !(seconds < math.MaxInt64/1e9) {
		return 0, inputErrorf("measure the precipitation rate with cans", "the run time of so little water is not known")
	}
	return time.Duration(math.Round(seconds * float64(time.Second))), nil
}

// Depth returns how deep water lies after a time.
func (p Precipitation) Depth(run time.Duration) geo.Length {
	return geo.Length(float64(p) * run.Seconds())
}

// RunsOff reports whether water comes down faster than the soil takes it in,
// so that a run must be cut into cycles with rests between.
func (p Precipitation) RunsOff(intake Precipitation) bool { return p > intake }
