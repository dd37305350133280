package zones

import (
	"math"
	"testing"

	"example.org/turfplat/geo"
)

func TestEdges(t *testing.T) {
	trunk := 2 * math.Pi * trunkRing
	fence := func(l ...geo.XY) item { return lineString(kind(Fence, "f"), l...) }
	for _, tt := range []struct {
		name                 string
		sketch               sketch
		hardscape, bed, trim float64
	}{
		{"nothing", sketch{lawn}, 0, 0, 0},
		{"drive along one side", sketch{lawn, covering(Hardscape, "d", rectangle(20, -5, 23, 15))}, 10, 0, 0},
		{"drive along part of a side", sketch{lawn, covering(Hardscape, "d", rectangle(20, 4, 23, 15))}, 6, 0, 0},
		{"drive over the edge of the lawn", sketch{lawn, covering(Hardscape, "d", rectangle(19, -5, 23, 15))}, 10, 0, 0},
		{"gap of 3 cm", sketch{lawn, covering(Hardscape, "d", rectangle(20.03, -5, 23, 15))}, 10, 0, 0},
		{"gap of 10 cm", sketch{lawn, covering(Hardscape, "d", rectangle(20.1, -5, 23, 15))}, 0, 0, 0},
		{"bed island", sketch{lawn, covering(Bed, "b", rectangle(5, 3, 9, 6))}, 0, 14, 0},
		{"bed along the drive", sketch{lawn, covering(Hardscape, "d", rectangle(18, -5, 23, 15)), covering(Bed, "b", rectangle(16, 0, 18, 10))}, 0, 10, 0},
		{"house in the lawn", sketch{lawn, covering(Building, "h", rectangle(5, 3, 9, 6))}, 0, 0, 14},
		{"pool is neither", sketch{lawn, covering(Pool, "p", rectangle(5, 3, 9, 6))}, 0, 0, 0},
		{"fence inside", sketch{lawn, fence(xy(5, 5), xy(15, 5))}, 0, 0, 20},
		{"fence with a corner", sketch{lawn, fence(xy(5, 5), xy(15, 5), xy(15, 8))}, 0, 0, 26},
		{"fence right across", sketch{lawn, fence(xy(10, -5), xy(10, 15))}, 0, 0, 20},
		{"fence along an edge", sketch{lawn, fence(xy(-5, 10), xy(25, 10))}, 0, 0, 20},
		{"fence 10 cm off an edge", sketch{lawn, fence(xy(-5, 10.1), xy(25, 10.1))}, 0, 0, 20},
		{"fence 1 m off", sketch{lawn, fence(xy(-5, 11), xy(25, 11))}, 0, 0, 0},
		{"wall", sketch{lawn, lineString(kind(Wall, "w"), xy(5, 5), xy(15, 5))}, 0, 0, 20},
		{"wall along the bed", sketch{lawn, covering(Bed, "b", rectangle(0, 0, 20, 2)), lineString(kind(Wall, "w"), xy(0, 2), xy(20, 2))}, 0, 20, 20},
		{"tree in the lawn", sketch{lawn, pointAt(kind(Tree, "t"), 5, 5)}, 0, 0, trunk},
		{"tree in a bed", sketch{lawn, covering(Bed, "b", rectangle(4, 4, 6, 6)), pointAt(kind(Tree, "t"), 5, 5)}, 0, 8, 0},
		{"tree beside the lawn", sketch{lawn, pointAt(kind(Tree, "t"), -5, 5)}, 0, 0, 0},
		{"crown traced, trunk unknown", sketch{lawn, covering(Tree, "t", regular(8, 5, 5, 3))}, 0, 0, 0},
		{"cutline and zone are no edges", sketch{lawn, cutline("c", xy(5, -1), xy(5, 11)), covering(ZoneKind, "z", rectangle(9, 0, 12, 10))}, 0, 0, 0},
	} {
		t.Run(tt.name, func(t *testing.T) {
			m := tt.sketch.measure(t)
			near(t, "hardscape", m.Edges.TurfHardscapeM, tt.hardscape, 1e-7, 1e-6)
			near(t, "bed", m.Edges.TurfBedM, tt.bed, 1e-7, 1e-6)
			near(t, "trim", m.Edges.TrimM, tt.trim, 1e-7, 1e-6)
		})
	}
}

// Zones share out the edging; the line between two of them is none.
func TestEdgingOfZones(t *testing.T) {
	m := sketch{lawn, covering(Hardscape, "d", rectangle(20, -5, 23, 15)), covering(Bed, "b", rectangle(0, 0, 5, 1)), cutline("c", xy(-1, 4), xy(21, 4))}.measure(t)
	if len(m.Zones) != 2 {
		t.Fatalf("zones %v", m.Zones)
	}
	near(t, "north", m.Zones[0].EdgingM, 6, 1e-7, 0)
	near(t, "south", m.Zones[1].EdgingM, 4+5+1, 1e-7, 0)
}
