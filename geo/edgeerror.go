package geo

import "math"

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
func AreaSigma(r Region, traces []Trace) Area { return NewTraces(traces).AreaSigma(NewBorder(r)) }

// Traces are objects as they were traced, made ready to tell the error of the
// areas that they bound. They never change, so that several goroutines may use
// them.
type Traces struct{ traces []readyTrace }

type readyTrace struct {
	rings []readyRing
	error EdgeError
}

type readyRing struct {
	ring   Ring // without repeats: a vertex traced twice errs once
	bounds Bounds
	way    wayRound // of Vertices
}

// NewTraces makes traces ready. Where edges of several coincide the first one
// counts.
func NewTraces(traces []Trace) Traces {
	all := make([]readyTrace, len(traces))
	for i, t := range traces {
		all[i] = readyTrace{make([]readyRing, len(t.Rings)), t.Error}
		for k, ring := range t.Rings {
			r := &all[i].rings[k]
			r.ring = ring.withoutRepeats()
			r.bounds = r.ring.bounds()
			if t.Error.Kind == Vertices {
				r.way = newWayRound(r.ring, float64(t.Error.Reach))
			}
		}
	}
	return Traces{all}
}

// AreaSigma returns the 1-sigma error of the area of a region whose edges
// come from the traces. Where edges of several traces coincide, the first
// trace counts, were it without error. Edges that come from no trace carry no
// error. Errors of different traces are taken as independent, and a shift of a
// whole trace moves no area if all its edges bound the region.
func (t Traces) AreaSigma(b *Border) Area {
	if len(b.edges) == 0 {
		return 0
	}
	c := newClaims(b)
	defer c.release()
	var variance float64
	for _, trace := range t.traces {
		variance += trace.variance(c)
	}
	return Area(math.Sqrt(variance))
}

// variance returns the variance, m4, that a trace brings into the area of a
// region, and claims the parts of its border that it takes.
func (t readyTrace) variance(c *claims) float64 {
	e, sigma2 := t.error, float64(t.error.Sigma*t.error.Sigma)
	var sum, out, all float64
	for i := range t.rings {
		r := &t.rings[i]
		ring, exposed := r.ring, c.claim(r.ring, r.bounds)
		if e.Kind == Vertices {
			sum += c.vertexVariance(ring, exposed, sigma2, &r.way)
			continue
		}
		var net float64
		for _, x := range exposed {
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
func outwards(rings []readyRing, i int) float64 {
	ring := rings[i].ring
	if len(ring) < 3 {
		return 0
	}
	side := float64(sign(ring.signedArea()))
	middle := ring[0].Toward(ring[1], 0.5)
	for j, o := range rings {
		if j != i && o.ring.locate(middle) == inside {
			side = -side
		}
	}
	return side
}
