package track

import (
	"fmt"
	"math"
	"slices"

	"example.org/turfplat/geo"
)

// A contour is the way round a ring that was found.
type contour struct {
	number int
	at     []geo.XY
	ci     float64 // half of the 95 % interval of its area, m2; 0 if the ring was refused
}

// parted refuses rings that overlap beyond what their errors explain and
// neither of which holds the other: laps of one lawn that the receiver drew
// apart, or a ring closed across a neck of the ground. Their ground would count
// twice. A ring refused as too uncertain speaks against another all the same.
// Refused, too, are two rings of which one may be the other, drawn anew; but one
// on which the receiver was lost goes for nothing.
func (r *report) parted(b belief) {
	all := r.contours()
	rings := len(r.walk.Rings)
	refused := make([]bool, len(all))
	for i := range rings {
		for j := i + 1; j < len(all); j++ {
			switch o := overlapOf(all[i], all[j]); {
			case o.crosses() && o.both > all[i].ci+all[j].ci:
				r.refuse("ring_overlaps", fmt.Sprintf("rings %d and %d overlap by %s: they are not two pieces of ground, nor one within the other", all[i].number, all[j].number, r.area(o.both)),
					"walk one piece of ground again, all laps along the same edge")
			case o.twice(b):
				r.refuse("ring_twice", fmt.Sprintf("rings %d and %d run %s apart, one within the other: that may be one edge that the receiver drew twice", all[i].number, all[j].number, r.length(o.gap())),
					"walk that edge again; walk a bed in it on its own, or with a receiver that errs less")
			default:
				continue
			}
			refused[i], refused[j] = true, true
		}
	}
	kept := 0
	for i := range rings {
		if !refused[i] {
			r.walk.Rings[kept], r.regions[kept] = r.walk.Rings[i], r.regions[i]
			kept++
		}
	}
	r.walk.Rings, r.regions = r.walk.Rings[:kept], r.regions[:kept]
}

// contours returns those of the rings measured, in their order, and of those
// too uncertain.
func (r *report) contours() []contour {
	var all []contour
	for i, g := range r.walk.Rings {
		all = append(all, contour{g.Number, r.regions[i].Polygons()[0].Shell, float64(g.CI95)})
	}
	return append(all, r.uncertain...)
}

// An overlap is how two contours lie to each other.
type overlap struct {
	both, smaller, larger float64 // m2
	middles               float64 // distance of the middles, m
	around                float64 // length of both, m
}

func overlapOf(a, b contour) overlap {
	both, in, other := shared(a.at, b.at)
	return overlap{both, min(in, other), max(in, other),
		middle(resampled(a.at, ringPlaces)).Distance(middle(resampled(b.at, ringPlaces))), ringLength(a.at) + ringLength(b.at)}
}

// crosses reports whether neither holds the other, nor lies beside it.
func (o overlap) crosses() bool {
	return min(o.both, o.smaller-o.both) > crossShare.Value*o.smaller
}

// gap is the mean distance of two contours of which one lies in the other.
func (o overlap) gap() float64 { return 2 * (o.larger - o.smaller) / o.around }

// twice reports whether a contour within another takes up most of it and keeps
// so near to it all round that a receiver may have drawn one edge in both
// places.
func (o overlap) twice(b belief) bool {
	within := twiceSigmas.Value * b.sigma
	return o.both > (1-crossShare.Value)*o.smaller && o.smaller > sharedGround.Value*o.larger && o.middles < within && o.gap() < within
}

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
