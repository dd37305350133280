package geo

import (
	"math"
	"slices"
)

// An EdgeError says how far a traced edge may lie from the true one, and how
// the errors along it hang together.
type EdgeError struct {
	Sigma Length // 1-sigma error of a vertex on each axis
	Kind  ErrorKind
	Reach Length // Vertices: the way along the ring over which errors fade to 1/e; 0 = each vertex errs by itself
}

// ErrorKind is the way errors along one ring hang together.
type ErrorKind int

const (
	// Vertices err around their true places, near ones alike. To first order
	// the variance of the area is g'Cg with g the gradient of the area and C
	// the covariance of the vertices (Bondesson, Stahl & Holm 1998, Forest
	// Science 44:405-413, for independent vertices; Bogaert, Delince & Kay
	// 2005, Meas. Sci. Technol. 16:1170-1178, with correlation; the latter from
	// memory); the second-order term tr(BCB'C) is added.
	Vertices ErrorKind = iota
	// Width: all edges lie too far out, or too far in, together.
	Width
	// Walk: the edge of one walked lap. Its correlation is not known; 0.45
	// sigma times the length bounds the error over six shapes and correlation
	// times of 5 to 120 s (own simulation, 600 walks each).
	Walk
)

const walkBound = 0.45

// A Trace is an object as it was traced: its rings, in any order and winding,
// and the error of their edges.
type Trace struct {
	Rings []Ring
	Error EdgeError
}

// AreaSigma is that of [Traces], for a single region.
func AreaSigma(r Region, traces []Trace) Area { return NewTraces(traces).AreaSigma(r) }

// Traces are objects as they were traced, made ready to tell the error of the
// areas that they bound.
type Traces struct{ traces []readyTrace }

type readyTrace struct {
	rings []Ring      // without repeats: a vertex traced twice errs once
	ways  []*wayRound // of Vertices
	error EdgeError
}

// NewTraces makes traces ready. Where edges of several coincide the first one
// counts.
func NewTraces(traces []Trace) Traces {
	all := make([]readyTrace, len(traces))
	for i, t := range traces {
		r := readyTrace{rings: make([]Ring, len(t.Rings)), error: t.Error}
		for k, ring := range t.Rings {
			r.rings[k] = ring.withoutRepeats()
			if t.Error.Kind == Vertices {
				r.ways = append(r.ways, newWayRound(r.rings[k], float64(t.Error.Reach)))
			}
		}
		all[i] = r
	}
	return Traces{all}
}

// AreaSigma returns the 1-sigma error of the area of a region whose edges
// come from the traces. Where edges of several traces coincide, the first
// trace counts, were it without error. Edges that come from no trace carry no
// error. Errors of different traces are taken as independent, and a shift of a
// whole trace moves no area if all its edges bound the region.
func (t Traces) AreaSigma(r Region) Area {
	edges := r.edgeList()
	if len(edges) == 0 {
		return 0
	}
	grid := newEdgeGrid(edges)
	free := make([][]span, len(edges)) // parts not yet claimed by a trace
	whole := []span{{0, 1}}
	for i := range free {
		free[i] = whole
	}
	var variance float64
	for _, trace := range t.traces {
		exposed := make([][]exposure, len(trace.rings))
		for i, ring := range trace.rings {
			exposed[i] = claim(ring, grid, free)
		}
		variance += trace.variance(exposed)
	}
	return Area(math.Sqrt(variance))
}

// An exposure is a part of a traced edge that bounds the region. Outward is
// +1 if the region grows when the edge moves to its right, else -1.
type exposure struct {
	edge    int
	part    span
	outward float64
}

// claim finds the parts of a ring's edges that bound the region.
func claim(ring Ring, grid *edgeGrid, free [][]span) []exposure {
	const same = 1e-5 // m: overlay rounds to 1e-9, a vertex put on an edge is snapped to 1e-7
	var found []exposure
	var near []int
	for i, a := range ring {
		e := edge{a, ring.next(i)}
		take := func(j int) {
			o := grid.edges[j]
			part, ok := o.alongside(e, same)
			if !ok {
				return
			}
			for _, s := range free[j] {
				taken := span{max(s.from, part.from), min(s.to, part.to)}
				if taken.from < taken.to {
					found = append(found, exposed(i, e, o, taken))
				}
			}
			free[j] = without(free[j], part)
		}
		near = near[:0]
		grid.near(e, same, func(j int) { near = append(near, j) })
		if k := slices.IndexFunc(near, func(j int) bool { return e.same(grid.edges[j]) }); k >= 0 {
			near = near[k : k+1]
		}
		for _, j := range near {
			take(j)
		}
	}
	return found
}

// same reports whether two edges have the same ends.
func (e edge) same(o edge) bool { return e == o || e.a == o.b && e.b == o.a }

// exposed turns a part of the region's edge o into one of the traced edge e.
func exposed(i int, e, o edge, part span) exposure {
	u := e.b.Minus(e.a)
	along := func(p XY) float64 { return min(1, max(0, p.Minus(e.a).Dot(u)/u.Dot(u))) }
	x := exposure{edge: i, part: span{along(o.at(part.from)), along(o.at(part.to))}, outward: 1}
	if x.part.from > x.part.to {
		x.part.from, x.part.to = x.part.to, x.part.from
		x.outward = -1
	}
	return x
}

// variance returns the variance of the area, m4, from the exposed parts.
func (t readyTrace) variance(exposed [][]exposure) float64 {
	e, sigma2 := t.error, float64(t.error.Sigma*t.error.Sigma)
	var sum, out, all float64
	for i, ring := range t.rings {
		if e.Kind == Vertices {
			sum += vertexVariance(ring, exposed[i], sigma2, t.ways[i])
			continue
		}
		var net float64
		for _, x := range exposed[i] {
			length := (x.part.to - x.part.from) * ring.next(x.edge).Minus(ring[x.edge]).Norm()
			net += x.outward * length
			all += length
		}
		if e.Kind == Width && net != 0 {
			out += net * outwards(t.rings, i)
		}
	}
	switch e.Kind {
	case Width:
		return sigma2 * out * out
	case Walk:
		return walkBound * walkBound * sigma2 * all * all
	}
	return sum
}

// outwards is +1 if the ground that the rings enclose, one in another being a
// hole, lies to the left of ring i, else -1.
func outwards(rings []Ring, i int) float64 {
	ring := rings[i]
	if len(ring) < 3 {
		return 0
	}
	side := float64(sign(ring.signedArea()))
	middle := ring[0].Toward(ring[1], 0.5)
	for j, o := range rings {
		if j != i && o.locate(middle) == inside {
			side = -side
		}
	}
	return side
}
