package geo

import (
	"math"
	"slices"

	"github.com/paulmach/orb"
	"github.com/tidwall/geodesic"
)

const (
	longEdge  = 1000 // m: longer ones are divided along the geodesic before they are drawn straight
	mostParts = 64   // of an edge: no lawn's is longer than 64 km
)

// Ring returns a traced ring in the frame, open or closed, in either order.
// Edges longer than a kilometre are divided along their geodesic, into 64
// parts at most.
func (f Frame) Ring(r orb.Ring) Ring {
	if len(r) > 0 && r[0] != r[len(r)-1] {
		r = append(slices.Clone(r), r[0])
	}
	l := f.line(orb.LineString(r))
	if n := len(l); n > 1 && l[0] == l[n-1] {
		l = l[:n-1]
	}
	return Ring(l)
}

// Rings returns a traced polygon's rings, shell first.
func (f Frame) Rings(p orb.Polygon) []Ring {
	rings := make([]Ring, len(p))
	for i, r := range p {
		rings[i] = f.Ring(r)
	}
	return rings
}

// Line returns a traced line in the frame, divided as Ring does, without
// repeated positions.
func (f Frame) Line(l orb.LineString) Line {
	line := f.line(l)
	kept := line[:0]
	for i, p := range line {
		if i == 0 || p != line[i-1] {
			kept = append(kept, p)
		}
	}
	return kept
}

func (f Frame) line(l orb.LineString) Line {
	line := make(Line, 0, len(l))
	for i, p := range l {
		at := f.XY(p)
		if i > 0 && at.Minus(line[len(line)-1]).Norm() > longEdge {
			line = append(line, f.alongGeodesic(l[i-1], p)...)
		}
		line = append(line, at)
	}
	return line
}

// alongGeodesic returns positions between two places, a kilometre apart unless
// that makes too many parts.
func (f Frame) alongGeodesic(a, b orb.Point) Line {
	var length, azimuth float64
	geodesic.WGS84.Inverse(a.Lat(), a.Lon(), b.Lat(), b.Lon(), &length, &azimuth, nil)
	parts := min(mostParts, int(math.Ceil(length/longEdge)))
	var between Line
	for i := 1; i < parts; i++ {
		var p orb.Point
		geodesic.WGS84.Direct(a.Lat(), a.Lon(), azimuth, length*float64(i)/float64(parts), &p[1], &p[0], nil)
		between = append(between, f.XY(p))
	}
	return between
}

// Places returns the places of a ring's positions, the first not repeated.
func (f Frame) Places(r Ring) []orb.Point {
	places := make([]orb.Point, len(r))
	for i, p := range r {
		places[i] = f.Place(p)
	}
	return places
}

// MultiPolygon returns a region in degrees: closed rings, shells
// counter-clockwise, holes clockwise (RFC 7946 3.1.6).
func (f Frame) MultiPolygon(r Region) orb.MultiPolygon {
	var m orb.MultiPolygon
	for _, p := range r.polygons {
		var polygon orb.Polygon
		for _, ring := range p.Rings() {
			places := f.Places(ring)
			polygon = append(polygon, orb.Ring(append(places, places[0])))
		}
		m = append(m, polygon)
	}
	return m
}
