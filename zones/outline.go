package zones

import (
	"fmt"
	"slices"

	"example.org/turfplat/geo"
	"example.org/turfplat/geo/ingest"
)

// castOutline takes the areas of a collection for outlines, whatever their
// kind. It is an error if there are none.
func (s *Site) castOutline(c *ingest.Collection) []casting {
	var edge []casting
	for _, f := range c.Features {
		if f.Geometry == nil || shapeOf(f.Geometry) != area {
			continue
		}
		props := f.Properties.Clone()
		props.Set("kind", Outline)
		id := f.ID
		if id == "" {
			id = "outline"
		}
		if own, _ := props.Text("id"); own != id {
			props.Set("id", id)
		}
		edge = append(edge, casting{ingest.NewFeature(props, f.Geometry), c.Place(f), role{kind: Outline, source: Traced}})
	}
	if len(edge) == 0 && !s.Refused() {
		s.tellNoArea(c)
	}
	return edge
}

// tellJoined tells of a property of several areas: whoever gives a file of
// parcels may have meant one of them.
func (s *Site) tellJoined(outline *ingest.Collection, areas int, property geo.Region) {
	if areas < 2 || s.Refused() {
		return
	}
	place := ingest.Place{Source: outline.Source, Line: outline.Line, Feature: -1}
	s.problem(ingest.Note, "outline_joined", place, fmt.Sprintf("its %d areas are taken together as one property of %s", areas, s.told.Told(s.Frame.Area(property))),
		"for a site of each, give them as --parcels; for one of them, a file with that one alone")
}

// tellNoArea tells that there is nothing in a collection to be a property.
func (s *Site) tellNoArea(c *ingest.Collection) {
	place, what := ingest.Place{Source: c.Source, Line: c.Line, Feature: -1}, "there is no area in it"
	if len(c.Features) == 1 {
		f := c.Features[0]
		place, what = c.Place(f), "has no geometry"
		if f.Geometry != nil {
			what = "is a " + f.Geometry.GeoJSONType()
		}
		s.Problems = slices.DeleteFunc(s.Problems, func(p ingest.Problem) bool { return p.Code == "geometry_missing" || p.Code == "geometry_empty" })
	}
	s.problem(ingest.Refusal, "outline_missing", place, what+": the edge of a property is a Polygon or MultiPolygon", "")
}

// Codes of the warnings about properties that would pass for turf.
const (
	OutlineUnbuilt = "outline_unbuilt"
	OutlineBare    = "outline_bare"
)

// tellUnbuilt warns of a property that would pass for turf because nothing else
// is mapped on it, or no house: the area of a lot is not that of its lawn.
func (s *Site) tellUnbuilt(property geo.Region, place ingest.Place) {
	var covers, decided bool
	for _, o := range s.Objects {
		covers = covers || o.Cover != ""
		decided = decided || o.Cover == Turf || o.Cover == Building
	}
	if decided {
		return
	}
	lot := s.told.Told(s.Frame.Area(property))
	if covers {
		s.problem(ingest.Warning, OutlineUnbuilt, place, fmt.Sprintf("no building and no turf is mapped on its %s: what other objects leave counts as turf", lot), "")
		return
	}
	s.problem(ingest.Warning, OutlineBare, place, fmt.Sprintf("nothing is mapped on it: all of its %s counts as turf", lot), "")
}
