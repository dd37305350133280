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
	second     []float64 // from the second vertex to one
	last       []float64 // from one to the last vertex
	lastButOne []float64

	// The parts of secondOrder, for whole shares, that belong to a vertex and:
	itself, before     []float64 // the one before it
	toFirst, fromFinal []float64 // the first vertex, and the last one

	near [3][]float64 // reused: correlations of a vertex and the next, the one after that, the third
	far  [4][]float64 // and of a vertex and the last but one, the last, the first, the second
}

// wayRounds are those not in use.
var wayRounds = sync.Pool{New: func() any { return new(wayRound) }}

// newWayRound returns the ways round a ring on which errors fade to 1/e over
// reach metres; 0 if each vertex errs by itself. It should be released.
func newWayRound(ring Ring, reach float64) *wayRound {
	w := wayRounds.Get().(*wayRound)
	w.fade(ring, reach)
	if len(ring) > 0 {
		w.pair()
	}
	return w
}

func (w *wayRound) release() { wayRounds.Put(w) }

// fade tells what is left of the correlation on the ways round a ring.
func (w *wayRound) fade(ring Ring, reach float64) {
	n := len(ring)
	w.step = blank(w.step, n)
	if reach > 0 {
		for i, p := range ring {
			w.step[i] = math.Exp(-ring.next(i).Distance(p) / reach)
		}
	}
	w.start, w.second = w.fadeFrom(0, w.start), w.fadeFrom(1, w.second)
	w.last, w.lastButOne = w.fadeTo(n-1, w.last), w.fadeTo(n-2, w.lastButOne)
	w.end = sized(w.end, n)
	for i := range ring {
		w.end[i] = w.last[i] * w.step[n-1]
	}
	w.both = 1
	if n > 0 {
		w.both += w.end[0]
	}
}

// fadeFrom tells what is left on the way from a vertex to each later one.
func (w *wayRound) fadeFrom(i int, room []float64) []float64 {
	left := sized(room, len(w.step))
	if i < len(left) {
		left[i] = 1
	}
	for i++; i < len(left); i++ {
		left[i] = left[i-1] * w.step[i-1]
	}
	return left
}

// fadeTo tells what is left on the way to a vertex from each earlier one.
func (w *wayRound) fadeTo(i int, room []float64) []float64 {
	left := sized(room, len(w.step))
	if i >= 0 {
		left[i] = 1
	}
	for i--; i >= 0; i-- {
		left[i] = left[i+1] * w.step[i]
	}
	return left
}

// of returns the correlation of two vertices, of which one is the first or last
// or a neighbour of those, or which are at most three steps apart; it serves
// others as well, in more time. It is told as a multiple of what both ways
// round sum up to, which spares divisions.
func (w *wayRound) of(i, j int) float64 {
	if i == j {
		return w.both
	}
	lo, hi := min(i, j), max(i, j)
	return w.between(lo, hi) + w.start[lo]*w.end[hi]
}

// between is what is left of the correlation on the way from a vertex to a
// later one, without passing the first.
func (w *wayRound) between(lo, hi int) float64 {
	switch n := len(w.step); {
	case lo == 0:
		return w.start[hi]
	case lo == 1:
		return w.second[hi]
	case hi == n-1:
		return w.last[lo]
	case hi == n-2:
		return w.lastButOne[lo]
	}
	left := 1.0
	for _, step := range w.step[lo:hi] {
		left *= step
	}
	return left
}

// pair works out the parts of secondOrder. That of vertices i and j is their
// correlation times the sum of those of the vertices after both and before
// both, less those of one after and one before, over four.
func (w *wayRound) pair() {
	n := len(w.step)
	for k := range w.near {
		w.near[k] = sized(w.near[k], n)
		for i := range n {
			w.near[k][i] = w.of(i, (i+k+1)%n)
		}
	}
	for k := range w.far {
		w.far[k] = sized(w.far[k], n)
		for i := range n {
			w.far[k][i] = w.of(i, (2*n+k-2)%n)
		}
	}
	w.itself, w.before = sized(w.itself, n), sized(w.before, n)
	w.toFirst, w.fromFinal = sized(w.toFirst, n), sized(w.fromFinal, n)
	next, second, third := w.near[0], w.near[1], w.near[2]
	toLastButOne, toLast, toFirst, toSecond := w.far[0], w.far[1], w.far[2], w.far[3]
	quarter := 1 / (4 * w.both * w.both)
	for i := range n {
		b, a := w.beside(i)
		bb, _ := w.beside(b)
		w.itself[i] = (w.both - second[b]) / (2 * w.both)
		w.before[i] = quarter * next[b] * (next[i] - third[bb] - next[b] + next[bb])
		w.toFirst[i] = quarter * toFirst[i] * (toSecond[a] - toLast[a] - toSecond[b] + toLast[b])
		w.fromFinal[i] = quarter * toLast[i] * (toFirst[a] - toFirst[b] - toLastButOne[a] + toLastButOne[b])
	}
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
