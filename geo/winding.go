package geo

import (
	"cmp"
	"slices"
	"sort"
)

// A spoke is an edge of a noded ring seen from one of its ends.
type spoke struct {
	from, to XY
	turns    int // how often the ring runs out along it, less how often back
	left     int // winding number of the ground to the left of it
}

func (s spoke) right() int { return s.left - s.turns }

// bounding reports whether a spoke has wound ground on the left only.
func (s spoke) bounding() bool { return s.left != 0 && s.right() == 0 }

// A spokeList is ordered by from, and round each position counter-clockwise.
type spokeList []spoke

// spokes returns those of a noded ring with the winding numbers beside them.
// The ground west of the westernmost vertex is wound by nothing; a walk along
// the ring tells the rest.
func (r Ring) spokes() spokeList {
	l := make(spokeList, 0, 2*len(r))
	for i, a := range r {
		b := r.next(i)
		l = append(l, spoke{from: a, to: b, turns: 1}, spoke{from: b, to: a, turns: -1})
	}
	slices.SortFunc(l, compareSpokes)
	kept := l[:1]
	for _, s := range l[1:] {
		if last := &kept[len(kept)-1]; last.from == s.from && last.to == s.to {
			last.turns += s.turns
			continue
		}
		kept = append(kept, s)
	}
	kept.wind(r.wound(true))
	return kept
}

// compareSpokes puts round each position the spokes to the west first, from
// north to south, then those to the east, from south to north.
func compareSpokes(s, o spoke) int {
	return cmp.Or(compareXY(s.from, o.from), cmp.Compare(s.half(), o.half()), -orientation(s.from, s.to, o.to))
}

func (s spoke) half() int { return compareXY(s.to, s.from) }

// wind follows a ring that starts at its least position.
func (l spokeList) wind(r Ring) {
	l[0].left = l[0].turns
	l.goRound(0)
	done := make([]bool, len(l)) // by the first spoke of a position
	done[0] = true
	for i, a := range r {
		out := l[l.find(a, r.next(i))]
		back := l.find(out.to, out.from)
		first, _ := l.around(out.to)
		if !done[first] {
			done[first] = true
			l[back].left = out.right()
			l.goRound(back)
		}
	}
}

// goRound finds the winding numbers about a position, one spoke being known.
func (l spokeList) goRound(known int) {
	first, end := l.around(l[known].from)
	left := l[known].left
	for k := 1; k < end-first; k++ {
		s := &l[first+(known-first+k)%(end-first)]
		left += s.turns
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

// measure sums a quantity of the winding number over the ground; it must be 0
// where nothing winds.
func (l spokeList) measure(of func(winding int) int) float64 {
	var sum float64
	origin := l[0].from
	for _, s := range l {
		if s.half() > 0 {
			sum += float64(of(s.left)-of(s.right())) * s.from.minus(origin).cross(s.to.minus(origin)) / 2
		}
	}
	return sum
}

// ground returns the region that is wound at all.
func (l spokeList) ground() Region {
	var shells []Polygon
	var holes []Ring
	for _, edge := range l.edges() {
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

// edges follows the edge of the wound ground, which stays on the left, and at
// each position turns as far to the left as it can.
func (l spokeList) edges() []Ring {
	var rings []Ring
	followed := make([]bool, len(l))
	for i := range l {
		var ring Ring
		for k := i; l[k].bounding() && !followed[k]; {
			followed[k] = true
			ring = append(ring, l[k].from)
			k = l.onwards(k)
		}
		if ring != nil {
			rings = append(rings, ring)
		}
	}
	return rings
}

// onwards returns the first bounding spoke clockwise of the way back.
func (l spokeList) onwards(k int) int {
	back := l.find(l[k].to, l[k].from)
	first, end := l.around(l[k].to)
	n := end - first
	for turn := 1; turn < n; turn++ {
		if next := first + (back-first-turn+n)%n; l[next].bounding() {
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
