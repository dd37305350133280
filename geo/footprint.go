package geo

import (
	"github.com/golang/geo/s1"
	"github.com/golang/geo/s2"
	"github.com/paulmach/orb"
)

// A footprint is where on the globe a thing and all within its reach lies: a
// rectangle, and S2 cells that together hold it.
type footprint struct {
	reach  s1.Angle
	extent s2.Rect
	cells  []s2.CellID
}

func (t *footprint) add(g orb.Geometry) {
	switch g := g.(type) {
	case orb.Point:
		t.line(orb.LineString{g})
	case orb.MultiPoint:
		addAll(t, g)
	case orb.LineString:
		t.line(g)
	case orb.MultiLineString:
		addAll(t, g)
	case orb.Polygon:
		t.polygon(g)
	case orb.MultiPolygon:
		addAll(t, g)
	case orb.Collection:
		addAll(t, g)
	}
}

func addAll[G orb.Geometry](t *footprint, parts []G) {
	for _, part := range parts {
		t.add(part)
	}
}

func (t *footprint) line(l orb.LineString) {
	for i, p := range l {
		t.cells = append(t.cells, t.edge(l[max(0, i-1)], p).CellUnionBound()...)
	}
}

// polygon takes what lies within a shell, which its edges bound; the cells are
// those of a circle round it.
func (t *footprint) polygon(p orb.Polygon) {
	if len(p) == 0 || len(p[0]) == 0 {
		return
	}
	shell := p[0]
	circle := t.edge(shell[0], shell[0])
	for i, p := range shell {
		circle = circle.AddCap(t.edge(shell[max(0, i-1)], p))
	}
	if t.extent.Lng.IsFull() { // round a pole
		t.extent = t.extent.Union(circle.RectBound())
	}
	t.cells = append(t.cells, circle.CellUnionBound()...)
}

// edge widens the extent for an edge, and returns a circle that holds it and
// all within reach. Whether it is straight in a frame, on the ellipsoid or on
// a sphere makes less than a thousandth of its length.
func (t *footprint) edge(a, b orb.Point) s2.Cap {
	p, q := pointOf(a), pointOf(b)
	length := p.Distance(q)
	middle := s2.Point{Vector: p.Add(q.Vector).Normalize()}
	circle := s2.CapFromCenterAngle(middle, length/2+length/1000+t.reach)
	t.extent = t.extent.Union(circle.RectBound())
	return circle
}
