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

// AreaSigma is AreaSigmas of [Traces], for a single region.
func AreaSigma(r Region, traces []Trace) Area {
	return NewTraces(traces).AreaSigmas(NewBorder(r))[0]
}

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
}

// NewTraces makes traces ready. Where edges of several coincide the first one
// counts.
func NewTraces(traces []Trace) Traces {
	all := make([]readyTrace, len(traces))
	for i, t := range traces {
		all[i] = readyTrace{make([]readyRing, len(t.Rings)), t.Error}
		for k, ring := range t.Rings {
			ring = ring.withoutRepeats()
			all[i].rings[k] = readyRing{ring, ring.bounds()}
		}
	}
	return Traces{all}
}

// AreaSigmas returns the 1-sigma errors of the areas of regions whose edges
// come from the traces. Where edges of several traces coincide, the first
// trace counts, were it without error. Edges that come from no trace carry no
// error. Errors of different traces are taken as independent, and a shift of a
// whole trace moves no area if all its edges bound the region.
func (t Traces) AreaSigmas(regions ...*Border) []Area {
	told := make([]told, len(regions))
	for k, b := range regions {
		told[k].claims = newClaims(b)
		defer told[k].claims.release()
	}
	for _, trace := range t.traces {
		trace.tell(told)
	}
	sigmas := make([]Area, len(regions))
	for k := range told {
		sigmas[k] = Area(math.Sqrt(told[k].variance))
	}
	return sigmas
}

// Told is what traces told of the error of a region.
type told struct {
	*claims
	variance float64 // m4

	net float64 // m2 by which the area grows for each metre that all edges of a trace move outwards; Width
	all float64 // m that the trace goes along the region; Walk
}

// tell adds the variance that a trace brings into the areas of regions, and
// claims the parts of their borders that it takes.
func (t readyTrace) tell(regions []told) {
	for k := range regions {
		regions[k].net, regions[k].all = 0, 0
	}
	sigma2 := float64(t.error.Sigma * t.error.Sigma)
	for i := range t.rings {
		if t.error.Kind == Vertices {
			t.rings[i].tell(regions, sigma2, float64(t.error.Reach))
		} else {
			t.tellLengths(regions, i)
		}
	}
	for k := range regions {
		switch r := &regions[k]; t.error.Kind {
		case Width:
			r.variance += sigma2 * r.net * r.net
		case Walk:
			r.variance += walkBound * walkBound * sigma2 * r.all * r.all
		}
	}
}

// tell adds the variance that a ring brings in whose vertices err.
func (r *readyRing) tell(regions []told, sigma2, reach float64) {
	var way *wayRound
	whole := -1.0 // the variance of an area that all of it bounds, once known
	for k := range regions {
		exposed := regions[k].claim(r.ring, r.bounds)
		switch {
		case len(exposed) == 0:
			continue
		case way == nil:
			way = newWayRound(r.ring, reach)
			defer way.release()
		}
		if !boundsWhole(r.ring, exposed) {
			regions[k].variance += regions[k].vertexVariance(r.ring, exposed, sigma2, way)
			continue
		}
		if whole < 0 {
			whole = regions[k].vertexVariance(r.ring, exposed, sigma2, way)
		}
		regions[k].variance += whole
	}
}

// boundsWhole reports whether all of a ring bounds a region, which lies to one
// side of it.
func boundsWhole(ring Ring, exposed []exposure) bool {
	if len(exposed) != len(ring) {
		return false
	}
	for i, x := range exposed {
		if x.edge != i || x.part != (span{0, 1}) || x.outward != exposed[0].outward {
			return false
		}
	}
	return true
}

// tellLengths adds up how far ring i goes along regions.
func (t readyTrace) tellLengths(regions []told, i int) {
	ring := t.rings[i].ring
	for k := range regions {
		var net float64
		for _, x := range regions[k].claim(ring, t.rings[i].bounds) {
			length := (x.part.to - x.part.from) * ring.next(x.edge).Minus(ring[x.edge]).Norm()
			net += x.outward * length
			regions[k].all += length
		}
		if t.error.Kind == Width && net != 0 {
			regions[k].net += net * outwards(t.rings, i)
		}
	}
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
