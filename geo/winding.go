package geo

import (
	"cmp"
	"slices"
	"sort"
)

// A winding tells how often two sets of rings go round some ground.
type winding [2]int

func (w winding) plus(o winding) winding  { return winding{w[0] + o[0], w[1] + o[1]} }
func (w winding) minus(o winding) winding { return winding{w[0] - o[0], w[1] - o[1]} }

// A spoke is an edge of noded linework seen from one of its ends.
type spoke struct {
	from, to XY
	turns    winding // how often the rings run out along it, less how often back
	left     winding // of the ground to the left of it
}

func (s spoke) right() winding { return s.left.minus(s.turns) }

// A spokeList is ordered by from, and round each position counter-clockwise.
type spokeList []spoke

// spokes returns those of two sets of rings, noded together, with the winding
// numbers beside them.
func spokes(sets [2]linework) spokeList {
	var l spokeList
	for set, w := range sets {
		for _, e := range w.edges() {
			var out, back winding
			out[set], back[set] = 1, -1
			l = append(l, spoke{from: e.a, to: e.b, turns: out}, spoke{from: e.b, to: e.a, turns: back})
		}
	}
	slices.SortFunc(l, compareSpokes)
	kept := l[:0]
	for _, s := range l {
		if n := len(kept); n > 0 && kept[n-1].from == s.from && kept[n-1].to == s.to {
			kept[n-1].turns = kept[n-1].turns.plus(s.turns)
			continue
		}
		kept = append(kept, s)
	}
	kept.wind(slices.Concat(sets[0], sets[1]))
	return kept
}

// compareSpokes puts round each position the spokes to the west first, from
// north to south, then those to the east, from south to north.
func compareSpokes(s, o spoke) int {
	return cmp.Or(compareXY(s.from, o.from), cmp.Compare(s.half(), o.half()), -orientation(s.from, s.to, o.to))
}

func (s spoke) half() int { return compareXY(s.to, s.from) }

// wind walks along the rings, from west to east and each from its westernmost
// vertex. At the first of rings that hang together all spokes lead east, and
// what lies west of it tells the rest.
func (l spokeList) wind(w linework) {
	rings := make(linework, len(w))
	for i, r := range w {
		rings[i] = r.wound(true)
	}
	slices.SortStableFunc(rings, func(a, b Ring) int { return compareXY(a[0], b[0]) })
	done := make([]bool, len(l)) // by the first spoke of a position
	for _, r := range rings {
		if first, _ := l.around(r[0]); !done[first] {
			done[first] = true
			l[first].left = l.west(r[0]).plus(l[first].turns)
			l.goRound(first)
		}
		for i, a := range r {
			out := l[l.find(a, r.next(i))]
			back := l.find(out.to, out.from)
			if first, _ := l.around(out.to); !done[first] {
				done[first] = true
				l[back].left = out.right()
				l.goRound(back)
			}
		}
	}
}

// west returns the winding numbers just west of a position, and a trifle
// north, from which no spoke leads west.
func (l spokeList) west(p XY) winding {
	var w winding
	for _, s := range l {
		if s.from.X > p.X {
			break
		}
		if s.half() > 0 && (s.from.Y > p.Y) != (s.to.Y > p.Y) {
			if turn := orientation(s.from, s.to, p); turn < 0 && s.to.Y > s.from.Y {
				w = w.minus(s.turns)
			} else if turn > 0 && s.to.Y < s.from.Y {
				w = w.plus(s.turns)
			}
		}
	}
	return w
}

// goRound finds the winding numbers about a position, one spoke being known.
func (l spokeList) goRound(known int) {
	first, end := l.around(l[known].from)
	left := l[known].left
	for k := 1; k < end-first; k++ {
		s := &l[first+(known-first+k)%(end-first)]
		left = left.plus(s.turns)
		s.left = left
	}
}

func (l spokeList) find(from, to XY) int {
	i, _ := slices.BinarySearchFunc(l, spoke{from: from, to: to}, compareSpokes)
	return i
}

// around returns the range of the spokes of a position.
func (l spokeList) around(p XY) (first, end int) {
	first = sort.Search(len(l), func(i int) bool { return compareXY(l[i].from, p) >= 0 })
	end = sort.Search(len(l), func(i int) bool { return compareXY(l[i].from, p) > 0 })
	return first, end
}

// measure sums a quantity of the winding numbers over the ground; it must be 0
// where nothing winds.
func (l spokeList) measure(of func(winding) int) float64 {
	var sum float64
	origin := l[0].from
	for _, s := range l {
		if s.half() > 0 {
			sum += float64(of(s.left)-of(s.right())) * s.from.minus(origin).cross(s.to.minus(origin)) / 2
		}
	}
	return sum
}

// ground returns the region of all ground wound in a certain way, which that
// outside all rings must not be.
func (l spokeList) ground(wound func(winding) bool) Region {
	var shells []Polygon
	var holes []Ring
	for _, edge := range l.edges(wound) {
		for _, loop := range edge.loops() {
			switch area := loop.signedArea(); {
			case max(area, -area) < grain*loop.length(): // thinner than a grain
			case area > 0:
				shells = append(shells, Polygon{Shell: loop})
			default:
				holes = append(holes, loop)
			}
		}
	}
	return regionOf(nested(shells, holes))
}

// edges follows the edge of ground wound in a certain way, which stays on the
// left, and at each position turns as far to the left as it can.
func (l spokeList) edges(wound func(winding) bool) []Ring {
	var rings []Ring
	bounding, followed := make([]bool, len(l)), make([]bool, len(l))
	for i, s := range l {
		bounding[i] = wound(s.left) && !wound(s.right())
	}
	for i := range l {
		var ring Ring
		for k := i; bounding[k] && !followed[k]; {
			followed[k] = true
			ring = append(ring, l[k].from)
			k = l.onwards(k, bounding)
		}
		if ring != nil {
			rings = append(rings, ring)
		}
	}
	return rings
}

// onwards returns the first bounding spoke clockwise of the way back.
func (l spokeList) onwards(k int, bounding []bool) int {
	back := l.find(l[k].to, l[k].from)
	first, end := l.around(l[k].to)
	n := end - first
	for turn := 1; turn < n; turn++ {
		if next := first + (back-first-turn+n)%n; bounding[next] {
			return next
		}
	}
	return back
}

// loops takes a ring that touches itself apart at each position it comes back
// to.
func (r Ring) loops() []Ring {
	var loops []Ring
	var path Ring
	seen := make(map[XY]int) // place in path
	for _, p := range append(slices.Clone(r), r[0]) {
		start, again := seen[p]
		if !again {
			seen[p] = len(path)
			path = append(path, p)
			continue
		}
		loops = append(loops, slices.Clone(path[start:]))
		for _, q := range path[start+1:] {
			delete(seen, q)
		}
		path = path[:start+1]
	}
	return loops
}

// nested puts each hole into the smallest shell round it. The middle of an
// edge of a hole never lies on a shell.
func nested(shells []Polygon, holes []Ring) []Polygon {
	slices.SortStableFunc(shells, func(a, b Polygon) int { return cmp.Compare(a.Shell.signedArea(), b.Shell.signedArea()) })
	for _, h := range holes {
		middle := h[0].toward(h[1], 0.5)
		if i := slices.IndexFunc(shells, func(p Polygon) bool { return p.Shell.locate(middle) == inside }); i >= 0 {
			shells[i].Holes = append(shells[i].Holes, h)
		}
	}
	return shells
}
