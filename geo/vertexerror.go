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
	c := newWayRound(ring, reach)
	n := len(ring)
	var first, second float64
	for i := range n {
		prev, next := (i+n-1)%n, (i+1)%n
		for _, j := range c.near(i) {
			before, after := (j+n-1)%n, (j+1)%n
			cij := c.correlation(i, j)
			bcb := c.correlation(next, after) - c.correlation(next, before) - c.correlation(prev, after) + c.correlation(prev, before)
			first += cij * gradient[i].dot(gradient[j])
			second += cij * bcb / 4 * share[i] * share[j]
		}
	}
	return sigma2*first + sigma2*sigma2*second
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
type wayRound struct {
	at            []float64 // way from the first vertex
	around, reach float64
}

func newWayRound(ring Ring, reach float64) wayRound {
	w := wayRound{at: make([]float64, len(ring)), reach: reach}
	for i, p := range ring {
		w.at[i] = w.around
		w.around += ring.next(i).minus(p).norm()
	}
	return w
}

func (w wayRound) correlation(i, j int) float64 {
	if i == j {
		return 1
	}
	if w.reach == 0 {
		return 0
	}
	d := math.Abs(w.at[i] - w.at[j])
	return (math.Exp(-d/w.reach) + math.Exp((d-w.around)/w.reach)) / (1 + math.Exp(-w.around/w.reach))
}

// near returns the vertices whose errors go with that of vertex i: those less
// than 8 reaches away, beyond which the correlation is under 0.0004. Only the
// neighbours count where vertices err by themselves.
func (w wayRound) near(i int) []int {
	n := len(w.at)
	js := []int{i}
	for _, step := range []int{1, n - 1} {
		for j := (i + step) % n; len(js) < n && w.apart(i, j) <= 8*w.reach; j = (j + step) % n {
			js = append(js, j)
		}
	}
	return js
}

// apart returns the shorter way round between two vertices.
func (w wayRound) apart(i, j int) float64 {
	d := math.Abs(w.at[i] - w.at[j])
	return min(d, w.around-d)
}
