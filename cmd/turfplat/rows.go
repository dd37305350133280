package main

import (
	"io"

	"example.org/turfplat/zones"
)

// streamedWidth is what a column of rows has that are printed as they come.
const streamedWidth = 10

// rows prints rows under one head. Where sites are lines they are printed as
// they come, else all at the end in aligned columns.
type rows struct {
	lines bool
	table *table
	of    func(surveyed) [][]string
}

func newRows(lines bool, alignment string, head []string, of func(surveyed) [][]string) *rows {
	r := &rows{lines: lines, table: newTable(alignment), of: of}
	r.table.row(head...)
	if lines {
		r.table.allowFor(streamedWidth)
	}
	return r
}

func (r *rows) print(w io.Writer, s surveyed) error {
	for _, cells := range r.of(s) {
		r.table.row(cells...)
	}
	if r.lines {
		return r.finish(w)
	}
	return nil
}

func (r *rows) finish(w io.Writer) error {
	_, err := r.table.WriteTo(w)
	r.table.rows = nil
	return err
}

// siteRows prints a row a site.
func siteRows(lines bool) *rows {
	head := []string{"site", "turf", "+/-", "bed", "hardscape", "building", "unit"}
	return newRows(lines, "lrrrrrr", head, func(s surveyed) [][]string {
		f, m := figuresIn(s.site.Units), s.measure
		cover := func(k zones.Kind) string { return f.Area(m.Covers[k].AreaM2, m.Covers[k].CI95M2) }
		return [][]string{{m.ID, cover(zones.Turf), f.PlusMinus(m.Covers[zones.Turf].CI95M2), cover(zones.Bed), cover(zones.Hardscape), cover(zones.Building), f.areaUnit()}}
	})
}

// zoneRows prints a row a zone.
func zoneRows(lines bool) *rows {
	return newRows(lines, "lllrrll", []string{"site", "zone", "", "area", "+/-", "unit", ""}, func(s surveyed) [][]string {
		f := figuresIn(s.site.Units)
		var list [][]string
		for _, z := range s.measure.Zones {
			list = append(list, []string{s.measure.ID, z.Letter, z.Name, f.Area(z.AreaM2, z.CI95M2), f.PlusMinus(z.CI95M2), f.areaUnit(), remarks(f, z)})
		}
		return list
	})
}
