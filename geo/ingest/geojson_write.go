package ingest

import (
	"bufio"
	"fmt"
	"io"
	"math"
	"slices"

	"github.com/paulmach/orb"
)

// WriteGeoJSON writes the site as a FeatureCollection, a feature a line. What
// was read and not changed is written as it was, with its heights and unknown
// members; new and changed geometry has 13 decimals at most, shells
// counter-clockwise, holes clockwise. A bbox is left out where the geometry it
// tells of may have changed. It fails on positions off the globe, and if w
// does.
func (c *Collection) WriteGeoJSON(w io.Writer) error { return c.write(w, "\n") }

// WriteGeoJSONLine writes the same on one line.
func (c *Collection) WriteGeoJSONLine(w io.Writer) error { return c.write(w, "") }

// write puts lineEnd before every feature and after the last.
func (c *Collection) write(w io.Writer, lineEnd string) error {
	b := bufio.NewWriterSize(w, 1<<16)
	text := []byte(`{"type":"FeatureCollection"`)
	for _, m := range c.Members {
		if m.Name != "type" && m.Name != "features" && m.Name != "bbox" {
			text = appendMember(append(text, ','), m)
		}
	}
	text = append(text, `,"features":[`...)
	asRead := newGeometries(newObjects(), math.MaxInt)
	for i, f := range c.Features {
		if i > 0 {
			text = append(text, ',')
		}
		members, err := f.written(asRead)
		if err != nil {
			place := c.Place(f)
			place.Feature = i
			return fmt.Errorf("%v: %w", place, err)
		}
		text = appendObject(append(text, lineEnd...), members)
		b.Write(text) // its error comes back from Flush
		text = text[:0]
	}
	if len(c.Features) > 0 {
		text = append(text, lineEnd...)
	}
	b.Write(append(text, "]}\n"...))
	return b.Flush()
}

// written are the members of the feature object as it is now. asRead tells
// what geometry the text stands for, and so whether it still may stand.
func (f *Feature) written(asRead *geometries) ([]Member, error) {
	members := slices.Clone(f.members)
	if members == nil {
		members = featureMembers(null)
	}
	if find(members, "geometry") < 0 {
		members = append(members, Member{"geometry", null})
	}
	if old, ok := lookup(members, "properties"); !ok || old[0] != 'n' || len(f.Properties.members) > 0 {
		members = with(members, "properties", appendObject(nil, f.Properties.members))
	}
	old, _ := lookup(members, "geometry")
	asRead.findings = asRead.findings[:0]
	if g, _ := asRead.read(old); orb.Equal(g, f.Geometry) {
		return members, nil
	}
	g, err := settled(f.Geometry)
	if err != nil {
		return nil, err
	}
	members = with(members, "geometry", appendGeometry(nil, g))
	return without(members, "bbox"), nil
}

// appendGeometry writes a geometry object, or null.
func appendGeometry(dst []byte, g orb.Geometry) []byte {
	if g == nil {
		return append(dst, null...)
	}
	dst = append(dst, `{"type":"`...)
	dst = append(dst, g.GeoJSONType()...)
	if parts, ok := g.(orb.Collection); ok {
		dst = append(dst, `","geometries":`...)
		dst = appendArray(dst, parts, appendGeometry)
	} else {
		dst = append(dst, `","coordinates":`...)
		dst = appendCoordinates(dst, g)
	}
	return append(dst, '}')
}

func appendCoordinates(dst []byte, g orb.Geometry) []byte {
	switch g := g.(type) {
	case orb.Point:
		return appendPosition(dst, g)
	case orb.MultiPoint:
		return appendArray(dst, g, appendPosition)
	case orb.LineString:
		return appendArray(dst, g, appendPosition)
	case orb.MultiLineString:
		return appendArray(dst, g, appendLine)
	case orb.Polygon:
		return appendPolygon(dst, g)
	case orb.MultiPolygon:
		return appendArray(dst, g, appendPolygon)
	}
	panic("ingest: " + g.GeoJSONType() + " is not settled")
}

func appendPolygon(dst []byte, p orb.Polygon) []byte {
	return appendArray(dst, p, func(dst []byte, r orb.Ring) []byte {
		return appendArray(dst, r, appendPosition)
	})
}

func appendLine(dst []byte, l orb.LineString) []byte { return appendArray(dst, l, appendPosition) }

func appendPosition(dst []byte, p orb.Point) []byte {
	dst = appendDegrees(append(dst, '['), p.Lon(), decimals)
	dst = appendDegrees(append(dst, ','), p.Lat(), decimals)
	return append(dst, ']')
}
