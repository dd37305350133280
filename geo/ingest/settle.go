package ingest

import (
	"fmt"
	"math"
	"slices"

	"github.com/paulmach/orb"
)

// settled is the geometry as it reads back without a complaint once it is
// written: rounded, repeats dropped, rings closed and wound. Parts that lose
// their inside or their length by it are left out; nil if nothing is left. It
// fails on positions off the globe.
func settled(g orb.Geometry) (orb.Geometry, error) {
	var s settler
	g = s.geometry(g)
	return g, s.err
}

type settler struct {
	err error // the first
}

func (s *settler) geometry(g orb.Geometry) orb.Geometry {
	switch g := g.(type) {
	case orb.Point:
		return s.point(g)
	case orb.MultiPoint:
		return whole(orb.MultiPoint(s.points(g)))
	case orb.LineString:
		return whole(s.line(g))
	case orb.MultiLineString:
		return whole(orb.MultiLineString(left(g, s.line)))
	case orb.Ring:
		return whole(s.polygon(orb.Polygon{g}))
	case orb.Bound:
		return whole(s.polygon(g.ToPolygon()))
	case orb.Polygon:
		return whole(s.polygon(g))
	case orb.MultiPolygon:
		return whole(orb.MultiPolygon(left(g, s.polygon)))
	case orb.Collection:
		return whole(s.collection(g))
	}
	return nil
}

// whole is g, or no geometry if g is empty.
func whole[G interface {
	~[]T
	orb.Geometry
}, T any](g G) orb.Geometry {
	if len(g) == 0 {
		return nil
	}
	return g
}

// left settles parts and keeps those of which something is left.
func left[T ~[]E, E any](parts []T, settle func(T) T) []T {
	var kept []T
	for _, part := range parts {
		if part = settle(part); len(part) > 0 {
			kept = append(kept, part)
		}
	}
	return kept
}

func (s *settler) collection(parts orb.Collection) orb.Collection {
	var kept orb.Collection
	for _, part := range parts {
		if part = s.geometry(part); part != nil {
			kept = append(kept, part)
		}
	}
	return kept
}

func (s *settler) polygon(p orb.Polygon) orb.Polygon {
	var kept orb.Polygon
	for i, r := range p {
		switch ring := s.ring(r, i > 0); {
		case ring != nil:
			kept = append(kept, ring)
		case i == 0:
			return nil // its holes have nothing to be in
		}
	}
	return kept
}

func (s *settler) ring(r orb.Ring, hole bool) orb.Ring {
	row := trace{points: s.points(r)}
	row.dropRepeats()
	if len(row.points) == 0 {
		return nil
	}
	row.close()
	if code, _ := row.vain(); code != "" {
		return nil
	}
	row.wind(!hole)
	return row.points
}

func (s *settler) line(l orb.LineString) orb.LineString {
	row := trace{points: s.points(l)}
	row.dropRepeats()
	if len(row.points) < 2 {
		return nil
	}
	return row.points
}

func (s *settler) points(points []orb.Point) []orb.Point {
	points = slices.Clone(points)
	for i, p := range points {
		points[i] = s.point(p)
	}
	return points
}

func (s *settler) point(p orb.Point) orb.Point {
	// Comparing so that NaN fails too.
	if !(math.Abs(p.Lon()) <= 360 && math.Abs(p.Lat()) <= 90) {
		if s.err == nil {
			s.err = fmt.Errorf("position [%v, %v] is off the globe", p.Lon(), p.Lat())
		}
		return p
	}
	return orb.Point{rounded(wrap(p.Lon())), rounded(p.Lat())}
}
