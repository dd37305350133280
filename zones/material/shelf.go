package material

import "math"

const (
	// finestGrain is how many times the grain may go into the largest pack.
	finestGrain = 1000
	// needRounding is how much of itself the need may exceed packs by, for
	// rounding of the arithmetic.
	needRounding = 1e-12
)

// A shelf holds packs whose sizes are counted in grains. One of them is the
// staple: the cheapest for what it holds if costs are known, else the largest.
// Of other packs no more are ever wanted than grains in the staple, less one,
// for among so many there are some that staples can stand in for: of any n
// whole numbers, some add up to a multiple of n.
type shelf struct {
	packs  []Pack
	grain  float64
	grains []int // in each pack; 0 of those too small to count
	staple int
	costed bool
}

func newShelf(packs []Pack) *shelf {
	s := &shelf{packs: packs, grains: make([]int, len(packs)), costed: true}
	largest := 0.0
	for _, p := range packs {
		largest = max(largest, p.Size.Size)
		s.costed = s.costed && p.Cost > 0
	}
	steps := commonSteps(packs, largest)
	s.grain = largest / float64(steps)
	for i, p := range packs {
		s.grains[i] = int(p.Size.Size/s.grain + needRounding*float64(steps))
		if s.grains[i] > 0 && (s.grains[s.staple] == 0 || s.better(i, s.staple)) {
			s.staple = i
		}
	}
	return s
}

// better reports whether one pack is a better staple than another.
func (s *shelf) better(i, j int) bool {
	if s.costed {
		each := func(i int) float64 { return s.packs[i].Cost / float64(s.grains[i]) }
		if c := compareCost(each(i), each(j)); c != 0 {
			return c < 0
		}
	}
	return s.grains[i] > s.grains[j]
}

// commonSteps returns the least number of steps in the largest pack of which
// all packs are multiples, or finestGrain if there is none so low.
func commonSteps(packs []Pack, largest float64) int {
	for steps := 1; steps <= finestGrain; steps++ {
		common := true
		for _, p := range packs {
			in := p.Size.Size / largest * float64(steps)
			common = common && math.Abs(in-math.Round(in)) <= needRounding*in
		}
		if common {
			return steps
		}
	}
	return finestGrain
}

// A picking is packs, other than staples, that hold so many grains together.
type picking struct {
	count int
	cost  float64
	last  int // the pack taken last
}

// take returns the best packs for a need.
func (s *shelf) take(need float64) []PackCount {
	needed := int(math.Ceil(need / s.grain * (1 - needRounding)))
	pickings := s.pickings(needed)
	var best order
	chosen := -1
	for sum := range pickings {
		if sum > 0 && pickings[sum].count == 0 {
			continue
		}
		if o := s.order(pickings[sum], sum, needed); chosen < 0 || o.before(best, s.costed) {
			best, chosen = o, sum
		}
	}
	counts := make([]int, len(s.packs))
	counts[s.staple] = best.staples
	for sum := chosen; sum > 0; sum -= s.grains[pickings[sum].last] {
		counts[pickings[sum].last]++
	}
	return counted(s.packs, counts)
}

// pickings returns for each number of grains the best picking that holds just
// so many; those with no count hold none.
func (s *shelf) pickings(needed int) []picking {
	other := 0 // the largest that is not the staple
	for i, n := range s.grains {
		if i != s.staple {
			other = max(other, n)
		}
	}
	most := min((s.grains[s.staple]-1)*other, needed+other)
	pickings := make([]picking, most+1)
	for sum := 1; sum <= most; sum++ {
		for i, n := range s.grains {
			if i == s.staple || n == 0 || n > sum || (sum > n && pickings[sum-n].count == 0) {
				continue
			}
			before := pickings[sum-n]
			p := picking{before.count + 1, before.cost + s.packs[i].Cost, i}
			if pickings[sum].count == 0 || p.before(pickings[sum], s.costed) {
				pickings[sum] = p
			}
		}
	}
	return pickings
}

func (p picking) before(q picking, costed bool) bool {
	if c := compareCost(p.cost, q.cost); costed && c != 0 {
		return c < 0
	}
	return p.count < q.count
}

// An order is a picking made up with staples.
type order struct {
	picking
	staples  int
	leftOver int // grains
}

func (s *shelf) order(p picking, sum, needed int) order {
	staple := s.grains[s.staple]
	n := max(0, (needed-sum+staple-1)/staple)
	return order{picking{p.count + n, p.cost + float64(n)*s.packs[s.staple].Cost, p.last}, n, sum + n*staple - needed}
}

func (o order) before(q order, costed bool) bool {
	if c := compareCost(o.cost, q.cost); costed && c != 0 {
		return c < 0
	}
	if o.leftOver != q.leftOver {
		return o.leftOver < q.leftOver
	}
	return o.count < q.count
}

// compareCost compares sums of money that may have come about differently.
func compareCost(a, b float64) int {
	const rounding = 1e-9
	switch {
	case a < b-rounding*b:
		return -1
	case a > b+rounding*b:
		return 1
	}
	return 0
}
