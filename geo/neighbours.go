package geo

import (
	"slices"

	"github.com/golang/geo/s1"
	"github.com/golang/geo/s2"
	"github.com/paulmach/orb"
)

// Neighbours tells which of many things lie near a place, without looking at
// all of them. Things are numbered from 0 in the order added. Once it is
// settled it may be asked from many goroutines.
type Neighbours struct {
	cells   []cellOf // by cell, then thing
	levels  uint32   // bit n: there are cells of level n
	extents []s2.Rect
}

// cellOf says that some of a thing may lie in an S2 cell.
type cellOf struct {
	cell  s2.CellID
	thing int32
}

// finestCell is the level of the smallest cells that are looked up, 14 to 23 m
// across; things may lie in smaller ones.
const finestCell = 19

// Add takes a thing in that reaches so many metres beyond its geometry, which
// may be nil.
func (n *Neighbours) Add(g orb.Geometry, reach float64) {
	const rounding = 0.01 // m
	t := footprint{reach: angle(reach + rounding), extent: s2.EmptyRect()}
	t.add(g)
	slices.Sort(t.cells)
	for _, c := range slices.Compact(t.cells) {
		n.cells = append(n.cells, cellOf{c, int32(len(n.extents))})
		n.levels |= 1 << c.Level()
	}
	n.extents = append(n.extents, t.extent)
}

// Settle makes the things added ready to be asked for.
func (n *Neighbours) Settle() {
	slices.SortFunc(n.cells, func(a, b cellOf) int { return compareCells(a, b.cell, b.thing) })
}

func compareCells(a cellOf, cell s2.CellID, thing int32) int {
	switch {
	case a.cell < cell:
		return -1
	case a.cell > cell:
		return 1
	}
	return int(a.thing - thing)
}

// Near returns, in order, the numbers of all things that may lie in a
// rectangle of a frame, be it across the antimeridian or a pole; some of them
// only lie close by.
func (n *Neighbours) Near(f Frame, b Bounds) []int {
	middle := XY{(b.Min.X + b.Max.X) / 2, (b.Min.Y + b.Max.Y) / 2}
	circle := s2.CapFromCenterAngle(pointOf(f.Place(middle)), angle(b.Max.Minus(b.Min).Norm()/2))
	extent := circle.RectBound()
	var found []int
	take := func(from, to int) {
		for _, c := range n.cells[from:to] {
			if n.extents[c.thing].Intersects(extent) {
				found = append(found, int(c.thing))
			}
		}
	}
	coverer := s2.RegionCoverer{MaxLevel: finestCell, LevelMod: 1, MaxCells: 8}
	for _, c := range coverer.Covering(circle) {
		take(n.from(c.RangeMin()), n.from(c.RangeMax()+1))
		for level := range c.Level() { // larger cells that hold this one
			if n.levels&(1<<level) != 0 {
				around := c.Parent(level)
				take(n.from(around), n.from(around+1))
			}
		}
	}
	slices.Sort(found)
	return slices.Compact(found)
}

// from is the index of the first entry of a cell or of one after it.
func (n *Neighbours) from(cell s2.CellID) int {
	i, _ := slices.BinarySearchFunc(n.cells, cell, func(a cellOf, cell s2.CellID) int { return compareCells(a, cell, 0) })
	return i
}

func pointOf(p orb.Point) s2.Point {
	return s2.PointFromLatLng(s2.LatLngFromDegrees(p.Lat(), p.Lon()))
}

// angle is at least the angle, on the sphere that S2 takes latitudes and
// longitudes for, between places so many metres apart: the ellipsoid is curved
// most along the meridian at the equator.
func angle(metres float64) s1.Angle {
	tightest := wgs84.a * (1 - wgs84.e2) // radius of the meridian at the equator
	return s1.Angle(metres / tightest)
}
