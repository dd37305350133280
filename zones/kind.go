package zones

import (
	"slices"

	"github.com/paulmach/orb"
)

// Kind is the part an object plays on a property.
type Kind string

// The kinds of ground cover.
const (
	Building  Kind = "building"
	Pool      Kind = "pool"
	Water     Kind = "water"
	Hardscape Kind = "hardscape"
	Bed       Kind = "bed"
	Synthetic Kind = "synthetic"
	Bare      Kind = "bare"
	Rough     Kind = "rough"
	Turf      Kind = "turf"
)

// The kinds that frame, divide or mark the ground.
const (
	Outline  Kind = "outline"
	ZoneKind Kind = "zone"
	Cutline  Kind = "cutline"
	Keepout  Kind = "keepout"
	Tree     Kind = "tree"
	Fence    Kind = "fence"
	Wall     Kind = "wall"
	Hedge    Kind = "hedge"
	Hazard   Kind = "hazard"
	Access   Kind = "access"
	Start    Kind = "start"
	Refill   Kind = "refill"
)

// CoverKinds are the ground covers; where two overlap the earlier one wins.
var CoverKinds = []Kind{Building, Pool, Water, Hardscape, Bed, Synthetic, Bare, Rough, Turf}

// shape is the sort of geometry a kind can have.
type shape int

const (
	point shape = 1 << iota
	line
	area
)

// shapes lists every kind with the geometry it can have.
var shapes = map[Kind]shape{
	Building: area, Pool: area, Water: area | line, Hardscape: area | line, Bed: area,
	Synthetic: area, Bare: area, Rough: area, Turf: area,
	Outline: area, ZoneKind: area, Cutline: line, Keepout: area,
	Tree: point | area, Fence: line, Wall: line, Hedge: line,
	Hazard: point, Access: point, Start: point, Refill: point,
}

// IsCover reports whether objects of the kind cover ground.
func (k Kind) IsCover() bool { return slices.Contains(CoverKinds, k) }

// Known reports whether there is such a kind.
func (k Kind) Known() bool { return shapes[k] != 0 }

// rank is the place of a cover in CoverKinds.
func (k Kind) rank() int { return slices.Index(CoverKinds, k) }

func (s shape) String() string {
	switch s {
	case point:
		return "Point"
	case line:
		return "LineString"
	case area:
		return "Polygon"
	case point | area:
		return "Point or Polygon"
	}
	return "Polygon or LineString"
}

// shapeOf returns the sort of a geometry, 0 if it is mixed.
func shapeOf(g orb.Geometry) shape {
	switch g := g.(type) {
	case orb.Point, orb.MultiPoint:
		return point
	case orb.LineString, orb.MultiLineString:
		return line
	case orb.Polygon, orb.MultiPolygon:
		return area
	case orb.Collection:
		return shapeOfAll(g)
	}
	return 0
}

func shapeOfAll(c orb.Collection) shape {
	var all shape
	for _, g := range c {
		s := shapeOf(g)
		if s == 0 || all != 0 && s != all {
			return 0
		}
		all = s
	}
	return all
}
