package lanes

import (
	"math"

	"example.org/turfplat/geo"
)

// tellDeflectors says of each header lane on which sides a hard edge lies
// within the throw. An edge is hard unless turf that is treated as well lies
// beyond it.
func (y Yard) tellDeflectors(plan *Plan) {
	e := y.edges()
	for i, l := range plan.Lanes {
		if !l.Spreading || l.Pass != Header {
			continue
		}
		shielded := e.shields(l.Line, plan.Work.Pattern)
		var left, right bool
		for _, s := range shielded {
			left, right = left || s.left < math.Inf(1), right || s.right < math.Inf(1)
		}
		switch {
		case left && right:
			plan.Lanes[i].Deflector = Both
		case left:
			plan.Lanes[i].Deflector = Left
		case right:
			plan.Lanes[i].Deflector = Right
		}
	}
}

// edges are the edges of treated turf, with what lies beyond.
type edges struct{ all []turfEdge }

type turfEdge struct {
	a, b geo.XY // the turf lies to the left
	hard bool
}

// seam is how far beyond an edge, in metres, one looks for what lies there.
const seam = 0.05

// edges lists the edges of all plots.
func (y Yard) edges() edges {
	var e edges
	for i, p := range y.Plots {
		edgesOf(p.Turf, func(a, b geo.XY) {
			beyond := minus(toward(a, b, 0.5), times(unit(leftOf(minus(b, a))), seam))
			e.all = append(e.all, turfEdge{a, b, !y.treated(beyond, i)})
		})
	}
	return e
}

// treated reports whether a place lies on another plot.
func (y Yard) treated(p geo.XY, but int) bool {
	for i, plot := range y.Plots {
		if i != but && plot.Turf.Contains(p) {
			return true
		}
	}
	return false
}

// A shield is how far the sides of a lane may throw, m: infinite where no hard
// edge lies within the throw.
type shield struct{ left, right float64 }

// shields returns those of each side of a line.
func (e edges) shields(l geo.Line, p Pattern) []shield {
	left, right := p.Reach()
	all := make([]shield, len(l)-1)
	for i := range all {
		all[i] = shield{
			left:  e.throw(l[i], l[i+1], leftOf(unit(minus(l[i+1], l[i]))), left),
			right: e.throw(l[i], l[i+1], times(leftOf(unit(minus(l[i+1], l[i]))), -1), right),
		}
	}
	return all
}

// throw looks from the middle of a stretch for a hard edge to a side.
func (e edges) throw(a, b, side geo.XY, reach float64) float64 {
	from := toward(a, b, 0.5)
	to := plus(from, times(side, reach))
	nearest := math.Inf(1)
	hard := false
	for _, edge := range e.all {
		if t, s, ok := sightOf(from, to, edge.a, edge.b); ok && t > 0 && t <= 1 && 0 <= s && s <= 1 && t*reach < nearest {
			nearest, hard = t*reach, edge.hard
		}
	}
	if !hard {
		return math.Inf(1)
	}
	return nearest
}
