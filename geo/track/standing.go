package track

import (
	"fmt"
	"math"
)

// withStops makes one station of the fixes taken while standing: their
// median. Otherwise each stop leaves a star of fixes on the edge.
func (p path) withStops() (path, Step) {
	step := Step{Name: "standing", Before: len(p.stations)}
	stops := 0
	var out []station
	least := p.leastStop()
	later := p.later(least)
	for i := 0; i < len(p.stations); {
		j := p.standsUntil(i, later, least)
		if j == i {
			out = append(out, p.stations[i])
		} else {
			out = append(out, stop(p.stations[i:j+1]))
			stops++
		}
		i = j + 1
	}
	p.stations = out
	step.Text = fmt.Sprintf("%d stops, slower than %g m/s for %.0f s; the fixes of each became one station", stops, standSpeed.Value, least)
	return p, step.kept(len(out))
}

// leastStop is for how long somebody has to stand to be seen standing: until
// one who walks would have gone farther than errors may bring fixes together.
func (p path) leastStop() float64 {
	speed := min(pace.Value, p.usualSpeed()) // errors make walks look faster
	if speed <= 0 {
		return standTime.Value
	}
	jitter := p.jitter()
	apart := math.Sqrt(2*jitter*jitter + standTime.Value*p.wander())
	return max(standTime.Value, standSigmas.Value*apart/speed)
}

// later returns, for each station, the first one that is at least some time
// later; the number of stations if there is none.
func (p path) later(time float64) []int {
	out := make([]int, len(p.stations))
	j := 0
	for i, s := range p.stations {
		for j < len(p.stations) && p.stations[j].time-s.time < time {
			j++
		}
		out[i] = j
	}
	return out
}

// standsUntil returns the last station of a stop that starts at station i: it
// lasts as long as each spell of the least time moves slower than the standing
// speed. It is i if the walk goes on.
func (p path) standsUntil(i int, later []int, least float64) int {
	const fewest = 3 // fixes in a spell
	end := i
	for k := i; p.timed && k < len(p.stations) && later[k] < len(p.stations) && later[k]-k >= fewest; k++ {
		from, to := p.stations[k], p.stations[later[k]]
		spell := to.time - from.time
		if spell > 2*least || to.at.Distance(from.at) > standSpeed.Value*spell*standTime.Value/least {
			break
		}
		end = later[k]
	}
	return end
}

// stop is the one station that several become.
func stop(stations []station) station {
	s := stations[0]
	s.at = medianPlace(stations)
	s.until = stations[len(stations)-1].until
	return s
}
