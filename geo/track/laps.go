package track

import (
	"cmp"
	"slices"

	"example.org/turfplat/geo"
)

// mostLoops bounds the work on a walk that crosses itself all the time.
const mostLoops = 200

// rings returns the laps of a walk by rings, turned to the left.
func (t traverse) rings(gate float64) [][]lap {
	groups := t.found(gate)
	for i, g := range groups {
		groups[i] = counterClockwise(append(g, t.unfinished(t.left(groups), g[0], gate)...))
	}
	return groups
}

// found returns the laps of a walk by rings. Seen from its end a walk may fall
// into other loops, as where its start was reached across the lawn; and where
// it need not come back as near to close, loops may close across a neck of the
// ground: the way that makes most sense stands.
func (t traverse) found(gate float64) [][]lap {
	all := make([]int, len(t.at))
	for i := range all {
		all[i] = i
	}
	back := slices.Clone(all)
	slices.Reverse(back)
	best := t.foundIn(all, gate)
	tries := []struct {
		stations []int
		gate     float64
	}{{back, gate}}
	if narrow := max(closeGate.Value, gate/2); narrow < gate {
		tries = append(tries, struct {
			stations []int
			gate     float64
		}{all, narrow}, struct {
			stations []int
			gate     float64
		}{back, narrow})
	}
	for _, try := range tries {
		if g := t.foundIn(try.stations, try.gate); sense(g) > clearlyMore*sense(best) {
			best = g
		}
	}
	return best
}

// clearlyMore is how much more sense another way must make. Who took the
// larger of two that differ by errors only would get areas too large.
const clearlyMore = 1.05

// sense is the ground gone round; each ring more that it takes, unless it lies
// in another, must add three twentieths to it.
func sense(groups [][]lap) float64 {
	var sum, apart float64
	if len(groups) == 0 {
		return 0
	}
	for _, g := range groups {
		l := g[0]
		sum += l.area()
		in := func(o []lap) bool { return o[0].area() > l.area() && o[0].around(middle(l.at)) }
		if !slices.ContainsFunc(groups, in) {
			apart++
		}
	}
	return sum / (1 + 0.15*(apart-1))
}

// foundIn cuts off first what comes back on itself smoothly; then, of what is
// left over, what comes back at a corner.
func (t traverse) foundIn(stations []int, gate float64) [][]lap {
	var laps []lap
	loops, rest := newFinder(t.places(stations), gate, closeTurn).loops()
	for _, l := range loops {
		laps = append(laps, t.lobes(pick(stations, l), gate)...)
	}
	rest = pick(stations, rest)
	loops, _ = newFinder(t.places(rest), gate, cornerTurn).loops()
	for _, l := range loops {
		laps = append(laps, t.lapOf(pick(rest, l)))
	}
	if len(laps) > mostLoops { // the largest are the likeliest to be meant
		slices.SortStableFunc(laps, func(a, b lap) int { return cmp.Compare(b.area(), a.area()) })
		laps = laps[:mostLoops]
	}
	slices.SortStableFunc(laps, func(a, b lap) int { return slices.Min(a.stations) - slices.Min(b.stations) })
	return grouped(laps, gate)
}

// pick returns the chosen ones of some stations.
func pick(stations, chosen []int) []int {
	out := make([]int, len(chosen))
	for i, c := range chosen {
		out[i] = stations[c]
	}
	return out
}

// lobes takes a figure of eight apart. A loop that is none is one lap.
func (t traverse) lobes(l loop, gate float64) []lap {
	whole := t.lapOf(l)
	loops, _ := newFinder(whole.at, gate, cornerTurn).loops()
	var lobes []lap
	var left, right float64
	for _, k := range loops {
		lobe := t.lapOf(pick(l, k))
		area := signedArea(lobe.at)
		left, right = max(left, area), max(right, -area)
		lobes = append(lobes, lobe)
	}
	if least := min(left, right); least > 0 && least > whole.area()/10 {
		return lobes
	}
	return []lap{whole}
}

// grouped puts laps of one ring together, in the order of the first, without
// those that run along a larger ring for the most part, as pieces of it do. One
// that is hardly shorter is a lap of it: left out because errors made it small,
// the mean of the others would be too large.
func grouped(laps []lap, gate float64) [][]lap {
	var groups [][]lap
	for _, l := range laps {
		k := slices.IndexFunc(groups, func(g []lap) bool {
			return slices.ContainsFunc(g, func(o lap) bool { return sameRing(o, l, gate) })
		})
		if k < 0 {
			groups = append(groups, []lap{l})
			continue
		}
		groups[k] = append(groups[k], l)
	}
	larger := slices.Clone(groups)
	slices.SortStableFunc(larger, func(a, b []lap) int { return cmp.Compare(b[0].area(), a[0].area()) })
	joined := make(map[int][]lap) // laps by the first station of the ring they join
	var whole [][]lap
	for _, g := range groups {
		k := slices.IndexFunc(larger, func(o []lap) bool { return pieceOf(g[0], o[0], gate) })
		if k < 0 {
			whole = append(whole, g)
		} else if o := larger[k][0]; ringLength(g[0].at) > lapLength.Value*ringLength(o.at) {
			joined[o.stations[0]] = append(joined[o.stations[0]], g...)
		}
	}
	for i, g := range whole {
		whole[i] = append(g, joined[g[0].stations[0]]...)
	}
	return whole
}

// left returns the stations in no lap.
func (t traverse) left(groups [][]lap) []int {
	taken := make([]bool, len(t.at))
	for _, g := range groups {
		for _, l := range g {
			for _, s := range l.stations {
				taken[s] = true
			}
		}
	}
	var left []int
	for i, in := range taken {
		if !in {
			left = append(left, i)
		}
	}
	return left
}

// beside counts the places along a ring that lie within a gate of it.
func beside(places, ring []geo.XY, gate float64) int {
	const most = 2_000 // places looked at; of more, some do
	every := 1 + len(places)/most
	count := 0
	for i := 0; i < len(places); i += every {
		if near(places[i], ring) <= gate {
			count += every
		}
	}
	return count
}

// unfinished returns the laps that stations left over make if completed from
// a whole lap.
func (t traverse) unfinished(rest []int, whole lap, gate float64) []lap {
	var laps []lap
	ring := resampled(whole.at, ringPlaces)
	for from := 0; from < len(rest); {
		to := from
		for to < len(rest) && (to == from || rest[to] == rest[to-1]+1) && near(t.at[rest[to]], ring) <= gate {
			to++
		}
		if l, ok := t.completed(rest[from:to], whole, gate); ok {
			laps = append(laps, l)
		}
		from = max(to, from+1)
	}
	return laps
}

// completed closes a piece of a lap by a whole one, walked either way round.
func (t traverse) completed(piece []int, whole lap, gate float64) (lap, bool) {
	if len(piece) < 3 {
		return lap{}, false
	}
	l := t.lapOf(piece)
	round := ringLength(whole.at)
	if ringLength(l.at)-l.at[0].Distance(l.at[len(l.at)-1]) < lapShare.Value*round {
		return lap{}, false
	}
	for range 2 {
		if c := l.bridged(len(l.at)-1, whole); sameRing(whole, c, gate) && ringLength(c.at) < longestLap*round {
			return c, true
		}
		whole = whole.reversed()
	}
	return lap{}, false
}

// longestLap is how much longer than another a lap completed from it may be;
// a stretch taken the wrong way round makes one twice as long.
const longestLap = 1.3
