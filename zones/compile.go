package zones

import (
	"encoding/json"
	"math"
	"slices"

	"github.com/paulmach/orb"

	"example.org/turfplat/geo"
	"example.org/turfplat/geo/ingest"
)

// A Compilation is a site file made of traced or mapped objects.
type Compilation struct {
	Site *Site // what was found; its problems say what was wrong
	File *ingest.Collection
	took []*Object
	far  int // objects left out as too far from the outline
}

// Compile makes a site file: each object that plays a part gets its kind,
// source and measures, and keeps its tags; what plays none is left out. With
// an outline the site is that property, and objects farther than 40 m from it
// are left out too, unless they are so high that their shade reaches it; see
// [BaseMap].
func Compile(objects, outline *ingest.Collection, how Reading) Compilation {
	if outline != nil {
		m := NewBaseMap(objects, how)
		c := m.Compile(outline)
		c.Site.Problems = slices.Concat(m.Problems, c.Site.Problems)
		c.Site.tellNoLawn()
		return c
	}
	c := NewSite(objects, how).compile()
	c.Site.tellNoLawn()
	return c
}

// compile makes the file of a site's objects, but for those that are too far
// off.
func (s *Site) compile() Compilation {
	c := Compilation{Site: s, File: &ingest.Collection{Source: s.collection.Source, Members: compiledMembers(s)}}
	near := s.vicinityOf()
	for _, o := range slices.Concat(s.Objects, s.Beyond) {
		if !near(o) {
			c.far++
			continue
		}
		c.took = append(c.took, o)
		c.File.Features = append(c.File.Features, s.compiled(o))
	}
	return c
}

func compiledMembers(s *Site) []ingest.Member {
	c := &ingest.Collection{}
	if raw, ok := s.collection.Member("site"); ok {
		c.SetMember("site", raw)
	} else {
		c.SetMember("site", map[string]string{"id": s.ID, "name": s.Name})
	}
	if s.region != "" {
		c.SetWithin("site", "region", s.region)
	}
	if s.Attribution != "" {
		c.SetMember("attribution", s.Attribution)
	}
	return c.Members
}

// vicinityOf returns a test for objects on or near the property.
func (s *Site) vicinityOf() func(*Object) bool {
	outline := geo.Bounds{}
	bounded := false
	for _, o := range s.Of(Outline) {
		if b := o.Ground.Bounds(); bounded {
			outline = outline.Union(b)
		} else {
			outline, bounded = b, true
		}
	}
	return func(o *Object) bool {
		return !bounded || o.bounds().Meets(outline.Grown(vicinity+o.Stature.farReach()))
	}
}

// bounds returns the rectangle round all that an object is made of.
func (o *Object) bounds() geo.Bounds {
	b := o.Ground.Bounds()
	for _, l := range append(slices.Clone(o.Lines), o.Points) {
		for _, p := range l {
			b = b.With(p)
		}
	}
	return b
}

// compiled returns an object as a feature of a site file. One whose kind the
// file had stated is kept as it was, but for rings that cross themselves: what
// they were read as is written.
func (s *Site) compiled(o *Object) *ingest.Feature {
	if !o.fromTags {
		if len(o.crossings) == 0 {
			return o.Feature
		}
		f := *o.Feature
		f.Geometry = plain(s.Frame.MultiPolygon(o.Ground))
		return &f
	}
	var props ingest.Properties
	props.Set("id", o.ID)
	props.Set("kind", o.Kind)
	if o.Name != "" {
		props.Set("name", o.Name)
	}
	geometry := o.Feature.Geometry
	if shapes[o.Kind]&shapeOf(geometry) == 0 || len(o.crossings) > 0 {
		geometry = plain(s.Frame.MultiPolygon(o.Ground))
	} else if o.Width > 0 {
		props.Set("width_m", o.Width)
	}
	o.writeStature(&props)
	props.Set("source", o.Source)
	props.Set("tags", tagsOf(o.Feature.Properties))
	return ingest.NewFeature(props, geometry)
}

// writeStature writes how high an object stands, and what that rests on.
func (o *Object) writeStature(props *ingest.Properties) {
	if o.Kind == Tree && len(o.Points) > 0 {
		props.Set("crown_m", o.Crown)
	}
	if o.Stature.Height == 0 {
		return
	}
	props.Set("height_m", math.Round(o.Stature.Height*1000)/1000)
	if o.Stature.From != Stated {
		props.Set("height_from", o.Stature.From)
	}
	if leaf := o.Stature.Foliage.Leaf; leaf != "" {
		props.Set("leaf", leaf)
	}
}

// plain returns a multipolygon of one polygon as that polygon.
func plain(m orb.MultiPolygon) orb.Geometry {
	if len(m) == 1 {
		return m[0]
	}
	return m
}

// tagsOf returns the tags of a mapped object, but for those that a site file
// has in words of its own.
func tagsOf(p ingest.Properties) map[string]string {
	tags := make(map[string]string)
	for _, key := range p.Keys() {
		if text, ok := p.Text(key); ok && key != "id" && key != "name" {
			tags[key] = text
		}
	}
	if raw, ok := p.Raw("tags"); ok {
		nested := make(map[string]string)
		if json.Unmarshal(raw, &nested) == nil {
			for key, value := range nested {
				tags[key] = value
			}
		}
	}
	return tags
}
