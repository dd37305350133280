package geo

import "math"

// vertexVariance returns the variance of an area, m4, of which the exposed
// parts of a ring are the edge, when the ring's vertices err with variance
// sigma2 on each axis, correlated over reach metres of the way round.
func vertexVariance(ring Ring, exposed []exposure, sigma2, reach float64) float64 {
	if len(exposed) == 0 {
		return 0
	}
	gradient, share := gradients(ring, exposed)
	w := newWayRound(ring, reach)
	return sigma2*w.firstOrder(gradient) + sigma2*sigma2*w.secondOrder(share)
}

// gradients returns, for each vertex, how the area grows with its position,
// and which share of its two edges is exposed. A displacement runs linearly
// along an edge from vertex to vertex.
func gradients(ring Ring, exposed []exposure) ([]XY, []float64) {
	gradient, share := make([]XY, len(ring)), make([]float64, len(ring))
	for _, x := range exposed {
		i, j := x.edge, (x.edge+1)%len(ring)
		way := ring[j].minus(ring[i])
		normal := XY{way.Y, -way.X}.times(x.outward) // to the right, as long as the edge
		length := x.part.to - x.part.from
		end := (x.part.to*x.part.to - x.part.from*x.part.from) / 2 // integral of t
		gradient[i] = gradient[i].plus(normal.times(length - end))
		gradient[j] = gradient[j].plus(normal.times(end))
		share[i] += length / 2
		share[j] += length / 2
	}
	return gradient, share
}

// A wayRound gives the correlation of errors between the vertices of a ring:
// exponential in the way along it, both ways round, so that equal steps make
// it the circular autoregressive series of first order.
//
// For vertices in order it is a sum of products, one factor for each vertex
// (see ahead and behind). That lets sums over all pairs run up in one pass.
type wayRound struct {
	at            []float64 // way from the first vertex
	around, reach float64
	both          float64 // sum of the ways round, for a vertex and itself
}

func newWayRound(ring Ring, reach float64) wayRound {
	w := wayRound{at: make([]float64, len(ring)), reach: reach}
	for i, p := range ring {
		w.at[i] = w.around
		w.around += ring.next(i).minus(p).norm()
	}
	w.both = 1 + w.fade(w.around)
	return w
}

// fade is what is left of the correlation after a way d; nothing if each
// vertex errs by itself.
func (w wayRound) fade(d float64) float64 {
	if w.reach == 0 {
		return 0
	}
	return math.Exp(-d / w.reach)
}

func (w wayRound) correlation(i, j int) float64 {
	if i == j {
		return 1
	}
	d := math.Abs(w.at[i] - w.at[j])
	return (w.fade(d) + w.fade(w.around-d)) / w.both
}

// ahead and behind make up the correlation of vertex i and an earlier j:
// ahead(i)[0]*behind(j)[0] + ahead(i)[1]*behind(j)[1]. The mark lies between
// the two and keeps all exponents below zero.
func (w wayRound) ahead(i int, mark float64) [2]float64 {
	return [2]float64{w.fade(w.at[i]-mark) / w.both, w.fade(w.around-w.at[i]) / w.both}
}

func (w wayRound) behind(j int, mark float64) [2]float64 {
	return [2]float64{w.fade(mark - w.at[j]), w.fade(w.at[j])}
}

// firstOrder returns g'Cg: C the correlations, g the gradient.
func (w wayRound) firstOrder(gradient []XY) float64 {
	var own, pairs float64
	var sum [2]XY // of gradient times behind, over the earlier vertices
	mark := 0.0
	for i, g := range gradient {
		sum[0] = sum[0].times(w.fade(w.at[i] - mark))
		mark = w.at[i]
		a := w.ahead(i, mark)
		own += g.dot(g)
		pairs += g.dot(sum[0].times(a[0]).plus(sum[1].times(a[1])))
		b := w.behind(i, mark)
		sum[0], sum[1] = sum[0].plus(g.times(b[0])), sum[1].plus(g.times(b[1]))
	}
	return own + 2*pairs
}

// secondOrder returns tr(BCB'C): C the correlations and B that of the
// traverse sum, half the step to the next vertex less half that to the one
// before, each vertex weighted by its share.
func (w wayRound) secondOrder(share []float64) float64 {
	n := len(share)
	own, pairs := w.pair(0, 0, share), 0.0
	for i := 1; i < n; i++ {
		own += w.pair(i, i, share)
		pairs += w.pair(i, i-1, share)
	}
	for i := 2; i < n; i++ { // pairs across the start of the ring
		pairs += w.pair(i, 0, share)
	}
	for j := 1; j < n-2; j++ {
		pairs += w.pair(n-1, j, share)
	}
	return own + 2*(pairs+w.distantPairs(share))
}

// pair returns the part of secondOrder that belongs to two vertices.
func (w wayRound) pair(i, j int, share []float64) float64 {
	n := len(share)
	before, after := (i+n-1)%n, (i+1)%n
	former, latter := (j+n-1)%n, (j+1)%n
	stepped := w.correlation(after, latter) - w.correlation(after, former) -
		w.correlation(before, latter) + w.correlation(before, former)
	return w.correlation(i, j) * stepped / 4 * share[i] * share[j]
}

// distantPairs sums what pair gives for all pairs that are two steps apart or
// more without passing the start of the ring.
func (w wayRound) distantPairs(share []float64) float64 {
	var total float64
	var sum [2][2]float64 // of share times behind times the step of behind
	for i := 3; i < len(share)-1; i++ {
		mark, j := w.at[i-1], i-2
		decay := w.fade(mark - w.at[i-2])
		here, after, before := w.behind(j, mark), w.behind(j+1, mark), w.behind(j-1, mark)
		ahead, next, last := w.ahead(i, mark), w.ahead(i+1, mark), w.ahead(i-1, mark)
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
