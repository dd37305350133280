package zones

import (
	"slices"

	"example.org/turfplat/geo"
	"example.org/turfplat/zones/sun"
)

// Obstacles returns all that throws shade on the site, whether it stands on
// the property or beyond its outline, in the order read. A building that has
// parts stands as high as they do; only where it has none its own height
// counts. A tree of unknown height in a wood or a row of trees is a part of
// that. Heights that rest on assumptions are told by [Site.HeightAccount].
func (s *Site) Obstacles() []sun.Obstacle {
	objects := slices.Concat(s.Objects, s.Beyond)
	parts, groves := buildingParts(objects), groves(objects)
	var obstacles []sun.Obstacle
	for _, o := range objects {
		if o.Stature.Height <= o.Stature.Base {
			continue
		}
		for _, shape := range s.shapesOf(o, parts, groves) {
			obstacles = append(obstacles, sun.Obstacle{
				ID: o.ID, Name: o.Name, Shape: shape,
				Pass: sun.Pass{InLeaf: o.Stature.Foliage.InLeaf, Bare: o.Stature.Foliage.Bare},
			})
		}
	}
	return obstacles
}

func (s *Site) shapesOf(o *Object, parts []*Object, groves []geo.Region) []sun.Shape {
	switch o.Kind {
	case Building:
		return s.buildingShapes(o, parts)
	case Tree:
		return crownShapes(o, groves)
	case Bed:
		return []sun.Shape{sun.Prism{Plan: o.Ground, Top: o.Stature.Height}}
	}
	var screens []sun.Shape
	for _, l := range o.Lines {
		screens = append(screens, sun.Screen{Line: l, Height: o.Stature.Height, Width: o.Width})
	}
	return screens
}

// crownShapes are the crowns of single trees, or a wood as one body.
func crownShapes(o *Object, groves []geo.Region) []sun.Shape {
	st := o.Stature
	if len(o.Points) == 0 {
		return []sun.Shape{sun.Prism{Plan: o.Ground, Base: st.Base, Top: st.Height}}
	}
	form := sun.Ellipsoid
	if st.Foliage.Cone {
		form = sun.Cone
	}
	var crowns []sun.Shape
	for _, at := range o.Points {
		within := func(grove geo.Region) bool { return grove.Contains(at) }
		if st.From == Assumed && slices.ContainsFunc(groves, within) {
			continue
		}
		crowns = append(crowns, sun.Crown{At: at, Radius: o.Crown / 2, Base: st.Base, Top: st.Height, Form: form})
	}
	return crowns
}

// groves are the woods and rows of trees.
func groves(objects []*Object) []geo.Region {
	var groves []geo.Region
	for _, o := range objects {
		if o.Kind == Tree && !o.Ground.Empty() {
			groves = append(groves, o.Ground)
		}
	}
	return groves
}
