package geo

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"github.com/peterstace/simplefeatures/geom"
)

// The overlay engine now and then takes an edge that lies within rounding of
// another for the wrong side, and drops a piece without a word. So every
// result is proved: areas must add up, and a place inside each piece must lie
// where the piece says it does. What fails is tried again, snapped, and then
// settled by an arrangement, which is slower and cannot fail so.

// grains are the steps, in metres, to which operands are snapped on each try;
// 0 leaves them as they are.
var grains = []float64{0, grain}

// slight is the mean width, in metres, of pieces and holes that rounding
// leaves along edges which two operands have in common.
const slight = 64 * grain

var errUnproven = errors.New("result does not agree with its operands")

// engineParts returns the parts of a inside and outside b.
func engineParts(a, b Region) (in, out Region, err error) {
	for _, step := range grains {
		ga, gb := a.geometry(step), b.geometry(step)
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
	if in, out, err = arrangedParts(a, b); err == nil && !provenParts(a, b, in, out) {
		err = errUnproven
	}
	if err != nil {
		return Region{}, Region{}, fmt.Errorf("geo: overlay of regions failed: %w", err)
	}
	return in, out, nil
}

func provenParts(a, b, in, out Region) bool {
	whole, parts := a.planarArea(), in.planarArea()+out.planarArea()
	return math.Abs(whole-parts) <= allowance(a, b) &&
		in.probe(func(p XY) bool { return a.Contains(p) && b.Contains(p) }) &&
		out.probe(func(p XY) bool { return a.Contains(p) && !b.holds(p) })
}

// engineUnion returns the ground in any of the regions.
func engineUnion(regions []Region) (Region, error) {
	for _, step := range grains {
		gs := make([]geom.Geometry, len(regions))
		for i, r := range regions {
			gs[i] = r.geometry(step)
		}
		g, err := geom.UnionMany(gs)
		if err != nil {
			continue
		}
		if u := regionOf(polygonsOf(g)); provenUnion(regions, u) {
			return u, nil
		}
	}
	u, err := arrangedUnion(regions)
	if err == nil && !provenUnion(regions, u) {
		err = errUnproven
	}
	if err != nil {
		return Region{}, fmt.Errorf("geo: union of regions failed: %w", err)
	}
	return u, nil
}

func provenUnion(regions []Region, u Region) bool {
	var least, most float64
	for _, r := range regions {
		area := r.planarArea()
		least, most = max(least, area), most+area
		if !r.probe(u.Contains) {
			return false
		}
	}
	inAny := func(p XY) bool { // or on the seam between two
		return slices.ContainsFunc(regions, func(r Region) bool { return r.Contains(p) || r.runsBy(p) })
	}
	area, loose := u.planarArea(), allowance(regions...)
	return least-loose <= area && area <= most+loose && u.probe(inAny)
}

// allowance is the area, in m2, that snapping the vertices of regions can move.
func allowance(regions ...Region) float64 {
	var length float64
	for _, r := range regions {
		r.edges(func(a, b XY) { length += b.minus(a).norm() })
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

// geometry hands the region to the engine, snapped to a step.
func (r Region) geometry(step float64) geom.Geometry {
	polygons := make([]geom.Polygon, 0, len(r.polygons))
	for _, p := range r.polygons {
		var rings []geom.LineString
		for i, ring := range p.Rings() {
			if ring = ring.onGrid(step); len(ring) >= 3 {
				rings = append(rings, geom.NewLineString(ring.closedSequence()))
			} else if i == 0 {
				break // the polygon fell together
			}
		}
		if len(rings) > 0 {
			polygons = append(polygons, geom.NewPolygon(rings))
		}
	}
	return geom.NewMultiPolygon(polygons).AsGeometry()
}

func (r Ring) onGrid(step float64) Ring {
	if step == 0 {
		return r
	}
	s := make(Ring, len(r))
	for i, p := range r {
		s[i] = XY{math.Round(p.X/step) * step, math.Round(p.Y/step) * step}
	}
	return s.withoutRepeats()
}

func (r Ring) closedSequence() geom.Sequence {
	coordinates := make([]float64, 0, 2*len(r)+2)
	for _, p := range r {
		coordinates = append(coordinates, p.X, p.Y)
	}
	coordinates = append(coordinates, r[0].X, r[0].Y)
	return geom.NewSequence(coordinates, geom.DimXY)
}

// polygonsOf takes the areal part of what the engine gave.
func polygonsOf(g geom.Geometry) []Polygon {
	var polygons []Polygon
	for _, part := range g.Dump() {
		if !part.IsPolygon() || part.IsEmpty() {
			continue
		}
		p := part.MustAsPolygon()
		polygon := Polygon{Shell: ringOf(p.ExteriorRing())}
		if polygon.Shell.sliver() {
			continue
		}
		for i := range p.NumInteriorRings() {
			if hole := ringOf(p.InteriorRingN(i)); !hole.sliver() {
				polygon.Holes = append(polygon.Holes, hole)
			}
		}
		polygons = append(polygons, polygon)
	}
	return polygons
}

func (r Ring) sliver() bool { return 2*math.Abs(r.signedArea()) < slight*r.length() }

func ringOf(l geom.LineString) Ring {
	s := l.Coordinates()
	ring := make(Ring, s.Length()-1)
	for i := range ring {
		p := s.GetXY(i)
		ring[i] = XY{p.X, p.Y}
	}
	return ring
}
