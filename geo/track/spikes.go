package track

import (
	"fmt"
	"slices"
)

// withoutSpikes drops fixes that jump away from their neighbours: far from the
// median of the seven around, and not to be reached at walking speed. In a
// corner the median stands where a mean would not, so that corners stay.
func (p path) withoutSpikes() (path, Step) {
	step := Step{Name: "spikes", Before: len(p.stations)}
	away := make([]float64, len(p.stations))
	for i, s := range p.stations {
		away[i] = s.at.Distance(medianPlace(p.stations[max(0, i-3):min(len(p.stations), i+4)]))
	}
	usual := p.usualSpeed()
	limit := max(spikeReach.Value, spikeRatio.Value*median(slices.Clone(away)), 2*usual*p.interval)
	speed := max(walkingSpeed.Value, 3*usual)
	stations := slices.Clone(p.stations)
	last := -1 // station before that stays
	p.keep(func(i int) bool {
		if away[i] > limit && (p.timed && jumps(stations, last, i, speed) || jumps(stations, i, i+1, speed) || !p.timed) {
			return false
		}
		last = i
		return true
	})
	step.Text = fmt.Sprintf("dropped: over %.1f m from the median of the seven fixes around, and faster than %.1f m/s", limit, speed)
	return p, step.kept(len(p.stations))
}

// jumps reports whether the way from station i to station j takes more than a
// speed.
func jumps(stations []station, i, j int, speed float64) bool {
	if i < 0 || j >= len(stations) {
		return false
	}
	return stations[i].at.Distance(stations[j].at) > speed*(stations[j].time-stations[i].until)
}
