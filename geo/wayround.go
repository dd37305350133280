package geo

import (
	"math"
	"sync"
)

// A wayRound gives the correlation of errors between the vertices of a ring:
// exponential in the way along it, both ways round, so that equal steps make
// it the circular autoregressive series of first order.
//
// For vertices in order it is a sum of products, one factor for each vertex
// (see ahead and behind). That lets sums over all pairs run up in one pass.
type wayRound struct {
	both float64 // sum of the ways round, for a vertex and itself

	// What is left of the correlation on the way:
	step       []float64 // from a vertex to the next
	start, end []float64 // from the first vertex to one, and from one on to the first

	// The parts of secondOrder, for whole shares, that belong to a vertex and:
	itself, before     []float64 // the one before it, of the first itself
	toFirst, fromFinal []float64 // the first vertex, and the last one
}

// newWayRound returns the ways round a ring on which errors fade to 1/e over
// reach metres; 0 if each vertex errs by itself.
func newWayRound(ring Ring, reach float64) wayRound {
	n := len(ring)
	if n == 0 {
		return wayRound{}
	}
	c := correlations.Get().(*correlation)
	defer correlations.Put(c)
	c.between(ring, reach)
	w := c.wayRound
	for i := range ring {
		w.itself[i], w.before[i] = c.pair(i, i), c.pair(i, max(0, i-1))
		w.toFirst[i], w.fromFinal[i] = c.pair(i, 0), c.pair(n-1, i)
	}
	return w
}

// A correlation is that of two vertices, of which one is the first or last or a
// neighbour of those, or which are at most three steps apart; it serves others
// as well, in more time. It is told as a multiple of what both ways round sum
// up to, which spares divisions.
type correlation struct {
	wayRound
	second     []float64 // what is left on the way from the second vertex to one
	last       []float64 // from one to the last vertex
	lastButOne []float64
}

// correlations are those not in use.
var correlations = sync.Pool{New: func() any { return new(correlation) }}

// between makes it that of the vertices of a ring.
func (c *correlation) between(ring Ring, reach float64) {
	n := len(ring)
	rows := make([]float64, 7*n)
	row := func() []float64 {
		first := rows[:n:n]
		rows = rows[n:]
		return first
	}
	w := wayRound{step: row(), start: row(), end: row(), itself: row(), before: row(), toFirst: row(), fromFinal: row()}
	if reach > 0 {
		for i, p := range ring {
			w.step[i] = math.Exp(-ring.next(i).Distance(p) / reach)
		}
	}
	c.second, c.last, c.lastButOne = sized(c.second, n), sized(c.last, n), sized(c.lastButOne, n)
	w.fadeFrom(0, w.start)
	w.fadeFrom(min(1, n-1), c.second)
	w.fadeTo(n-1, c.last)
	w.fadeTo(max(0, n-2), c.lastButOne)
	for i := range ring {
		w.end[i] = c.last[i] * w.step[n-1]
	}
	w.both = 1 + w.end[0]
	c.wayRound = w
}

// fadeFrom tells what is left on the way from a vertex to each later one.
func (w *wayRound) fadeFrom(i int, left []float64) {
	left[i] = 1
	for i++; i < len(left); i++ {
		left[i] = left[i-1] * w.step[i-1]
	}
}

// fadeTo tells what is left on the way to a vertex from each earlier one.
func (w *wayRound) fadeTo(i int, left []float64) {
	left[i] = 1
	for i--; i >= 0; i-- {
		left[i] = left[i+1] * w.step[i]
	}
}

func (c *correlation) of(i, j int) float64 {
	if i == j {
		return c.both
	}
	lo, hi := min(i, j), max(i, j)
	return c.fade(lo, hi) + c.start[lo]*c.end[hi]
}

