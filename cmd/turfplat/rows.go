package main

import (
	"io"

	"example.org/turfplat/zones"
)

// siteRows prints a row a site; zoneRows a row a zone. Where sites are lines
// each row is printed as it comes, else all at the end in aligned columns.
type siteRows struct {
	lines bool
	table *table
}

func (r *siteRows) print(w io.Writer, s surveyed) error {
	f, m := figuresIn(s.site.Units), s.measure
	if r.table == nil {
		r.table = newTable("lrrrrrr")
		r.table.row("site", "turf", "+/-", "bed", "hardscape", "building", "unit")
	}
	cover := func(k zones.Kind) string { return f.Area(m.Covers[k].AreaM2, m.Covers[k].CI95M2) }
	r.table.row(m.ID, cover(zones.Turf), f.PlusMinus(m.Covers[zones.Turf].CI95M2), cover(zones.Bed), cover(zones.Hardscape), cover(zones.Building), f.areaUnit())
	return flushRows(w, r.table, r.lines)
}

func (r *siteRows) finish(w io.Writer) error { return flushAll(w, r.table) }

type zoneRows struct {
	lines bool
	table *table
}

func (r *zoneRows) print(w io.Writer, s surveyed) error {
	f, m := figuresIn(s.site.Units), s.measure
	if r.table == nil {
		r.table = newTable("lllrrll")
		r.table.row("site", "zone", "", f.areaUnit(), "+/-", "unit", "")
		r.table.rows[0][3] = "area"
	}
	for _, z := range m.Zones {
		r.table.row(m.ID, z.Letter, z.Name, f.Area(z.AreaM2, z.CI95M2), f.PlusMinus(z.CI95M2), f.areaUnit(), remarks(f, z))
	}
	return flushRows(w, r.table, r.lines)
}

func (r *zoneRows) finish(w io.Writer) error { return flushAll(w, r.table) }

// flushRows prints what a streaming table holds and empties it.
func flushRows(w io.Writer, t *table, lines bool) error {
	if !lines {
		return nil
	}
	return flushAll(w, t)
}

func flushAll(w io.Writer, t *table) error {
	if t == nil {
		return nil
	}
	_, err := t.WriteTo(w)
	t.rows = nil
	return err
}
