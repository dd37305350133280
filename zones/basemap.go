package zones

import (
	"encoding/json"
	"slices"

	"example.org/turfplat/geo"
	"example.org/turfplat/geo/ingest"
)

// vicinity is how far, in metres, objects beyond the outline are kept that a
// crew recognises the place by (common practice, no source).
const vicinity = 40

// A BaseMap is map data that any number of properties are cut out of. The part
// that each object plays is found once, and what lies near a property without
// looking at all objects. Many sites may be compiled of it at a time.
type BaseMap struct {
	// Problems are those of the data as a whole. If any is a refusal no site
	// must be made of it.
	Problems []ingest.Problem

	objects *ingest.Collection
	cast    []casting
	idle    int // features that play no part
	near    geo.Neighbours
	repair  bool
	region  string // whose setback rules hold; "" = that which the data name
	told    Figures
}

// NewBaseMap takes map data or tracings in. Outlines among them do not count:
// those of the properties take their place.
func NewBaseMap(objects *ingest.Collection, how Reading) *BaseMap {
	s := &Site{collection: objects, Problems: slices.Clone(objects.Problems)}
	cast := s.parts(how.Key)
	s.tellIdle()
	m := &BaseMap{objects: objects, idle: s.idle, repair: how.Repair, region: how.Region, told: toldIn(objects, how.Units)}
	for _, a := range cast {
		if a.role.kind == Outline {
			s.problem(ingest.Note, "outline_replaced", a.place, "outline is left aside, as another is given", "")
			continue
		}
		m.cast = append(m.cast, a)
		stature := new(Site).statureOf(a.feature, a.role.kind, a.place) // its faults are told of the property that it is on
		m.near.Add(a.feature.Geometry, a.role.reach()+stature.farReach())
	}
	m.near.Settle()
	m.Problems = s.Problems
	return m
}

// reach is how far, in metres, the ground of an object goes beyond its
// geometry.
func (r role) reach() float64 {
	const bulge = 1.01 // of round joins and ends
	return bulge * max(r.width/2, r.radius)
}

// Compile makes the site file of the property whose edge the areas of a
// collection are. Objects within 40 m of their rectangle are kept, and higher
// ones farther off, whose shade reaches it. The problems of the site are those
// of the outline and of objects on the property.
func (m *BaseMap) Compile(outline *ingest.Collection) Compilation {
	all := *m.objects
	s := &Site{collection: &all, idle: m.idle, region: m.region, told: m.told, Problems: slices.Clone(outline.Problems)}
	edge := s.castOutline(outline)
	s.Frame = geo.NewFrame(geo.Center(anchors(edge)))
	property := s.layOutline(edge, m.repair)
	s.tellJoined(outline, len(edge), property)
	if s.Refused() {
		return Compilation{Site: s}
	}
	reach := property.Bounds().Grown(vicinity)
	var near []casting
	for _, i := range m.near.Near(s.Frame, reach) {
		near = append(near, m.cast[i])
	}
	s.layOthers(near, property, m.repair)
	s.readHeader()
	s.nameAfter(outline, edge)
	s.tellUnbuilt(property, edge[0].place)
	c := s.compile()
	c.far += len(m.cast) - len(near)
	return c
}

// nameAfter names the site after its outline, unless the data name it: a map
// of a town is not a property.
func (s *Site) nameAfter(outline *ingest.Collection, edge []casting) {
	if _, named := s.collection.Member("site"); named {
		return
	}
	s.ID = idFromFile(outline.Source)
	s.Name = s.ID
	if name, ok := edge[0].feature.Properties.Text("name"); ok && name != "" && len(edge) == 1 {
		s.Name = name
	}
}

// Parcel makes the site file of a parcel: that of [BaseMap.Compile] with an id
// of its own, and the parcel's name.
func (m *BaseMap) Parcel(parcel *ingest.Collection, id string) Compilation {
	c := m.Compile(parcel)
	s := c.Site
	s.ID, s.Name = id, id
	if name, ok := parcel.Features[0].Properties.Text("name"); ok && name != "" {
		s.Name = name
	}
	if c.File != nil {
		c.File.SetMember("site", s.header())
	}
	return c
}

// header is what the file says of the site as a whole, under the site's own id
// and name.
func (s *Site) header() map[string]any {
	var read map[string]json.RawMessage
	if raw, ok := s.collection.Member("site"); !ok || json.Unmarshal(raw, &read) != nil {
		read = nil
	}
	header := make(map[string]any)
	for name, value := range read {
		header[name] = value
	}
	header["id"], header["name"] = s.ID, s.Name
	if s.region != "" {
		header["region"] = s.region
	}
	return header
}
