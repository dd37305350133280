package ingest

import (
	"bufio"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"strconv"
	"strings"

	"github.com/paulmach/orb"
)

// osmXML reads an OSM XML document (wiki.openstreetmap.org/wiki/OSM_XML), also
// as the Overpass server writes it, token by token. It knows no entities but
// those of XML itself, so none can grow.
type osmXML struct {
	*extract
	bytes   *osmBytes
	decoder *xml.Decoder
	open    []string // names of the elements that are open
	rooted  bool     // the root has begun

	object  osmObject // the one being read
	reading bool      // false between objects
	skipped bool      // the object cannot be used
	remark  []byte    // text of the server
	line    []int64   // nodes of a member that came with its geometry
}

func readOSMXML(r io.Reader, e *extract) *fault {
	b := &osmBytes{Reader: bufio.NewReaderSize(r, 1<<16), limit: e.limits.Bytes}
	x := &osmXML{extract: e, bytes: b, decoder: xml.NewDecoder(b)}
	x.decoder.CharsetReader = func(name string, _ io.Reader) (io.Reader, error) {
		return nil, fmt.Errorf("its encoding is %s, not UTF-8", Quoted(name))
	}
	for {
		x.bytes.token = 0
		token, err := x.decoder.Token()
		if err == io.EOF {
			return x.ended()
		}
		if err != nil {
			return x.broken(err)
		}
		if f := x.take(token); f != nil {
			return x.placed(f)
		}
	}
}

func (x *osmXML) ended() *fault {
	switch {
	case len(x.open) > 0:
	case x.rooted:
		return nil
	default:
		return &fault{code: "xml_root", text: "is no map extract: has no osm element"}
	}
	return x.placed(&fault{
		code: "input_short", text: "ends early, " + Quoted(x.open[len(x.open)-1]) + " is still open",
		hint: "copy or export it again",
	})
}

// broken is the fault behind an error of the decoder.
func (x *osmXML) broken(err error) *fault {
	if x.bytes.fault != nil {
		return x.bytes.fault
	}
	var syntax *xml.SyntaxError
	if !errors.As(err, &syntax) {
		return x.placed(&fault{code: "xml_syntax", text: "is not readable XML: " + strings.TrimPrefix(err.Error(), "xml: ")})
	}
	if syntax.Msg == "unexpected EOF" && len(x.open) > 0 {
		return x.ended()
	}
	return x.placed(&fault{code: "xml_syntax", text: "is not valid XML: " + syntax.Msg})
}

// placed adds the line to a fault.
func (x *osmXML) placed(f *fault) *fault {
	if f.limit {
		return f
	}
	line, column := x.decoder.InputPos()
	f.text += fmt.Sprintf(" at line %d, column %d", line, column)
	return f
}

func (x *osmXML) take(token xml.Token) *fault {
	switch t := token.(type) {
	case xml.StartElement:
		if len(x.open) == x.limits.Depth {
			return &fault{code: "limit_depth", limit: true, text: fmt.Sprintf("elements are nested more than %d deep, the limit", x.limits.Depth)}
		}
		x.open = append(x.open, t.Name.Local)
		return x.start(t)
	case xml.EndElement:
		x.open = x.open[:len(x.open)-1]
		return x.end(t)
	case xml.CharData:
		if len(x.open) == 2 && x.open[1] == "remark" {
			x.remark = append(x.remark[:0], t...)
		}
	}
	return nil
}

// start takes a start tag; open holds its name already.
func (x *osmXML) start(t xml.StartElement) *fault {
	name := t.Name.Local
	switch len(x.open) {
	case 1:
		if name != "osm" || x.rooted {
			return &fault{code: "xml_root", text: "is no map extract: its root is " + Quoted(name) + ", not one osm"}
		}
		x.rooted = true
	case 2:
		kind, known := osmKindOf(name)
		x.reading = known
		if known {
			return x.begin(kind, t.Attr)
		}
	case 3:
		if x.reading {
			return x.part(name, t.Attr)
		}
	case 4:
		if x.reading && name == "nd" && x.open[2] == "member" {
			return x.vertex(t.Attr)
		}
	}
	return nil
}

