package geo

import (
	"math"

	"github.com/peterstace/simplefeatures/geom"
)

// The engine, a port of the reference engine for plane geometry, draws ground
// round regions and lines.

// slight is the mean width, in metres, of pieces and holes that rounding
// leaves.
const slight = 64 * grain

// geometry hands the region to the engine.
func (r Region) geometry() geom.Geometry {
	polygons := make([]geom.Polygon, 0, len(r.polygons))
	for _, p := range r.polygons {
		var rings []geom.LineString
		for i, ring := range p.Rings() {
			if len(ring) >= 3 {
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

func (r Ring) closedSequence() geom.Sequence {
	coordinates := make([]float64, 0, 2*len(r)+2)
	for _, p := range r {
		coordinates = append(coordinates, p.X, p.Y)
	}
	coordinates = append(coordinates, r[0].X, r[0].Y)
	return geom.NewSequence(coordinates, geom.DimXY)
}

// fine is the step, in metres, to which the engine's positions are snapped: the
// rounding of one line drawn from either end lies far below it.
const fine = 1.0 / (1 << 28)

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
		ring[i] = XY{math.Round(p.X/fine) * fine, math.Round(p.Y/fine) * fine}
	}
	return ring.withoutRepeats()
}