// fade is what is left of the correlation on the way from a vertex to a later
// one, without passing the first.
func (c *correlation) fade(lo, hi int) float64 {
	switch n := len(c.step); {
	case lo == 0:
		return c.start[hi]
	case lo == 1:
		return c.second[hi]
	case hi == n-1:
		return c.last[lo]
	case hi == n-2:
		return c.lastButOne[lo]
	}
	fade := 1.0
	for _, step := range c.step[lo:hi] {
		fade *= step
	}
	return fade
}

// pair returns the part of secondOrder that belongs to two vertices of whole
// shares.
func (c *correlation) pair(i, j int) float64 {
	before, after := c.beside(i)
	former, latter := c.beside(j)
	stepped := c.of(after, latter) - c.of(after, former) - c.of(before, latter) + c.of(before, former)
	return c.of(i, j) * stepped / (4 * c.both * c.both)
}

// beside returns the vertices before and after one.
func (w *wayRound) beside(i int) (before, after int) {
	before, after = i-1, i+1
	if i == 0 {
		before = len(w.step) - 1
	}
	if after == len(w.step) {
		after = 0
	}
	return before, after
}

// ahead makes up the correlation of a vertex and an earlier one, with behind
// of that one: the sum of their products. Between the two lies a mark, to
// which fade leads; it keeps all exponents below zero.
func (w *wayRound) ahead(i int, fade float64) [2]float64 {
	return [2]float64{fade / w.both, w.end[i] / w.both}
}

func (w *wayRound) behind(j int, fade float64) [2]float64 { return [2]float64{fade, w.start[j]} }

// firstOrder returns g'Cg: C the correlations, g the gradient.
func (w *wayRound) firstOrder(gradient []XY) float64 {
	var own, pairs float64
	var sum [2]XY // of gradient times behind, over the earlier vertices
	for i, g := range gradient {
		if i > 0 {
			sum[0] = sum[0].Times(w.step[i-1])
		}
		a := w.ahead(i, 1) // the mark lies at the vertex
		own += g.Dot(g)
		pairs += g.Dot(sum[0].Times(a[0]).Plus(sum[1].Times(a[1])))
		b := w.behind(i, 1)
		sum[0], sum[1] = sum[0].Plus(g.Times(b[0])), sum[1].Plus(g.Times(b[1]))
	}
	return own + 2*pairs
}

// secondOrder returns tr(BCB'C): C the correlations and B that of the
// traverse sum, half the step to the next vertex less half that to the one
// before, each vertex weighted by its share.
func (w *wayRound) secondOrder(share []float64) float64 {
	n := len(share)
	var own, pairs float64
	for i, of := range share {
		own += w.itself[i] * of * of
	}
	for i := 1; i < n; i++ {
		pairs += w.before[i] * share[i] * share[i-1]
	}
	for i := 2; i < n; i++ { // pairs across the start of the ring
		pairs += w.toFirst[i] * share[i] * share[0]
	}
	for j := 1; j < n-2; j++ {
		pairs += w.fromFinal[j] * share[n-1] * share[j]
	}
	return own + 2*(pairs+w.distantPairs(share))
}

// distantPairs sums what pair gives for all pairs that are two steps apart or
// more without passing the start of the ring.
func (w *wayRound) distantPairs(share []float64) float64 {
	var total float64
	var sum [2][2]float64 // of share times behind times the step of behind
	for i := 3; i < len(share)-1; i++ {
		j := i - 2 // the mark lies at the vertex between
		decay := w.step[j]
		here, after, before := w.behind(j, decay), w.behind(j+1, 1), w.behind(j-1, w.step[j-1]*decay)
		ahead, next, last := w.ahead(i, w.step[i-1]), w.ahead(i+1, w.step[i-1]*w.step[i]), w.ahead(i-1, 1)
		sum[0][0] *= decay * decay
		sum[0][1] *= decay
		sum[1][0] *= decay
		for k := range 2 {
			for l := range 2 {
				sum[k][l] += share[j] * here[k] * (after[l] - before[l])
				total += share[i] / 4 * ahead[k] * (next[l] - last[l]) * sum[k][l]
			}
		}
	}
	return total
}
