package geo

// vertexVariance returns the variance of an area, m4, of which the exposed
// parts of a ring are the edge, when the ring's vertices err with variance
// sigma2 on each axis, correlated by the way round.
func (c *claims) vertexVariance(ring Ring, exposed []exposure, sigma2 float64, w *wayRound) float64 {
	if len(exposed) == 0 {
		return 0
	}
	gradient, share := c.gradients(ring, exposed)
	return sigma2*w.firstOrder(gradient) + sigma2*sigma2*w.secondOrder(share)
}

// gradients returns, for each vertex, how the area grows with its position,
// and which share of its two edges is exposed. A displacement runs linearly
// along an edge from vertex to vertex.
// Both are good until the next are asked for.
func (c *claims) gradients(ring Ring, exposed []exposure) ([]XY, []float64) {
	n := len(ring)
	c.gradient, c.share = blank(c.gradient, n), blank(c.share, n)
	gradient, share := c.gradient, c.share
	for _, x := range exposed {
		i, j := x.edge, (x.edge+1)%len(ring)
		way := ring[j].Minus(ring[i])
		normal := XY{way.Y, -way.X}.Times(x.outward) // to the right, as long as the edge
		length := x.part.to - x.part.from
		end := (x.part.to*x.part.to - x.part.from*x.part.from) / 2 // integral of t
		gradient[i] = gradient[i].Plus(normal.Times(length - end))
		gradient[j] = gradient[j].Plus(normal.Times(end))
		share[i] += length / 2
		share[j] += length / 2
	}
	return gradient, share
}
