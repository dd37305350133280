package geo

import (
	"cmp"
	"math"
	"math/bits"
	"slices"
	"sync"
)

// Strands are noded when they share ends and whole strands only. Where two
// cross, or one passes through the square of side mesh about an end of
// another, they get a common end there, and so move by up to half a mesh.
// That all strands keep clear of all such squares is what keeps moving one
// from making it cross others (Hobby 1999, "Practical segment intersection
// with finite precision output").

// A stop is a spot at which a strand is to be divided.
type stop struct {
	strand int
	at     spot
}

// A noder nodes strands, and keeps count of what it found.
type noder struct {
	strands   []strand
	stops     []stop
	crossings int  // pairs of strands that pass through each other, at first sight
	first     spot // the first of them from west to east
	limit     int  // of crossings

	fresh  []strand // reused, as is all room of a noder
	order  []uint64
	listed []int32
	slots  []int32
}

// noders are those not in use.
var noders = sync.Pool{New: func() any { return new(noder) }}

// newNoder returns a noder without strands. It should be released when what it
// made of them was read off it.
func newNoder(limit int) *noder {
	n := noders.Get().(*noder)
	n.strands, n.limit = n.strands[:0], limit
	return n
}

func (n *noder) release() { noders.Put(n) }

// add adds the edge of a set from one position to another.
func (n *noder) add(set int, from, to XY) {
	if p, q := spotOf(from), spotOf(to); p != q {
		n.strands = append(n.strands, strandOf(set, p, q))
	}
}

// addRegion adds the edges of a region as those of a set.
func (n *noder) addRegion(set int, r Region) {
	first := len(n.strands)
	r.edges(func(a, b XY) { n.add(set, a, b) })
	for i := first; i < len(n.strands); i++ {
		n.strands[i].clear = r.clear
	}
}

// node nodes the strands and leaves them in order. ErrTangled says that there
// are more crossings than the limit. One round does, if rounding is kind; a few
// settle it.
func (n *noder) node() error {
	const rounds = 16
	for round := range rounds {
		n.sort()
		n.stops = n.stops[:0]
		if crossings, first := n.compare(); round == 0 {
			n.crossings, n.first = crossings, first
		}
		if n.crossings > n.limit {
			break
		}
		if len(n.stops) == 0 {
			return nil
		}
		n.divide()
	}
	return ErrTangled
}

// sort brings fresh strands into order with the others, which are in order.
func (n *noder) sort() {
	n.fresh = n.fresh[:0]
	known := n.strands[:0]
	for i := range n.strands {
		if s := &n.strands[i]; s.fresh {
			n.fresh = append(n.fresh, *s)
		} else {
			known = append(known, *s)
		}
	}
	n.orderFresh()
	order := n.order
	for i := len(n.strands) - 1; len(order) > 0; i-- {
		f := &n.fresh[uint32(order[len(order)-1])]
		if k := len(known) - 1; k >= 0 && compareStrands(&known[k], f) > 0 {
			n.strands[i], known = known[k], known[:k]
		} else {
			n.strands[i], order = *f, order[:len(order)-1]
		}
	}
}

// orderFresh orders the fresh strands. A key tells how far east one starts, as
// exactly as fits above its number; those that start as far are compared.
func (n *noder) orderFresh() {
	n.order = sized(n.order, len(n.fresh))
	west, east := int64(math.MaxInt64), int64(math.MinInt64)
	for i := range n.fresh {
		x := n.fresh[i].a.x
		west, east = min(west, x), max(east, x)
	}
	coarse := max(0, bits.Len64(uint64(east-west))-32)
	for i := range n.fresh {
		n.order[i] = uint64(n.fresh[i].a.x-west)>>coarse<<32 | uint64(i)
	}
	slices.Sort(n.order)
	for from, to := 0, 0; from < len(n.order); from = to {
		for to = from + 1; to < len(n.order) && n.order[to]>>32 == n.order[from]>>32; to++ {
		}
		if to > from+1 {
			slices.SortFunc(n.order[from:to], func(p, q uint64) int {
				return compareStrands(&n.fresh[uint32(p)], &n.fresh[uint32(q)])
			})
		}
	}
}

// compare finds the stops of strands not compared before, by a sweep from west
// to east. It returns how many pairs pass through each other, and where the
// first does; it gives up when there are more than the limit.
func (n *noder) compare() (crossings int, first spot) {
	n.listFresh()
	fresh := n.listed
	pair := func(i, j int) (goOn bool) {
		at, crosses := n.meet(i, j)
		if !crosses {
			return true
		}
		if crossings++; crossings == 1 {
			first = at
		}
		return crossings <= n.limit
	}
	for i := range n.strands {
		s := &n.strands[i]
		south, north := s.south(), s.north()
		if !s.fresh {
			for _, j := range fresh {
				o := &n.strands[j]
				if o.a.x > s.b.x {
					break
				}
				if o.reaches(south, north) && !pair(i, int(j)) {
					return crossings, first
				}
			}
			continue
		}
		fresh = fresh[1:]
		for j := i + 1; j < len(n.strands) && n.strands[j].a.x <= s.b.x; j++ {
			if n.strands[j].reaches(south, north) && !pair(i, j) {
				return crossings, first
			}
		}
	}
	for i := range n.strands {
		n.strands[i].fresh = false
	}
	return crossings, first
}

// listFresh lists the strands not yet compared, in order.
func (n *noder) listFresh() {
	n.listed = n.listed[:0]
	for i := range n.strands {
		if n.strands[i].fresh {
			n.listed = append(n.listed, int32(i))
		}
	}
}

// meet notes where two strands have to be divided, and tells where they cross.
func (n *noder) meet(i, j int) (crossing spot, crosses bool) {
	s, o := &n.strands[i], &n.strands[j]
	if s.clear && o.clear && s.set == o.set || s.a == o.a && s.b == o.b || s.clearOf(o) {
		return spot{}, false
	}
	told := len(n.stops)
	n.stopAt(i, o.a)
	n.stopAt(i, o.b)
	n.stopAt(j, s.a)
	n.stopAt(j, s.b)
	apart := !o.ends(s.a) && !o.ends(s.b)
	if !apart || !s.crosses(*o) {
		return spot{}, false
	}
	crossing = s.crossing(*o)
	if len(n.stops) == told {
		if !s.ends(crossing) {
			n.stops = append(n.stops, stop{i, crossing})
		}
		if !o.ends(crossing) {
			n.stops = append(n.stops, stop{j, crossing})
		}
	}
	return crossing, true
}

// stopAt notes a stop if the strand passes the end of another.
func (n *noder) stopAt(i int, p spot) {
	if s := &n.strands[i]; !s.ends(p) && s.passes(p) {
		n.stops = append(n.stops, stop{i, p})
	}
}

// divide divides the strands at their stops.
func (n *noder) divide() {
	slices.SortFunc(n.stops, func(p, q stop) int {
		return cmp.Or(cmp.Compare(p.strand, q.strand), n.strands[p.strand].compareAlong(p.at, q.at))
	})
	for from := 0; from < len(n.stops); {
		i := n.stops[from].strand
		s := n.strands[i]
		at, started := s.a, false
		add := func(to spot) {
			if to == at {
				return
			}
			part := strandOf(int(s.set), at, to)
			part.runs *= s.runs
			if at = to; started {
				n.strands = append(n.strands, part)
				return
			}
			n.strands[i], started = part, true
		}
		for ; from < len(n.stops) && n.stops[from].strand == i; from++ {
			add(n.stops[from].at)
		}
		add(s.b)
	}
}
