package track

import (
	"math"

	"example.org/turfplat/geo"
)

// A loop is a way once round something: stations in the order walked.
type loop []int

// A finder runs along a walk and cuts off each loop when it closes, as one
// erases loops from a path: what stays is the way there and away.
type finder struct {
	at      []geo.XY // of each station, smoothed
	heading []geo.XY
	gate    float64 // m
	askew   float64 // cosine of the greatest angle at which the walk may come back
	stride  int
	trail   []node // loops erased
	cells   map[[2]int][]int
}

// A node is a station on the trail.
type node struct {
	station int
	way     float64 // along the trail, m
}

// manyNodes bounds the work on a long walk: of more stations, only every
// second, third ... may close a loop.
const manyNodes = 8_000

func newFinder(at []geo.XY, gate float64, turn Rule) *finder {
	f := &finder{at: at, gate: gate, stride: 1 + len(at)/manyNodes, cells: make(map[[2]int][]int)}
	f.askew = turn.cos()
	f.heading = f.headings()
	return f
}

// headings are those of the smoothed way a few metres before and after.
func (f *finder) headings() []geo.XY {
	const reach = 4 // m
	h, way := make([]geo.XY, len(f.at)), make([]float64, len(f.at))
	for i := 1; i < len(f.at); i++ {
		way[i] = way[i-1] + f.at[i].Distance(f.at[i-1])
	}
	lo, hi := 0, 0
	for i := range f.at {
		for way[i]-way[lo] > reach {
			lo++
		}
		for hi+1 < len(f.at) && way[hi]-way[i] < reach {
			hi++
		}
		d := f.at[hi].Minus(f.at[min(lo, max(0, i-1))])
		h[i] = d.Times(1 / max(d.Norm(), 1e-9))
	}
	return h
}

// A closing is a pair of places at which a walk comes back on itself.
type closing struct {
	from, to int // indices in the trail
	gap      float64
}

// loops returns the loops of a walk and the stations left over. A loop closes
// where the walk comes nearest to its own trail within a gate's length of
// coming near at all.
func (f *finder) loops() ([]loop, []int) {
	var found []loop
	var best *closing
	var since float64 // way at which the walk came near
	for j := 0; j < len(f.at); j += f.stride {
		f.push(j)
		last := len(f.trail) - 1
		ends := j+f.stride >= len(f.at)
		if c, ok := f.nearest(last, ends); ok && (best == nil || c.gap < best.gap) {
			if best == nil {
				since = f.trail[last].way
			}
			best = &c
		}
		if best != nil && (ends || f.trail[last].way-since > f.gate) {
			j = f.trail[best.to].station
			found = append(found, f.cut(*best))
			f.push(j)
			best = nil
		}
	}
	return found, f.filled(f.trail)
}

// nearest finds the place on the trail that its node j is back at. Who stops
// there has not turned into the first side yet.
func (f *finder) nearest(j int, ends bool) (closing, bool) {
	askew := f.askew
	if ends {
		askew = endTurn.cos()
	}
	best := closing{to: j, gap: math.Inf(1)}
	to := f.trail[j]
	cell := f.cell(to.station)
	for dx := -1; dx <= 1; dx++ {
		for dy := -1; dy <= 1; dy++ {
			for _, i := range f.cells[[2]int{cell[0] + dx, cell[1] + dy}] {
				from := f.trail[i]
				gap, round := f.at[from.station].Distance(f.at[to.station]), to.way-from.way
				if gap < best.gap && gap <= f.gate && gap <= closeShare.Value*round &&
					round >= shortestRing.Value && f.heading[from.station].Dot(f.heading[to.station]) > askew {
					best.from, best.gap = i, gap
				}
			}
		}
	}
	return best, !math.IsInf(best.gap, 1)
}

func (f *finder) cell(i int) [2]int {
	return [2]int{int(math.Floor(f.at[i].X / f.gate)), int(math.Floor(f.at[i].Y / f.gate))}
}

func (f *finder) push(i int) {
	n := node{station: i}
	if last := len(f.trail) - 1; last >= 0 {
		n.way = f.trail[last].way + f.at[i].Distance(f.at[f.trail[last].station])
	}
	c := f.cell(i)
	f.cells[c] = append(f.cells[c], len(f.trail))
	f.trail = append(f.trail, n)
}

// cut takes a loop off the trail, and whatever was walked after it closed.
func (f *finder) cut(c closing) loop {
	l := f.filled(f.trail[c.from : c.to+1])
	for len(f.trail) > c.from+1 {
		last := len(f.trail) - 1
		cell := f.cell(f.trail[last].station)
		f.cells[cell] = f.cells[cell][:len(f.cells[cell])-1]
		f.trail = f.trail[:last]
	}
	return l
}

// filled returns the stations of nodes, with those that the stride passed
// over.
func (f *finder) filled(nodes []node) []int {
	var stations []int
	for k, n := range nodes {
		if k > 0 {
			if before := nodes[k-1].station; n.station-before <= f.stride {
				for i := before + 1; i < n.station; i++ {
					stations = append(stations, i)
				}
			}
		}
		stations = append(stations, n.station)
	}
	return stations
}
