package track

import (
	"fmt"
	"math"
	"slices"

	"example.org/turfplat/geo"
)

// parted refuses rings that overlap beyond what their errors explain and
// neither of which holds the other: laps of one lawn that the receiver drew
// apart, or a ring closed across a neck of the ground. Their ground would count
// twice.
func (r *report) parted() {
	rings := r.walk.Rings
	overlaps := make([]bool, len(rings))
	for i := range rings {
		for j := i + 1; j < len(rings); j++ {
			both, in, other := shared(r.shell(i), r.shell(j))
			smaller := min(in, other)
			if min(both, smaller-both) <= crossShare.Value*smaller || both <= float64(rings[i].CI95+rings[j].CI95) {
				continue
			}
			overlaps[i], overlaps[j] = true, true
			r.refuse("ring_overlaps", fmt.Sprintf("rings %d and %d overlap by %s: they are not two pieces of ground, nor one within the other", rings[i].Number, rings[j].Number, r.area(both)),
				"walk one piece of ground again, all laps along the same edge")
		}
	}
	kept := 0
	for i := range rings {
		if !overlaps[i] {
			rings[kept], r.regions[kept] = rings[i], r.regions[i]
			kept++
		}
	}
	r.walk.Rings, r.regions = rings[:kept], r.regions[:kept]
}

// shell is the outline of a ring in the frame.
func (r *report) shell(i int) []geo.XY { return r.regions[i].Polygons()[0].Shell }

// overlapLines are how many lines across two rings are looked along for what
// both go round.
const overlapLines = 48

// shared returns what two rings both go round, and what each does, m2, seen
// along lines across them: good to a few parts in a hundred. Ground gone round
// twice counts as none, as between lines it is outside again.
func shared(a, b []geo.XY) (both, inA, inB float64) {
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, p := range slices.Concat(a, b) {
		lo, hi = min(lo, p.Y), max(hi, p.Y)
	}
	step := (hi - lo) / overlapLines
	for k := range overlapLines {
		y := lo + (float64(k)+0.5)*step
		across, other := crossings(a, y), crossings(b, y)
		inA, inB = inA+step*inside(across), inB+step*inside(other)
		both += step * common(across, other)
	}
	return both, inA, inB
}

// crossings are the places, in order, where a line to the east crosses a ring.
func crossings(ring []geo.XY, y float64) []float64 {
	var xs []float64
	for i, p := range ring {
		q := ring[(i+1)%len(ring)]
		if (p.Y > y) != (q.Y > y) {
			xs = append(xs, p.X+(q.X-p.X)*(y-p.Y)/(q.Y-p.Y))
		}
	}
	slices.Sort(xs)
	return xs
}

// inside is how much of a line lies in a ring that it crosses at places.
func inside(crossings []float64) float64 {
	var sum float64
	for i := 0; i+1 < len(crossings); i += 2 {
		sum += crossings[i+1] - crossings[i]
	}
	return sum
}

// common is how much of a line lies in two rings.
func common(a, b []float64) float64 {
	var sum float64
	for i, j := 0, 0; i+1 < len(a) && j+1 < len(b); {
		sum += max(0, min(a[i+1], b[j+1])-max(a[i], b[j]))
		if a[i+1] < b[j+1] {
			i += 2
		} else {
			j += 2
		}
	}
	return sum
}
