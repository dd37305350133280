package zones

import (
	"errors"
	"fmt"

	"github.com/paulmach/orb"

	"example.org/turfplat/geo"
	"example.org/turfplat/geo/ingest"
)

// object lays a feature into the site's frame. Nil if its geometry is
// refused; the problem is told.
func (s *Site) object(f *ingest.Feature, r role, place ingest.Place, repair bool) *Object {
	o := &Object{ID: f.ID, Kind: r.kind, Feature: f, Place: place, fromTags: r.fromTags}
	o.Name, _ = f.Properties.Text("name")
	if o.ID == "" {
		o.ID = fmt.Sprintf("features[%d]", f.Index)
	}
	if r.kind.IsCover() {
		o.Cover = r.kind
	}
	o.Source, o.Error = s.sourceOf(f, r, place)
	var err error
	switch shapeOf(f.Geometry) {
	case point:
		err = s.layPoints(o, r)
	case line:
		err = s.layLines(o, r)
	case area:
		err = s.layArea(o, repair || r.fromTags)
	}
	if err != nil {
		s.problem(ingest.Refusal, "geometry_failed", place, err.Error(), "")
		return nil
	}
	return o
}

// layPoints places an object traced as points; each takes its round of ground
// if it covers any.
func (s *Site) layPoints(o *Object, r role) error {
	if o.Kind == Tree {
		o.Crown = r.crown
	}
	var rounds []geo.Region
	for _, p := range points(o.Feature.Geometry) {
		at := s.Frame.XY(p)
		o.Points = append(o.Points, at)
		if o.Cover != "" {
			rounds = append(rounds, geo.Disc(at, r.radius))
		}
	}
	var err error
	o.Ground, err = geo.Union(rounds...)
	o.traced = ringsOf(o.Ground)
	return err
}

// layLines strokes the lines of an object that has a width. A hedge with a
// width takes its strip of ground as a bed.
func (s *Site) layLines(o *Object, r role) error {
	for _, l := range lines(o.Feature.Geometry) {
		if line := s.Frame.Line(l); len(line) > 1 {
			o.Lines = append(o.Lines, line)
		}
	}
	if o.Kind == Hedge && r.width > 0 {
		o.Cover = Bed
	}
	if r.width <= 0 || o.Cover == "" && o.Kind != Tree {
		return nil
	}
	var strips []geo.Region
	for _, l := range o.Lines {
		strip, err := l.Stroke(r.width)
		if err != nil {
			return err
		}
		strips = append(strips, strip)
	}
	var err error
	o.Ground, err = geo.Union(strips...)
	o.traced = ringsOf(o.Ground)
	return err
}

// layArea makes the region of an object's polygons. A ring that crosses
// itself is refused, or read by the non-zero rule if repair is set.
func (s *Site) layArea(o *Object, repair bool) error {
	var parts []geo.Region
	for _, polygon := range polygons(o.Feature.Geometry) {
		rings := s.Frame.Rings(polygon)
		part, err := geo.RegionOf(rings)
		var crossing *geo.CrossingError
		if errors.As(err, &crossing) {
			s.tellCrossing(o, crossing, repair)
			if !repair {
				return nil
			}
			part, err = geo.NonZeroRegionOf(rings)
		}
		if err != nil {
			return err
		}
		parts = append(parts, part)
		o.traced = append(o.traced, rings...)
	}
	var err error
	o.Ground, err = geo.Union(parts...)
	return err
}

func (s *Site) tellCrossing(o *Object, crossing *geo.CrossingError, repair bool) {
	at := s.Frame.Place(crossing.At)
	place := o.Place
	place.Near = &at
	stake := fmt.Sprintf("%.2f m2 at stake", float64(crossing.AtStake))
	if crossing.Count > 1 {
		stake = fmt.Sprintf("%d times, %s", crossing.Count, stake)
	}
	if repair {
		s.problem(ingest.Warning, "ring_crosses", place, "ring crosses itself ("+stake+"): read as all that it goes round", "")
		return
	}
	s.problem(ingest.Refusal, "ring_crosses", place, "ring crosses itself ("+stake+")", "move the vertex, or run again with --repair to take all that the ring goes round")
}

func ringsOf(r geo.Region) []geo.Ring {
	var rings []geo.Ring
	for _, p := range r.Polygons() {
		rings = append(rings, p.Rings()...)
	}
	return rings
}

func points(g orb.Geometry) []orb.Point {
	switch g := g.(type) {
	case orb.Point:
		return []orb.Point{g}
	case orb.MultiPoint:
		return g
	case orb.Collection:
		return gather(g, points)
	}
	return nil
}

func lines(g orb.Geometry) []orb.LineString {
	switch g := g.(type) {
	case orb.LineString:
		return []orb.LineString{g}
	case orb.MultiLineString:
		return g
	case orb.Collection:
		return gather(g, lines)
	}
	return nil
}

func polygons(g orb.Geometry) []orb.Polygon {
	switch g := g.(type) {
	case orb.Polygon:
		return []orb.Polygon{g}
	case orb.MultiPolygon:
		return g
	case orb.Collection:
		return gather(g, polygons)
	}
	return nil
}

func gather[T any](c orb.Collection, of func(orb.Geometry) []T) []T {
	var all []T
	for _, g := range c {
		all = append(all, of(g)...)
	}
	return all
}
