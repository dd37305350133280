package geo

import (
	"slices"
	"sync"
)

// A subdivision is ground divided by the edges of several sets of rings, noded
// together. It tells of each face how often each set goes round it.
//
// An edge, from its spot that comes before to the one that comes after, has
// two sides: side 2i looks along edge i, side 2i+1 back. The face of a side is
// the one to its left.
type subdivision struct {
	from   []int32 // spot at which a side starts, by side
	spots  []spot
	fans   []int32 // sides by the spot they start from, counter-clockwise
	first  []int32 // place in fans of the first of a spot; one more than there are spots
	place  []int32 // place in fans, by side
	rims   []int32 // rim of a face that a side belongs to, by side
	counts [][]lap // by rim: how often the sets go round the face, by set; no zeroes
	steps  []lap   // sets that have an edge, and how often they run along it
	laps   []int32 // place in steps of the first of an edge
	room   []lap   // that counts stand in

	known   []bool // reused while counting: rims whose counts are
	reached []int32
	byRim   []int32 // places in sides of the first of each rim
	sides   []int32 // by rim
}

// subdivisions are those not in use.
var subdivisions = sync.Pool{New: func() any { return new(subdivision) }}

// release gives the room of a subdivision, from which all was read, to others.
func (d *subdivision) release() { subdivisions.Put(d) }

// A lap is how often a set of rings goes round some ground, or along an edge.
type lap struct {
	set   int32
	times int32
}

// subdivided divides the ground by noded strands. What it returns should be
// released.
func (n *noder) subdivided() *subdivision {
	d := subdivisions.Get().(*subdivision)
	index := newSpotIndex(len(n.strands), n.slots, d.spots)
	d.layEdges(n.strands, index)
	d.spots, n.slots = index.spots, index.slots
	d.layFans()
	d.layRims()
	d.count()
	return d
}

// layEdges makes an edge of strands with the same ends. Those that cancel each
// other are left out.
func (d *subdivision) layEdges(strands []strand, index *spotIndex) {
	d.steps, d.from, d.laps = d.steps[:0], d.from[:0], d.laps[:0]
	for from := 0; from < len(strands); {
		s, start := &strands[from], len(d.steps)
		to := from
		for ; to < len(strands) && strands[to].a == s.a && strands[to].b == s.b; to++ {
			o := &strands[to]
			if last := len(d.steps) - 1; last >= start && d.steps[last].set == o.set {
				d.steps[last].times += o.runs
				continue
			}
			d.steps = append(d.steps, lap{o.set, o.runs})
		}
		from = to
		d.steps = append(d.steps[:start], slices.DeleteFunc(d.steps[start:], func(l lap) bool { return l.times == 0 })...)
		if len(d.steps) > start {
			d.laps = append(d.laps, int32(start))
			d.from = append(d.from, index.of(s.a), index.of(s.b))
		}
	}
	d.laps = append(d.laps, int32(len(d.steps)))
}

// layFans orders the sides that start from a spot.
func (d *subdivision) layFans() {
	spots, sides := len(d.spots), len(d.from)
	d.first = blank(d.first, spots+1)
	d.fans, d.place, d.rims = sized(d.fans, sides), sized(d.place, sides), sized(d.rims, sides)
	for _, p := range d.from {
		d.first[p+1]++
	}
	sum(d.first)
	fill(d.first, d.from, d.fans)
	for p := range d.spots {
		fan := d.fans[d.first[p]:d.first[p+1]]
		slices.SortFunc(fan, d.compareTurns)
		for i, side := range fan {
			d.place[side] = d.first[p] + int32(i)
		}
	}
}

// compareTurns puts round a spot the sides to the west first, from north to
// south, then those to the east, from south to north.
func (d *subdivision) compareTurns(a, b int32) int {
	if half := int(b&1) - int(a&1); half != 0 {
		return half // sides that look back lead west
	}
	return -d.way(a).turn(d.way(b))
}

func (d *subdivision) way(side int32) way { return d.spots[d.from[side]].to(d.spots[d.from[side^1]]) }

// clockwise returns the side a number of places clockwise of a given one.
func (d *subdivision) clockwise(side int32, places int32) int32 {
	first, end := d.first[d.from[side]], d.first[d.from[side]+1]
	at := d.place[side] - places
	if at < first {
		at += end - first
	}
	return d.fans[at]
}

