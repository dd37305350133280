package zones

import (
	"errors"
	"fmt"
	"slices"

	"github.com/paulmach/orb"

	"example.org/turfplat/geo"
	"example.org/turfplat/geo/ingest"
)

// object lays a feature into the site's frame. Rings that cross themselves are
// read by the non-zero rule and kept as crossings. If the geometry fails the
// object has no ground.
func (s *Site) object(a casting) (*Object, error) {
	f := a.feature
	o := &Object{ID: f.ID, Kind: a.role.kind, Feature: f, Place: a.place, fromTags: a.role.fromTags}
	o.Name, _ = f.Properties.Text("name")
	if o.ID == "" {
		o.ID = fmt.Sprintf("features[%d]", f.Index)
	}
	if o.Kind.IsCover() {
		o.Cover = o.Kind
	}
	o.Source, o.Error = s.sourceOf(f, a.role, a.place)
	o.Stature = s.statureOf(f, o.Kind, a.place)
	switch shapeOf(f.Geometry) {
	case point:
		return o, s.layPoints(o, a.role)
	case line:
		return o, s.layLines(o, a.role)
	}
	return o, s.layArea(o)
}

// layPoints places an object traced as points; each takes its round of ground
// if it covers any.
func (s *Site) layPoints(o *Object, r role) error {
	if o.Kind == Tree {
		o.Crown = crownOf(o.Feature.Properties)
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
	o.Width = r.width
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

// layArea makes the region of an object's polygons.
func (s *Site) layArea(o *Object) error {
	polygons := polygons(o.Feature.Geometry)
	parts := make([]geo.Region, len(polygons))
	for i, polygon := range polygons {
		rings := s.Frame.Rings(polygon)
		var err error
		if parts[i], err = o.regionOf(rings); err != nil {
			return err
		}
		o.traced = slices.Concat(o.traced, rings)
	}
	var err error
	o.Ground, err = geo.Union(parts...)
	return err
}

// regionOf is the region of a polygon's rings, by the non-zero rule if they
// cross themselves.
func (o *Object) regionOf(rings []geo.Ring) (geo.Region, error) {
	region, err := geo.RegionOf(rings)
	if err == nil {
		return region, nil
	}
	if crossing := (*geo.CrossingError)(nil); errors.As(err, &crossing) {
		o.crossings = append(o.crossings, crossing)
		return geo.NonZeroRegionOf(rings)
	}
	return region, err
}

// tellFaults tells what is wrong with an object's geometry: that it failed, and
// rings that cross themselves, which are refused unless they are to be repaired
// or came from map tags.
func (s *Site) tellFaults(o *Object, err error, repair bool) {
	if err != nil {
		s.problem(ingest.Refusal, "geometry_failed", o.Place, "geometry cannot be laid out: "+err.Error(), "trace it again with fewer vertices")
	}
	for _, crossing := range o.crossings {
		s.tellCrossing(o.Place, crossing, repair || o.fromTags)
	}
}

func (s *Site) tellCrossing(place ingest.Place, crossing *geo.CrossingError, repair bool) {
	at := s.Frame.Place(crossing.At)
	place.Near = &at
	stake := s.told.Told(crossing.AtStake) + " at stake"
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
