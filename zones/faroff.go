package zones

import (
	"fmt"

	"github.com/paulmach/orb"

	"example.org/turfplat/geo"
	"example.org/turfplat/geo/ingest"
)

// farOff is how far from a property, in metres, an object lies that is hardly
// meant for it: more than the tallest tree throws its shade.
const farOff = 1000

// tellFarOff warns of objects that someone gave the site and that lie nowhere
// near it, and of turf outside its outline: they change nothing on it. Maps show
// what lies around.
func (s *Site) tellFarOff(g *Ground) {
	property := g.Outline.Bounds()
	if g.Outline.Empty() {
		property = g.Traced.All.Bounds()
	}
	if property.Empty() {
		return
	}
	for _, o := range s.Objects {
		s.tellWhetherFar(o, property)
	}
	for _, o := range s.Beyond {
		if !s.tellWhetherFar(o, property) && o.Cover == Turf && o.drawnForSite() {
			s.problem(ingest.Warning, "turf_outside", s.placeNear(o), "turf lies wholly outside the outline and is set aside", "give the outline of the property that it is on")
		}
	}
}

// tellWhetherFar warns of an object that is far off.
func (s *Site) tellWhetherFar(o *Object, property geo.Bounds) bool {
	if b := o.Ground.Bounds(); !b.Empty() && b.Apart(property) < farOff {
		return false
	}
	place := s.placeNear(o)
	if !o.drawnForSite() || o.dividesTurf() || place.Near == nil || s.apart(*place.Near, property) < farOff {
		return false
	}
	away := s.extent(o).Apart(property)
	if away < farOff {
		return false
	}
	hint := "look for a vertex far off, or leave it out"
	if turned := (orb.Point{place.Near.Lat(), place.Near.Lon()}); s.apart(turned, property) < farOff {
		hint = "longitude comes before latitude: turned round, it lies there"
	}
	s.problem(ingest.Warning, "far_off", place, fmt.Sprintf("lies %s from the property and changes nothing on it", kilometres(away)), hint)
	return true
}

// apart is how far a place lies from a property, in metres.
func (s *Site) apart(p orb.Point, property geo.Bounds) float64 {
	return geo.Line{s.Frame.XY(p)}.Bounds().Apart(property)
}

// kilometres tells how far off something lies; beyond 1,000 km the frame bends
// lengths by more than 1 in 1,000.
func kilometres(away float64) string {
	if away > 1e6 {
		return "over 1000 km"
	}
	return fmt.Sprintf("%.0f km", away/1000)
}

// drawnForSite reports whether an object is the site's own, and not what a map
// shows.
func (o *Object) drawnForSite() bool {
	return !o.fromTags && o.Source != Imported && o.Source != DefaultWidth && !isDerived(o.Feature)
}

// dividesTurf reports whether an object is one that is told if it lies on none.
func (o *Object) dividesTurf() bool {
	return o.Kind == ZoneKind || o.Kind == Cutline || o.Kind == Keepout
}

// placeNear is the place of an object, with the first of its positions.
func (s *Site) placeNear(o *Object) ingest.Place {
	place := o.Place
	for p := range positions(o.Feature.Geometry) {
		place.Near = &p
		break
	}
	return place
}
