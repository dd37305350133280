package geo

import (
	"errors"
	"math"
	"slices"

	"github.com/peterstace/simplefeatures/geom"
)

// The engine is the witness of overlays: a port of the reference engine, and
// nothing of ours. It now and then takes an edge that lies within rounding of
// another for the wrong side, and drops a piece without a word. So its word
// counts only if areas add up and a place inside each piece lies where the
// piece says it does.

// grains are the steps, in metres, to which operands are snapped on each try;
// 0 leaves them as they are.
var grains = []float64{0, grain}

var errUnproven = errors.New("the engine's result does not agree with its operands")

// engineParts returns the parts of a inside and outside b.
func engineParts(a, b Region) (in, out Region, err error) {
	for _, step := range grains {
		ga, gb := a.onGrid(step).geometry(), b.onGrid(step).geometry()
		i, err1 := geom.Intersection(ga, gb)
		d, err2 := geom.Difference(ga, gb)
		if err1 != nil || err2 != nil {
			continue
		}
		in, out = regionOf(polygonsOf(i)), regionOf(polygonsOf(d))
		if provenParts(a, b, in, out) {
			return in, out, nil
		}
	}
	return Region{}, Region{}, errUnproven
}

func provenParts(a, b, in, out Region) bool {
	whole, parts := a.PlanarArea(), in.PlanarArea()+out.PlanarArea()
	return math.Abs(whole-parts) <= allowance(a, b) &&
		in.probe(func(p XY) bool { return a.Contains(p) && b.Contains(p) }) &&
		out.probe(func(p XY) bool { return a.Contains(p) && !b.holds(p) })
}

// engineUnion returns the ground in any of the regions.
func engineUnion(regions []Region) (Region, error) {
	for _, step := range grains {
		gs := make([]geom.Geometry, len(regions))
		for i, r := range regions {
			gs[i] = r.onGrid(step).geometry()
		}
		g, err := geom.UnionMany(gs)
		if err != nil {
			continue
		}
		if u := regionOf(polygonsOf(g)); provenUnion(regions, u) {
			return u, nil
		}
	}
	return Region{}, errUnproven
}

func provenUnion(regions []Region, u Region) bool {
	var least, most float64
	for _, r := range regions {
		area := r.PlanarArea()
		least, most = max(least, area), most+area
		if !r.probe(u.Contains) {
			return false
		}
	}
	inAny := func(p XY) bool { // or on the seam between two
		return slices.ContainsFunc(regions, func(r Region) bool { return r.Contains(p) || r.runsBy(p) })
	}
	area, loose := u.PlanarArea(), allowance(regions...)
	return least-loose <= area && area <= most+loose && u.probe(inAny)
}

// allowance is the area, in m2, that snapping the vertices of regions can move.
func allowance(regions ...Region) float64 {
	var length float64
	for _, r := range regions {
		r.edges(func(a, b XY) { length += b.Minus(a).Norm() })
	}
	return length * 64 * grain
}

// probe reports whether a place well inside each piece passes a test. Slivers
// have none.
func (r Region) probe(test func(XY) bool) bool {
	for _, p := range r.polygons {
		if at, ok := p.placeInside(); ok && !test(at) {
			return false
		}
	}
	return true
}

func (r Region) onGrid(step float64) Region {
	if step == 0 {
		return r
	}
	var polygons []Polygon
	for _, p := range r.polygons {
		g := Polygon{Shell: p.Shell.snapped().withoutRepeats()}
		for _, h := range p.Holes {
			g.Holes = append(g.Holes, h.snapped().withoutRepeats())
		}
		polygons = append(polygons, g)
	}
	return Region{polygons: polygons, bounds: r.bounds}
}

// partsOf returns the parts of a inside and outside b by the overlay alone.
func partsOf(a, b Region) (in, out Region, err error) {
	o, err := Lay(a, b)
	if err != nil {
		return Region{}, Region{}, err
	}
	parts := o.Partition(2, func(holders []int) int { return 2 - len(holders) - 2*holders[0] })
	return parts[0], parts[1], nil
}

// wholeOf returns the union of regions by the overlay alone.
func wholeOf(regions []Region) (Region, error) {
	o, err := Lay(regions...)
	if err != nil {
		return Region{}, err
	}
	return o.Ground(func([]int) bool { return true }), nil
}
