package ingest

import (
	"bytes"

	"github.com/paulmach/orb"
)

// geometries reads the geometry objects of one site.
type geometries struct {
	objects     *objects
	coordinates coordinates
	findings    findings // of the feature at hand
}

// collectionsWithin is how deep geometry collections may stand in each other;
// RFC 7946 3.1.8 would rather have none.
const collectionsWithin = 8

// newGeometries allows for so many positions.
func newGeometries(o *objects, positions int) *geometries {
	g := &geometries{objects: o, coordinates: coordinates{left: positions}}
	g.coordinates.findings = &g.findings
	return g
}

// again allows for so many positions of another site.
func (g *geometries) again(positions int) *geometries {
	g.coordinates.left = positions
	return g
}

// read returns the geometry of a value, nil if it has none or is refused, and
// the text of the value as repaired, nil if it may stay as it is.
func (g *geometries) read(value []byte) (geometry orb.Geometry, repaired []byte) {
	if value[0] == 'n' {
		g.warn("geometry_missing", "has no geometry, skipped")
		return nil, nil
	}
	geometry, repaired = g.geometry(value, 0)
	if g.findings.refused() {
		return nil, nil
	}
	return geometry, repaired
}

func (g *geometries) geometry(value []byte, within int) (orb.Geometry, []byte) {
	if value[0] != '{' {
		g.refuse("geometry_object", "geometry is "+describe(value)+", not an object")
		return nil, nil
	}
	members := g.members(value)
	kind, ok := g.kind(members)
	if !ok {
		return nil, nil
	}
	if kind == "GeometryCollection" {
		return g.part(members, "geometries", func(text []byte) (orb.Geometry, []byte) {
			return g.collection(text, within+1)
		})
	}
	return g.part(members, "coordinates", func(text []byte) (orb.Geometry, []byte) {
		return g.coordinates.read(kind, text)
	})
}

// members opens an object of the feature at hand and judges what any GeoJSON
// object may have.
func (g *geometries) members(object []byte) []Member {
	members, fs := g.objects.judged(object)
	for _, f := range fs {
		g.findings.add(f)
	}
	return members
}

// kind returns the type of a geometry object, one of the seven.
func (g *geometries) kind(members []Member) (string, bool) {
	value, ok := lookup(members, "type")
	if !ok {
		g.refuse("geometry_type", "geometry has no type")
		return "", false
	}
	kind, _ := scalarText(value)
	if !isGeometry(kind) {
		g.refuse("geometry_type", "geometry type "+describe(value)+" is unknown")
		return "", false
	}
	return kind, true
}

func isGeometry(kind string) bool { return kind == "GeometryCollection" || shapes[kind] != "" }

// part reads the member that holds what a geometry is made of.
func (g *geometries) part(
	members []Member, name string, read func([]byte) (orb.Geometry, []byte),
) (orb.Geometry, []byte) {
	value, ok := lookup(members, name)
	if !ok {
		g.refuse("coordinates_missing", "geometry has no "+name)
		return nil, nil
	}
	if isEmpty(value) {
		g.warn("geometry_empty", "has an empty geometry, skipped")
		return nil, nil
	}
	geometry, repaired := read(value)
	if repaired == nil {
		return geometry, nil
	}
	return geometry, appendObject(nil, with(members, name, repaired))
}

// isEmpty reports whether coordinates or geometries hold nothing at all.
func isEmpty(value []byte) bool {
	return value[0] == 'n' || len(bytes.Trim(value, "[], \t\r\n")) == 0
}

func (g *geometries) collection(value []byte, within int) (geometry orb.Geometry, repaired []byte) {
	if value[0] != '[' {
		g.refuse("coordinates_shape", "geometries is "+describe(value)+", not an array")
		return nil, nil
	}
	if within > collectionsWithin {
		g.refuse("geometry_nested", "geometry collections stand in each other too deep")
		return nil, nil
	}
	var all orb.Collection
	var texts [][]byte
	changed := false
	for text := range elements(value) {
		one, repaired := g.geometry(text, within)
		if one != nil {
			all = append(all, one)
		}
		if repaired != nil {
			text, changed = repaired, true
		}
		texts = append(texts, text)
	}
	if changed {
		repaired = appendArray(nil, texts, appendText)
	}
	if len(all) > 0 {
		geometry = all
	}
	return geometry, repaired
}

func (g *geometries) refuse(code, text string) {
	g.findings.add(finding{severity: Refusal, code: code, text: text, plural: "geometries"})
}

func (g *geometries) warn(code, text string) {
	g.findings.add(finding{severity: Warning, code: code, text: text, plural: "geometries"})
}
