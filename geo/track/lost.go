package track

import (
	"math"
	"slices"

	"example.org/turfplat/geo"
)

// atStake returns the ground, m2, that may lie beyond the straight lines
// across the unobserved edges of a lap.
func (t traverse) atStake(l lap) float64 {
	var sum float64
	for k := range l.stations {
		sum += t.stakeAfter(l, k)
	}
	return sum
}

// stakeAfter returns what may lie beyond the edge after place k of a lap: what
// a right-angled corner holds whose legs make up the way that could be walked
// while the receiver was lost. It is 0 for an edge that was observed, or looks
// straight.
func (t traverse) stakeAfter(l lap, k int) float64 {
	s, next := l.stations[k], l.stations[(k+1)%len(l.stations)]
	later := max(s, next)
	if s+next != 2*later-1 || !t.smooth.lost[later] {
		return 0 // not walked one after the other, or observed
	}
	chord := t.at[s].Distance(t.at[next])
	way := chord
	if t.path.timed {
		way = max(chord, t.speed*(t.path.stations[later].time-t.path.stations[later-1].until))
	}
	if t.straight(later, chord, way) {
		return 0
	}
	return (way*way - chord*chord) / 4
}

// straight reports whether the walk runs towards the line across an unobserved
// edge, and on along it, and may have taken the time for no more.
func (t traverse) straight(later int, chord, way float64) bool {
	const spare = 1.3 // a walker's pace varies
	if way > spare*chord+closeGate.Value {
		return false
	}
	const reach = 5 // stations to take a heading from
	a, b := later-1, later
	across := t.at[b].Minus(t.at[a])
	before := t.at[a].Minus(t.at[max(0, a-reach)])
	after := t.at[min(len(t.at)-1, b+reach)].Minus(t.at[b])
	return along(before, across) && along(after, across)
}

func along(heading, across geo.XY) bool {
	return heading.Dot(across) > lostTurn.cos()*heading.Norm()*across.Norm()
}

// cos is the cosine of an angle.
func (r Rule) cos() float64 { return math.Cos(r.Value * math.Pi / 180) }

// mended bridges the unobserved edges of laps by what other laps saw there.
func (t traverse) mended(laps []lap) []lap {
	out := slices.Clone(laps)
	for i := range laps {
		for j := range laps {
			if j != i {
				out[i] = t.bridgedBy(out[i], laps[j])
			}
		}
	}
	return out
}

// bridgedBy bridges those unobserved edges of a lap that another lap can make
// good.
func (t traverse) bridgedBy(l, other lap) lap {
	const most = 10 // edges; a lap lost more often is no lap
	var edges []int
	for k := range l.stations {
		if t.stakeAfter(l, k) > 0 {
			edges = append(edges, k)
		}
	}
	if len(edges) > most {
		return l
	}
	slices.Reverse(edges) // so that those to come keep their index
	stake := t.atStake(l)
	for _, k := range edges {
		b := l.bridged(k, other)
		if s := t.atStake(b); s < stake && ringLength(b.at) < longestLap*ringLength(other.at) {
			l, stake = b, s
		}
	}
	return l
}
