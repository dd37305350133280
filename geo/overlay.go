package geo

import (
	"fmt"

	"github.com/peterstace/simplefeatures/geom"
)

// Union returns the ground that is in any of the regions.
func Union(regions ...Region) (Region, error) {
	groups := clusters(regions)
	var polygons []Polygon
	for _, g := range groups {
		u, err := unionOfCluster(g)
		if err != nil {
			return Region{}, err
		}
		polygons = append(polygons, u.polygons...)
	}
	return regionOf(polygons), nil
}

func unionOfCluster(regions []Region) (Region, error) {
	if len(regions) == 1 {
		return regions[0], nil
	}
	gs := make([]geom.Geometry, len(regions))
	for i, r := range regions {
		gs[i] = r.geometry()
	}
	u, err := geom.UnionMany(gs)
	return overlaid("union", u, err)
}

// clusters groups the regions whose bounds meet, directly or through others.
func clusters(regions []Region) [][]Region {
	var groups [][]Region
	var bounds []Bounds
	for _, r := range regions {
		if r.Empty() {
			continue
		}
		group, b := []Region{r}, r.bounds
		for i := 0; i < len(groups); {
			if !bounds[i].Meets(b) {
				i++
				continue
			}
			group, b = append(groups[i], group...), b.Union(bounds[i])
			groups, bounds = append(groups[:i], groups[i+1:]...), append(bounds[:i], bounds[i+1:]...)
			i = 0 // the grown bounds may meet an earlier group
		}
		groups, bounds = append(groups, group), append(bounds, b)
	}
	return groups
}

// Difference returns the ground of a that is not in b.
func Difference(a, b Region) (Region, error) {
	b, _ = b.partedBy(a)
	if a.Empty() || b.Empty() {
		return a, nil
	}
	if r, ok := pierced(a, b); ok {
		return r, nil
	}
	met, clear := a.partedBy(b)
	d, err := geom.Difference(met.geometry(), b.geometry())
	left, err := overlaid("difference", d, err)
	return regionOf(append(left.polygons, clear.polygons...)), err
}

// Intersection returns the ground that is in both regions.
func Intersection(a, b Region) (Region, error) {
	a, _ = a.partedBy(b)
	b, _ = b.partedBy(a)
	switch {
	case a.Empty() || b.Empty():
		return Region{}, nil
	case within(a, b):
		return a, nil
	case within(b, a):
		return b, nil
	}
	i, err := geom.Intersection(a.geometry(), b.geometry())
	return overlaid("intersection", i, err)
}

// partedBy returns the pieces of r whose bounds meet those of o, and the
// others.
func (r Region) partedBy(o Region) (met, clear Region) {
	for _, p := range r.polygons {
		b, side := p.Shell.bounds(), &clear
		if b.Meets(o.Bounds()) {
			side = &met
		}
		side.bounds = b.Union(side.Bounds())
		side.polygons = append(side.polygons, p)
	}
	return met, clear
}

// geometry hands the region to the overlay engine.
func (r Region) geometry() geom.Geometry {
	polygons := make([]geom.Polygon, len(r.polygons))
	for i, p := range r.polygons {
		rings := make([]geom.LineString, 0, 1+len(p.Holes))
		for _, ring := range p.Rings() {
			rings = append(rings, geom.NewLineString(ring.closedSequence()))
		}
		polygons[i] = geom.NewPolygon(rings)
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

// overlaid takes the areal part of what the engine gave.
func overlaid(operation string, g geom.Geometry, err error) (Region, error) {
	if err != nil {
		return Region{}, fmt.Errorf("geo: %s of regions failed: %w", operation, err)
	}
	return regionOf(polygonsOf(g)), nil
}

func polygonsOf(g geom.Geometry) []Polygon {
	var polygons []Polygon
	for _, part := range g.Dump() {
		if !part.IsPolygon() || part.IsEmpty() {
			continue
		}
		p := part.MustAsPolygon()
		polygon := Polygon{Shell: ringOf(p.ExteriorRing())}
		for i := range p.NumInteriorRings() {
			polygon.Holes = append(polygon.Holes, ringOf(p.InteriorRingN(i)))
		}
		polygons = append(polygons, polygon)
	}
	return polygons
}

func ringOf(l geom.LineString) Ring {
	s := l.Coordinates()
	ring := make(Ring, s.Length()-1)
	for i := range ring {
		p := s.GetXY(i)
		ring[i] = XY{p.X, p.Y}
	}
	return ring
}