// layRims follows the rims of the faces, which keep to the left.
func (d *subdivision) layRims() {
	const none = -1
	for i := range d.rims {
		d.rims[i] = none
	}
	rim := int32(0)
	for start := range d.rims {
		if d.rims[start] != none {
			continue
		}
		for side := int32(start); d.rims[side] == none; side = d.clockwise(side^1, 1) {
			d.rims[side] = rim
		}
		rim++
	}
	d.counts = sized(d.counts, int(rim))
}

// count finds how often the sets go round each face. Edges that hang together
// are reached through each other; of each such group the westernmost spot
// comes first, and what lies west of it tells the rest.
func (d *subdivision) count() {
	d.known, d.reached, d.room = blank(d.known, len(d.counts)), d.reached[:0], d.room[:0]
	d.orderByRim()
	for edge := int32(0); int(edge) < len(d.from)/2; edge++ {
		if d.known[d.rims[2*edge]] {
			continue
		}
		p := d.from[2*edge]
		d.reach(d.rims[d.fans[d.first[p+1]-1]], d.west(d.spots[p]))
		for len(d.reached) > 0 {
			rim := d.reached[len(d.reached)-1]
			d.reached = d.reached[:len(d.reached)-1]
			for _, side := range d.sides[d.byRim[rim]:d.byRim[rim+1]] {
				if over := d.rims[side^1]; !d.known[over] {
					d.reach(over, d.across(d.counts[rim], side))
				}
			}
		}
	}
}

// reach notes the counts of a rim, and that its neighbours can be told now.
func (d *subdivision) reach(rim int32, counts []lap) {
	d.known[rim], d.counts[rim] = true, counts
	d.reached = append(d.reached, rim)
}

// orderByRim orders the sides by their rims.
func (d *subdivision) orderByRim() {
	d.byRim, d.sides = blank(d.byRim, len(d.counts)+1), sized(d.sides, len(d.rims))
	for _, rim := range d.rims {
		d.byRim[rim+1]++
	}
	sum(d.byRim)
	fill(d.byRim, d.rims, d.sides)
}

// sum turns how many there are in each group, one place on, into the place of
// the first of each.
func sum(first []int32) {
	for i := 1; i < len(first); i++ {
		first[i] += first[i-1]
	}
}

// fill puts members, numbered in order, into their groups.
func fill(first, group, members []int32) {
	for i, g := range group {
		members[first[g]] = int32(i)
		first[g]++
	}
	copy(first[1:], first) // each ended where the next began
	first[0] = 0
}

// across returns the counts of the face to the right of a side, that to its
// left being known.
func (d *subdivision) across(left []lap, side int32) []lap {
	sign := int32(-1)
	if side&1 == 1 {
		sign = 1
	}
	return d.added(left, d.runs(side), sign)
}

// runs are the sets that have the edge of a side.
func (d *subdivision) runs(side int32) []lap { return d.steps[d.laps[side/2]:d.laps[side/2+1]] }

// added returns the counts with others times a sign added.
func (d *subdivision) added(counts, others []lap, sign int32) []lap {
	start, sum := len(d.room), d.room
	for len(counts) > 0 || len(others) > 0 {
		switch {
		case len(others) == 0 || len(counts) > 0 && counts[0].set < others[0].set:
			sum, counts = append(sum, counts[0]), counts[1:]
		case len(counts) == 0 || others[0].set < counts[0].set:
			sum, others = append(sum, lap{others[0].set, sign * others[0].times}), others[1:]
		default:
			if times := counts[0].times + sign*others[0].times; times != 0 {
				sum = append(sum, lap{counts[0].set, times})
			}
			counts, others = counts[1:], others[1:]
		}
	}
	d.room = sum
	return sum[start:len(sum):len(sum)]
}

// west returns the counts just west of a spot, and a trifle north, from which
// no side leads west.
func (d *subdivision) west(p spot) []lap {
	var counts []lap
	for side := int32(0); int(side) < len(d.from); side += 2 {
		a, b := d.spots[d.from[side]], d.spots[d.from[side+1]]
		if a.x > p.x {
			break
		}
		if (a.y > p.y) == (b.y > p.y) {
			continue
		}
		if turn := a.to(b).turn(a.to(p)); turn < 0 && b.y > a.y {
			counts = d.added(counts, d.runs(side), -1)
		} else if turn > 0 && b.y < a.y {
			counts = d.added(counts, d.runs(side), 1)
		}
	}
	return counts
}
