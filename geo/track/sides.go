package track

import (
	"math"
	"slices"

	"example.org/turfplat/geo"
)

// A side is a straight part of a ring: the line closest to its places.
type side struct {
	middle, along geo.XY  // along is a unit vector in the order walked
	half          float64 // half its length, m
	joins         bool    // turns little from both its neighbours, as a piece of a curve
	arc           bool    // may bow
}

// sides are those of a ring: which one each sample of the ring belongs to, and
// whether it lies so near a corner that it may belong to the next.
type sides struct {
	of     []int
	corner []bool
	line   []side
}

const mostSides = 24

// divisions returns the ring divided into sides in several ways, from few to
// many, straight or bowed, each side turning from the one before: a corner or a
// curve does, a receiver's wandering hardly.
func (r meanRing) divisions() []sides {
	start := r.sharpest()
	ring := slices.Concat(r.at[start:], r.at[:start])
	step := ringLength(ring) / float64(len(ring))
	every := 1 + len(ring)/200
	thin := make([]geo.XY, 0, len(ring)/every+1)
	for i := 0; i < len(ring); i += every {
		thin = append(thin, ring[i])
	}
	shortest := max(3, int(math.Ceil(4/(step*float64(every)))))
	margin := max(1, int(math.Round(1.5/step)))
	var all []sides
	seen := make(map[int]bool)
	for _, starts := range partings(thin, mostSides, shortest) {
		for i := range starts {
			starts[i] *= every
		}
		starts = turning(ring, starts)
		if seen[len(starts)] || len(starts) < 2 {
			continue
		}
		seen[len(starts)] = true
		s := sidesOf(ring, starts, margin)
		s.of = slices.Concat(s.of[len(ring)-start:], s.of[:len(ring)-start])
		s.corner = slices.Concat(s.corner[len(ring)-start:], s.corner[:len(ring)-start])
		all = append(all, s)
		if bowed, ok := s.bowed(); ok {
			all = append(all, bowed)
		}
	}
	slices.SortStableFunc(all, func(a, b sides) int { return len(a.line) - len(b.line) })
	return all
}

// turning joins parts of a ring that go on straight, the straightest first.
func turning(ring []geo.XY, starts []int) []int {
	for len(starts) > 1 {
		line := sidesOf(ring, starts, 0).line
		straightest, k := sharpestTurn.cos(), 0
		for i := 1; i < len(line); i++ {
			if c := line[i-1].along.Dot(line[i].along); c > straightest {
				straightest, k = c, i
			}
		}
		if k == 0 {
			break
		}
		starts = slices.Delete(starts, k, k+1)
	}
	return starts
}

// sharpest is the sample at which the ring turns most, from five metres before
// to five after.
func (r meanRing) sharpest() int {
	n := len(r.at)
	reach := max(1, min(n/8, int(5/(ringLength(r.at)/float64(n)))))
	best, k := math.Inf(1), 0
	for i, p := range r.at {
		a, b := p.Minus(r.at[(i+n-reach)%n]), r.at[(i+reach)%n].Minus(p)
		if c := a.Dot(b) / max(a.Norm()*b.Norm(), 1e-9); c < best {
			best, k = c, i
		}
	}
	return k
}

// sidesOf lays a line through each part of a ring that starts at the given
// samples.
func sidesOf(ring []geo.XY, starts []int, margin int) sides {
	s := sides{of: make([]int, len(ring)), corner: make([]bool, len(ring))}
	sum := sums(ring)
	for k, lo := range starts {
		hi := len(ring)
		if k+1 < len(starts) {
			hi = starts[k+1]
		}
		m := sum[hi].minus(sum[lo])
		line := side{middle: geo.XY{X: m.x / m.n, Y: m.y / m.n}, along: m.direction(), half: max(1, ring[hi-1].Distance(ring[lo])/2)}
		if line.along.Dot(ring[hi-1].Minus(ring[lo])) < 0 {
			line.along = line.along.Times(-1)
		}
		s.line = append(s.line, line)
		for i := lo; i < hi; i++ {
			s.of[i], s.corner[i] = k, i < lo+margin || i >= hi-margin
		}
	}
	s.markArcs()
	return s
}

// markArcs tells the sides that are pieces of a curve.
func (s sides) markArcs() {
	n := len(s.line)
	turns := func(k int) bool { return s.line[(k+n-1)%n].along.Dot(s.line[k%n].along) < arcTurn.cos() }
	for k := range s.line {
		s.line[k].joins = !turns(k) && !turns(k+1)
		s.line[k].arc = s.line[k].joins
	}
}

// bowed takes all sides for pieces of a curve; false if they are. A small
// round bed turns more from piece to piece than from side to side of a lawn.
func (s sides) bowed() (sides, bool) {
	s.line = slices.Clone(s.line)
	straight := false
	for k := range s.line {
		straight = straight || !s.line[k].arc
		s.line[k].arc = true
	}
	return s, straight
}

// moments are sums over a run of places, from which the line closest to them
// follows.
type moments struct{ n, x, y, xx, xy, yy float64 }

func (m moments) minus(o moments) moments {
	return moments{m.n - o.n, m.x - o.x, m.y - o.y, m.xx - o.xx, m.xy - o.xy, m.yy - o.yy}
}

// spread returns the sums of squares about the mean.
func (m moments) spread() (xx, xy, yy float64) {
	return m.xx - m.x*m.x/m.n, m.xy - m.x*m.y/m.n, m.yy - m.y*m.y/m.n
}

// misfit is the sum of squared distances from the closest line.
func (m moments) misfit() float64 {
	xx, xy, yy := m.spread()
	return max(0, (xx+yy)/2-math.Hypot((xx-yy)/2, xy))
}

// direction is a unit vector along the closest line.
func (m moments) direction() geo.XY {
	xx, xy, yy := m.spread()
	sin, cos := math.Sincos(math.Atan2(2*xy, xx-yy) / 2)
	return geo.XY{X: cos, Y: sin}
}

func sums(places []geo.XY) []moments {
	s := make([]moments, len(places)+1)
	for i, p := range places {
		m := s[i]
		s[i+1] = moments{m.n + 1, m.x + p.X, m.y + p.Y, m.xx + p.X*p.X, m.xy + p.X*p.Y, m.yy + p.Y*p.Y}
	}
	return s
}

// partings returns, for each number of parts up to most, where they start if
// places are divided so that the squared distances from the parts' lines are
// least (Bellman 1961, Comm. ACM 4:284, "On the approximation of curves by
// line segments using dynamic programming").
func partings(places []geo.XY, most, shortest int) [][]int {
	n := len(places)
	sum := sums(places)
	best := make([]float64, n+1) // misfit of the first j places
	for j := range best {
		best[j] = math.Inf(1)
		if j >= shortest {
			best[j] = sum[j].misfit()
		}
	}
	all := [][]int{{0}}
	from := make([][]int, 2, most+1)
	for k := 2; k <= most && k*shortest <= n; k++ {
		next, last := make([]float64, n+1), make([]int, n+1)
		for j := range next {
			next[j] = math.Inf(1)
			for i := (k - 1) * shortest; i+shortest <= j; i++ {
				if best[i] >= next[j] {
					continue
				}
				if c := best[i] + sum[j].minus(sum[i]).misfit(); c < next[j] {
					next[j], last[j] = c, i
				}
			}
		}
		best, from = next, append(from, last)
		starts := make([]int, k)
		for l, j := k, n; l > 1; l-- {
			j = from[l][j]
			starts[l-1] = j
		}
		all = append(all, starts)
	}
	return all
}
