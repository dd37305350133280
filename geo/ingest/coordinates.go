package ingest

import (
	"slices"

	"github.com/paulmach/orb"
)

// shapes says how each geometry nests its positions (RFC 7946 3.1.2 to 3.1.7).
var shapes = map[string]string{
	"Point":           "a Point is one position",
	"MultiPoint":      "a MultiPoint is a list of positions",
	"LineString":      "a LineString is a list of positions",
	"MultiLineString": "a MultiLineString is a list of lines, each a list of positions",
	"Polygon":         "a Polygon is a list of rings, each a list of positions",
	"MultiPolygon":    "a MultiPolygon is a list of polygons, each a list of rings of positions",
}

// read returns the geometry of the given kind, one of shapes, and the text of
// its coordinates as repaired, nil if they may stay as they are. The geometry
// is of no use if the findings refuse it.
func (c *coordinates) read(kind string, text []byte) (orb.Geometry, []byte) {
	c.start(text, shapes[kind])
	g := c.geometry(kind)
	return g, c.repairedText()
}

func (c *coordinates) geometry(kind string) orb.Geometry {
	switch kind {
	case "Point":
		return c.point()
	case "MultiPoint":
		return c.multiPoint()
	case "LineString":
		return c.line()
	case "MultiLineString":
		return orb.MultiLineString(list(c, c.line))
	case "Polygon":
		return c.polygon()
	}
	return orb.MultiPolygon(list(c, c.polygon))
}

func (c *coordinates) point() orb.Point {
	from := c.at
	c.startRow()
	c.position()
	if c.broken {
		return orb.Point{}
	}
	if c.wrapped {
		c.replace(from, c.row.texts[0])
	}
	return c.row.points[0]
}

func (c *coordinates) multiPoint() orb.MultiPoint {
	from := c.at
	if c.positions() && c.wrapped {
		c.replaceRow(from)
	}
	return slices.Clone(c.row.points)
}

// line reads a row of positions that must lead somewhere.
func (c *coordinates) line() orb.LineString {
	from := c.at
	if !c.positions() {
		return nil
	}
	repaired := c.dropRepeats() || c.wrapped
	if len(c.row.points) < 2 {
		c.misread("line_short", "line has fewer than two different points", "lines")
		return nil
	}
	if repaired {
		c.replaceRow(from)
	}
	return slices.Clone(c.row.points)
}

func (c *coordinates) polygon() orb.Polygon {
	hole := false
	rings := list(c, func() orb.Ring {
		ring := c.ring(hole)
		hole = true
		return ring
	})
	if len(rings) == 0 {
		c.misread("polygon_empty", "polygon has no rings", "polygons")
	}
	return rings
}

func (c *coordinates) ring(hole bool) orb.Ring {
	from := c.at
	if !c.positions() {
		return nil
	}
	if len(c.row.points) == 0 {
		c.misread("ring_short", "ring has no points", "rings")
		return nil
	}
	repaired := c.dropRepeats() || c.wrapped
	if c.row.close() {
		c.found(Warning, "ring_unclosed", "ring is not closed, closed it", "rings")
		repaired = true
	}
	if code, why := c.row.vain(); code != "" {
		c.found(Refusal, code, why, "rings")
		return nil
	}
	if c.row.wind(!hole) {
		c.found(Warning, "ring_winding", "ring runs the wrong way round, turned it", "rings")
		repaired = true
	}
	if repaired {
		c.replaceRow(from)
	}
	return slices.Clone(c.row.points)
}

// dropRepeats drops positions of the row that repeat the one before.
func (c *coordinates) dropRepeats() bool {
	n, first := c.row.dropRepeats()
	if n == 0 {
		return false
	}
	near := first // only here does it have to outlive the row
	c.findings.add(finding{
		severity: Warning, code: "position_repeated",
		text: "position is given twice in a row, dropped the second",
		near: &near, count: n, plural: "times",
	})
	return true
}

// positions reads a row; false if any of it cannot be used.
func (c *coordinates) positions() bool {
	c.startRow()
	c.array(c.position)
	return !c.broken
}
