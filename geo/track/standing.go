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
	least, speed := p.leastStop()
	later := p.later(least)
	for i := 0; i < len(p.stations); {
		j := p.standsUntil(i, later, least, speed)
		if j == i {
			out = append(out, p.stations[i])
		} else {
			out = append(out, stop(p.stations[i:j+1]))
			stops++
		}
		i = j + 1
	}
	p.stations = out
	step.Text = fmt.Sprintf("%d stops, slower than %.2f m/s for %.0f s; the fixes of each became one station", stops, speed, least)
	if speed == 0 {
		step.Text = "the receiver errs too much to tell standing from walking"
	}
	return p, step.kept(len(out))
}

// leastStop is for how long somebody has to stand to be seen standing, s: until
// errors alone look much slower than the usual walk. It returns the speed as
// well, m/s, up to which a spell of that length may look like moving; 0 if it
// takes so long that one may have gone round a small lawn meanwhile.
func (p path) leastStop() (time, speed float64) {
	const longest = 30 // s
	jitter, wander := p.jitter(), p.wander()
	slow := max(standSpeed.Value, min(pace.Value, p.usualSpeed())*standShare.Value) // errors make walks look faster
	for time = standTime.Value; time <= longest; time++ {
		// What the parabola of a spell moves by errors, root mean square over it: white
		// ones, and ones that drift (own derivation).
		n := time/p.interval + 1
		apparent := standSigmas.Value * math.Sqrt(144*jitter*jitter/(n*time*time)+5.4*wander/time)
		if apparent <= slow {
			return time, math.Hypot(standSpeed.Value, apparent)
		}
	}
	return time, 0
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
// lasts as long as each spell of the least time moves slower than a speed. It
// is i if the walk goes on.
func (p path) standsUntil(i int, later []int, least, speed float64) int {
	const fewest = 3 // fixes in a spell
	end := i
	for k := i; p.timed && k < len(p.stations) && later[k] < len(p.stations) && later[k]-k >= fewest; k++ {
		spell := p.stations[k : later[k]+1]
		from, to := spell[0], spell[len(spell)-1]
		lasts := to.time - from.time
		if lasts > 2*least || to.at.Distance(from.at) > standSpeed.Value*standTime.Value*lasts/least || moves(spell) > speed {
			break
		}
		end = later[k]
	}
	return end
}

// moves is how fast stations move: the speed, root mean square over their
// time, of the parabola that fits them best. Who turns round on the way is
// where he was a while ago, but has not stood; a parabola shows that.
func moves(stations []station) float64 {
	first, last := stations[0].time, stations[len(stations)-1].time
	half, centre := (last-first)/2, stations[0].at
	var m [5]float64
	var x, y [3]float64
	for _, s := range stations {
		u, power := (s.time-first)/half-1, 1.0
		d := s.at.Minus(centre)
		for k := range m {
			m[k] += power
			if k < 3 {
				x[k] += power * d.X
				y[k] += power * d.Y
			}
			power *= u
		}
	}
	square := 0.0
	for _, v := range [][3]float64{x, y} {
		b, c := parabola(m, v)
		square += b*b + 4*c*c/3
	}
	return math.Sqrt(square) / half
}

// parabola returns the slope b and bend c of the a+bu+cu2 that fits best, from
// the sums over the places of the powers of u, and of those times what is to be
// fitted.
func parabola(m [5]float64, v [3]float64) (b, c float64) {
	c00, c01, c02 := m[2]*m[4]-m[3]*m[3], m[2]*m[3]-m[1]*m[4], m[1]*m[3]-m[2]*m[2]
	c11, c12, c22 := m[0]*m[4]-m[2]*m[2], m[1]*m[2]-m[0]*m[3], m[0]*m[2]-m[1]*m[1]
	det := m[0]*c00 + m[1]*c01 + m[2]*c02
	return (c01*v[0] + c11*v[1] + c12*v[2]) / det, (c02*v[0] + c12*v[1] + c22*v[2]) / det
}

// stop is the one station that several become.
func stop(stations []station) station {
	s := stations[0]
	s.at = medianPlace(stations)
	s.until = stations[len(stations)-1].until
	return s
}
