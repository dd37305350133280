package geo

import (
	"github.com/paulmach/orb"
	"github.com/tidwall/geodesic"
)

// wide is the extent, in metres, from which geodesics serve better than edges
// straight in the frame.
const wide = 10_000

// Wide reports whether a region is so large that it is measured along
// geodesics.
func Wide(b Bounds) bool { return max(b.Width(), b.Height()) > wide }

// Area returns the area of a region on the ellipsoid. Up to 10 km across it is
// the area in the frame, right to 1e-9 but for snapping; beyond, that of the
// geodesic polygon through the same vertices (Karney 2013, J. Geodesy
// 87:43-55).
func (f Frame) Area(r Region) Area {
	if !Wide(r.Bounds()) {
		return Area(r.PlanarArea())
	}
	var sum Area
	for _, p := range r.polygons {
		for i, ring := range p.Rings() {
			area, _ := GeodesicPolygon(f.Places(ring))
			if i > 0 {
				area = -area
			}
			sum += area
		}
	}
	return sum
}

// Perimeter returns the length of all rings of a region, holes included, on
// the ellipsoid: to 1e-8 up to 10 km across (1e-9 up to 1 km), along geodesics
// beyond.
func (f Frame) Perimeter(r Region) Length {
	var sum float64
	if !Wide(r.Bounds()) {
		r.edges(func(a, b XY) { sum += f.trueLength(a, b) })
		return Length(sum)
	}
	for _, p := range r.polygons {
		for _, ring := range p.Rings() {
			_, perimeter := GeodesicPolygon(f.Places(ring))
			sum += float64(perimeter)
		}
	}
	return Length(sum)
}

// BorderLength returns the length of what counts of a border, on the ellipsoid,
// as exactly as Perimeter.
func (f Frame) BorderLength(b *Border) Length {
	sum := f.Perimeter(b.region)
	for i := range b.counting {
		if c := &b.counting[i]; c.touched {
			e := b.edges[i]
			sum -= Length((1 - covered(c.parts)) * f.trueLength(e.a, e.b))
		}
	}
	return sum
}

// LineLength returns the length of a line on the ellipsoid, to 1e-8 within 10
// km of the centre.
func (f Frame) LineLength(l Line) Length {
	var sum float64
	for i := 1; i < len(l); i++ {
		sum += f.trueLength(l[i-1], l[i])
	}
	return Length(sum)
}

// GeodesicPolygon returns the area and perimeter of the polygon of geodesics
// through places in either order, the first not repeated (Karney 2013).
// Doubles leave a noise of about 1e-5 m2 an edge.
func GeodesicPolygon(places []orb.Point) (Area, Length) {
	polygon := geodesic.WGS84.PolygonInit(false)
	for _, p := range places {
		polygon.AddPoint(p.Lat(), p.Lon())
	}
	var area, perimeter float64
	polygon.Compute(false, true, &area, &perimeter)
	return Area(max(area, -area)), Length(perimeter)
}
