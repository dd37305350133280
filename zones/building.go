package zones

import (
	"math"

	"example.org/turfplat/geo"
	"example.org/turfplat/zones/sun"
)

// seam is the mean width, in metres, under which what its parts leave of a
// building is a seam between drawings, not a part of its own.
const seam = 0.5

// buildingShapes are the bodies of a building, or of a part of one.
func (s *Site) buildingShapes(o *Object, parts []*Object) []sun.Shape {
	rest, parted := s.withoutParts(o, parts)
	var shapes []sun.Shape
	for _, piece := range rest.Pieces() {
		switch {
		case !parted:
			shapes = append(shapes, o.Stature.body(piece))
		case s.meanWidth(piece) >= seam:
			shapes = append(shapes, sun.Prism{Plan: piece, Base: o.Stature.Base, Top: o.Stature.Height})
		}
	}
	return shapes
}

// body is a building over its plan, under its roof.
func (st Stature) body(plan geo.Region) sun.Shape {
	form, sloped := roofForms[st.Roof.Shape]
	switch {
	case st.Roof.Height == 0:
		return sun.Prism{Plan: plan, Base: st.Base, Top: st.Height}
	case !sloped: // half way between eave and ridge
		return sun.Prism{Plan: plan, Base: st.Base, Top: max(st.Base, st.Height-st.Roof.Height/2)}
	}
	eave := max(st.Base, st.Height-st.Roof.Height)
	return sun.Roof{Plan: plan, Base: st.Base, Eave: eave, Ridge: st.Height, Form: form, Bearing: st.Roof.bearing(plan)}
}

var roofForms = map[RoofShape]sun.RoofForm{Gabled: sun.Gabled, Hipped: sun.Hipped, Pyramidal: sun.Pyramidal, Skillion: sun.Skillion}

// bearing is the direction of the ridge or, of a skillion, of its slope; nil
// if the ridge runs along the longer side.
func (r Roof) bearing(plan geo.Region) *sun.Degrees {
	var bearing sun.Degrees
	switch {
	case !math.IsNaN(r.Slope) && r.Shape == Skillion:
		bearing = sun.Degrees(r.Slope)
	case !math.IsNaN(r.Slope): // of a face, square to the ridge
		bearing = sun.Degrees(math.Mod(r.Slope+90, 360))
	case r.Across:
		bearing = sun.Degrees(math.Mod(longestWall(plan)+90, 360))
	default:
		return nil
	}
	return &bearing
}

// longestWall is the bearing of the longest edge, in degrees clockwise from
// north.
func longestWall(plan geo.Region) float64 {
	longest, bearing := 0.0, 0.0
	for _, ring := range ringsOf(plan) {
		for i, a := range ring {
			b := ring[(i+1)%len(ring)]
			if d := math.Hypot(b.X-a.X, b.Y-a.Y); d > longest {
				longest, bearing = d, math.Mod(math.Atan2(b.X-a.X, b.Y-a.Y)*180/math.Pi+360, 360)
			}
		}
	}
	return bearing
}

// buildingParts are the objects mapped as parts of buildings.
func buildingParts(objects []*Object) []*Object {
	var parts []*Object
	for _, o := range objects {
		if o.isPart() {
			parts = append(parts, o)
		}
	}
	return parts
}

func (o *Object) isPart() bool {
	part, tagged := o.Feature.Properties.Tag("building:part")
	_, whole := o.Feature.Properties.Tag("building")
	return o.Kind == Building && tagged && part != "no" && !whole
}

// withoutParts takes the parts of a building, which lie for the most part in
// it, off its plan. Where the overlay fails the building stands whole.
func (s *Site) withoutParts(o *Object, parts []*Object) (rest geo.Region, parted bool) {
	if o.isPart() {
		return o.Ground, false
	}
	var own []*Object
	for _, part := range parts {
		in, err := geo.Intersection(part.Ground, o.Ground)
		if err == nil && s.Frame.Area(in) > s.Frame.Area(part.Ground)/2 {
			own = append(own, part)
		}
	}
	if len(own) == 0 {
		return o.Ground, false
	}
	rest, err := less(o.Ground, own)
	if err != nil {
		return o.Ground, false
	}
	return rest, true
}