// begin takes the attributes of an object.
func (x *osmXML) begin(kind osmKind, attributes []xml.Attr) *fault {
	o := &x.object
	*o = osmObject{kind: kind, tags: o.tags[:0], nodes: o.nodes[:0], members: o.members[:0]}
	id, err := strconv.ParseInt(osmAttribute(attributes, "id"), 10, 64)
	if x.skipped = err != nil; x.skipped {
		x.leaveOut("osm_id", fmt.Sprintf("a %v has the id %s, which is not a whole number", kind, Quoted(osmAttribute(attributes, "id"))), nil)
		return nil
	}
	o.id = id
	if osmAttribute(attributes, "visible") == "false" || osmAttribute(attributes, "action") == "delete" {
		x.skipped = true
		x.deleted(o)
		return nil
	}
	if kind != osmNode {
		return nil
	}
	at, ok := positionOf(attributes)
	if !ok {
		x.skipped = true
		x.leaveOut("osm_position", osmID(kind, id)+" has no position", nil)
		return nil
	}
	return x.place(id, at)
}

// part takes what stands in an object.
func (x *osmXML) part(name string, attributes []xml.Attr) *fault {
	o := &x.object
	switch {
	case x.skipped:
	case name == "tag":
		return x.tag(o, osmAttribute(attributes, "k"), osmAttribute(attributes, "v"))
	case name == "nd" && o.kind == osmWay:
		return x.wayNode(attributes)
	case name == "member" && o.kind == osmRelation:
		return x.relationMember(attributes)
	}
	return nil
}

// wayNode takes a node of a way, which may come with its position, or without
// one from a server that was asked for the part inside a box.
func (x *osmXML) wayNode(attributes []xml.Attr) *fault {
	at, placed := positionOf(attributes)
	id, err := strconv.ParseInt(osmAttribute(attributes, "ref"), 10, 64)
	if err != nil {
		id = x.unnamedNode()
	}
	if placed {
		if f := x.place(id, at); f != nil {
			return f
		}
	}
	return x.node(&x.object, id)
}

func (x *osmXML) relationMember(attributes []xml.Attr) *fault {
	x.line = x.line[:0]
	kind, known := osmKindOf(osmAttribute(attributes, "type"))
	id, err := strconv.ParseInt(osmAttribute(attributes, "ref"), 10, 64)
	if !known || err != nil {
		x.leaveOut("osm_id", fmt.Sprintf("a member of %s is a %s with the id %s", osmID(osmRelation, x.object.id),
			Quoted(osmAttribute(attributes, "type")), Quoted(osmAttribute(attributes, "ref"))), nil)
		return nil
	}
	return x.member(&x.object, osmMember{kind, id, osmAttribute(attributes, "role")})
}

// vertex takes a position of a member that comes with its geometry.
func (x *osmXML) vertex(attributes []xml.Attr) *fault {
	id := x.unnamedNode()
	x.line = append(x.line, id)
	if f := x.spendMember(); f != nil {
		return f
	}
	if at, ok := positionOf(attributes); ok {
		return x.place(id, at)
	}
	return nil
}

// end takes an end tag; open is without its name already.
func (x *osmXML) end(t xml.EndElement) *fault {
	switch len(x.open) {
	case 1:
		if t.Name.Local == "remark" {
			x.remarked(string(x.remark))
		}
		if x.reading && !x.skipped {
			return x.add(x.object)
		}
	case 2:
		if len(x.line) > 0 && t.Name.Local == "member" {
			line := x.line
			x.line = x.line[:0]
			return x.memberLine(x.object, line)
		}
	}
	return nil
}

// osmAttribute returns the value of an attribute, or nothing.
func osmAttribute(attributes []xml.Attr, name string) string {
	for _, a := range attributes {
		if a.Name.Local == name {
			return a.Value
		}
	}
	return ""
}

func positionOf(attributes []xml.Attr) (orb.Point, bool) {
	lon, ok1 := parseDegrees(osmAttribute(attributes, "lon"))
	lat, ok2 := parseDegrees(osmAttribute(attributes, "lat"))
	return orb.Point{lon, lat}, ok1 && ok2
}

// parseDegrees reads a plain decimal number.
func parseDegrees(text string) (float64, bool) {
	if strings.Trim(text, "+-.0123456789eE") != "" {
		return 0, false // ParseFloat also takes infinities and hexadecimals
	}
	v, err := strconv.ParseFloat(text, 64)
	return v, err == nil
}
