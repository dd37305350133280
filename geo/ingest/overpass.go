package ingest

import (
	"fmt"
	"io"
	"strconv"

	"github.com/paulmach/orb"
)

// overpass reads the JSON answer of the Overpass server
// (wiki.openstreetmap.org/wiki/OSM_JSON), which the map's own server gives too.
type overpass struct {
	*extract
	objects *objects
	object  osmObject
}

func readOverpass(r io.Reader, e *extract) *fault {
	limits := e.limits
	limits.Bytes /= 4 // the text is kept beside what is made of it
	in := newInput(r, limits)
	rec, _ := in.next()
	in.rest(&rec)
	rec.close()
	if rec.fault != nil {
		return rec.placed()
	}
	o := &overpass{extract: e, objects: newObjects()}
	return o.document(trimBlanks(rec.text))
}

// placed is the record's fault with its place in the text.
func (rec *record) placed() *fault {
	f := *rec.fault
	f.text = rec.problem(Place{}).Text
	return &f
}

func (o *overpass) document(value []byte) *fault {
	if value[0] != '{' {
		return &fault{code: "format_unknown", text: "is no map extract: holds " + describe(value)}
	}
	members, _, _ := o.objects.members(value)
	if remark, ok := lookup(members, "remark"); ok {
		text, _ := scalarText(remark)
		o.remarked(text)
	}
	all, ok := lookup(members, "elements")
	switch {
	case !ok:
		return &fault{code: "osm_element", text: "is no map extract: has no member elements"}
	case all[0] != '[':
		return &fault{code: "osm_element", text: "elements is " + describe(all) + ", not an array"}
	}
	i := 0
	for element := range elements(all) {
		if f := o.element(element, i); f != nil {
			return f
		}
		i++
	}
	return nil
}

// element takes the element with the index i.
func (o *overpass) element(value []byte, i int) *fault {
	if value[0] != '{' {
		return &fault{code: "osm_element", text: fmt.Sprintf("elements[%d] is %s, not an object", i, describe(value))}
	}
	members, _, _ := o.objects.members(value)
	text, _ := textMember(members, "type")
	kind, known := osmKindOf(text)
	if !known {
		return nil // an area or a count of the server
	}
	id, ok := wholeMember(members, "id")
	if !ok {
		o.leaveOut("osm_id", fmt.Sprintf("elements[%d] is a %v without a whole number as its id", i, kind), nil)
		return nil
	}
	last := &o.object
	*last = osmObject{kind: kind, id: id, tags: last.tags[:0], nodes: last.nodes[:0], members: last.members[:0]}
	if visible, _ := textMember(members, "visible"); visible == "false" {
		o.deleted(last)
		return nil
	}
	return o.whole(members)
}

// whole adds the object at hand with what its members say.
func (o *overpass) whole(members []Member) *fault {
	if f := o.tags(members); f != nil {
		return f
	}
	switch o.object.kind {
	case osmNode:
		at, ok := positionMember(members)
		if !ok {
			o.leaveOut("osm_position", osmID(osmNode, o.object.id)+" has no position", nil)
			return nil
		}
		if f := o.place(o.object.id, at); f != nil {
			return f
		}
	case osmWay:
		if f := o.wayNodes(members); f != nil {
			return f
		}
	case osmRelation:
		if f := o.relationMembers(members); f != nil {
			return f
		}
	}
	return o.add(o.object)
}

func (o *overpass) tags(members []Member) *fault {
	tags, ok := lookup(members, "tags")
	if !ok || tags[0] != '{' {
		return nil
	}
	for key, value := range pairs(tags) {
		text, ok := scalarText(value)
		if !ok {
			continue
		}
		if f := o.tag(&o.object, unquote(key), text); f != nil {
			return f
		}
	}
	return nil
}

// wayNodes reads the nodes of a way by their ids, by their positions, or both.
func (o *overpass) wayNodes(members []Member) *fault {
	for value := range arrayMember(members, "nodes") {
		id, err := strconv.ParseInt(string(value), 10, 64)
		if err != nil {
			id = o.unnamedNode()
		}
		if f := o.node(&o.object, id); f != nil {
			return f
		}
	}
	i := 0
	for value := range arrayMember(members, "geometry") {
		if i == len(o.object.nodes) {
			o.object.unnamed = true
			if f := o.node(&o.object, o.unnamedNode()); f != nil {
				return f
			}
		}
		if f := o.placeAt(o.object.nodes[i], value); f != nil {
			return f
		}
		i++
	}
	return nil
}

// placeAt adds a position if the value holds one; outside the box that was
// asked for it is null.
func (o *overpass) placeAt(id int64, value []byte) *fault {
	if value[0] != '{' {
		return nil
	}
	members, _, _ := o.objects.members(value)
	at, ok := positionMember(members)
	if !ok {
		return nil
	}
	return o.place(id, at)
}

func (o *overpass) relationMembers(members []Member) *fault {
	for value := range arrayMember(members, "members") {
		if value[0] != '{' {
			continue
		}
		parts, _, _ := o.objects.members(value)
		text, _ := textMember(parts, "type")
		kind, known := osmKindOf(text)
		id, ok := wholeMember(parts, "ref")
		if !known || !ok {
			o.leaveOut("osm_id", "a member of "+osmID(osmRelation, o.object.id)+" has no type or no number", nil)
			continue
		}
		role, _ := textMember(parts, "role")
		if f := o.member(&o.object, osmMember{kind, id, role}); f != nil {
			return f
		}
		if f := o.drawn(parts); f != nil {
			return f
		}
	}
	return nil
}

// drawn reads the geometry of a member, if it comes with one.
func (o *overpass) drawn(parts []Member) *fault {
	var line []int64
	for value := range arrayMember(parts, "geometry") {
		id := o.unnamedNode()
		line = append(line, id)
		if f := o.spendMember(); f != nil {
			return f
		}
		if f := o.placeAt(id, value); f != nil {
			return f
		}
	}
	if line == nil {
		return nil
	}
	return o.memberLine(o.object, line)
}

func textMember(members []Member, name string) (string, bool) {
	value, _ := lookup(members, name)
	return scalarText(value)
}

func wholeMember(members []Member, name string) (int64, bool) {
	text, _ := textMember(members, name)
	v, err := strconv.ParseInt(text, 10, 64)
	return v, err == nil
}

func positionMember(members []Member) (orb.Point, bool) {
	lon, _ := textMember(members, "lon")
	lat, _ := textMember(members, "lat")
	x, ok1 := parseDegrees(lon)
	y, ok2 := parseDegrees(lat)
	return orb.Point{x, y}, ok1 && ok2
}

// arrayMember yields the items of an array, nothing if there is none.
func arrayMember(members []Member, name string) func(func([]byte) bool) {
	value, ok := lookup(members, name)
	if !ok || value[0] != '[' {
		return func(func([]byte) bool) {}
	}
	return elements(value)
}
