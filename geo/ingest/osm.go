package ingest

import (
	"bufio"
	"crypto/sha256"
	"fmt"
	"io"
	"iter"
)

// Read reads the sites of an input that may be GeoJSON or a map extract, told
// by its content; see [GeoJSON] and [OSM]. What is neither is refused as no
// GeoJSON.
func Read(r io.Reader, source string, limits Limits) iter.Seq[*Collection] {
	return read(r, source, limits, false)
}

// ReadPrompt is [Read] for a stream whose sender may wait for an answer. A
// FeatureCollection on the first line is yielded before more comes: it is the
// site on line 1, were it the only one.
func ReadPrompt(r io.Reader, source string, limits Limits) iter.Seq[*Collection] {
	return read(r, source, limits, true)
}

func read(r io.Reader, source string, limits Limits, prompt bool) iter.Seq[*Collection] {
	return func(yield func(*Collection) bool) {
		b := bufio.NewReaderSize(r, 1<<16)
		if extractFormat(b) != noExtract {
			OSM(b, source, limits)(yield)
			return
		}
		g := newGeoJSON(b, source, limits, yield)
		g.prompt = prompt
		g.read()
	}
}

// OSM reads a map extract in one of the forms in which OpenStreetMap data
// travels: XML, PBF, or the JSON of the Overpass server, told by its content.
// It yields one site. source names the input in problems. The sequence reads
// r, so it runs only once.
//
// Nodes with tags become Points. Ways become LineStrings, and Polygons if they
// are closed and their tags do not speak of a line; a closed hedge or wall is
// a line unless it has area=yes. A barrier round an area that is tagged on the
// same way becomes two features. Relations of type multipolygon become
// MultiPolygons. Their rings are built by geometry alone: stretches that occur
// twice cancel out, what is left is followed from node to node, and rings
// within rings are holes by turns. Roles only earn a note where they say
// otherwise.
//
// Features come in the order nodes, ways, relations, by id. The property "id"
// is osm:node/1, osm:way/2 or osm:relation/3 (osm:way/2/barrier for the
// second feature of a way); tags stand beside it by name, and those that bear
// the name of an attribute of a site file under "tags". The member
// "attribution" names the makers of the data, as ODbL 1.0 section 4.3 asks.
//
// JSON, which is held whole while it is read, may have a quarter of
// [Limits.Bytes]; of PBF the unpacked bytes count too.
//
// An extract that was cut at an edge lacks objects. Areas that lack a way or a
// node are left out with a warning, lines keep the stretches that are whole.
// Beside the problems an input and a position can have, there are, by
// [Problem.Code]:
//
//   - refusals: xml_syntax, xml_root, pbf_damaged, pbf_feature, osm_element,
//     limit_nodes, limit_ways, limit_members, limit_tags, limit_rings
//   - left out, a warning: osm_id, osm_position, osm_nodes_unsaid, osm_way_cut,
//     osm_relation_cut, osm_relation_open, osm_relation_crossed,
//     osm_relation_tags, and line_short, ring_short, ring_flat
//   - other warnings: osm_remark, osm_moved, osm_line_cut
//   - notes: osm_deleted, osm_untagged, osm_redundant, osm_relation_other,
//     osm_relation_untagged, osm_tags_outer, osm_roles, osm_barrier
func OSM(r io.Reader, source string, limits Limits) iter.Seq[*Collection] {
	return func(yield func(*Collection) bool) {
		yield(readExtract(bufio.NewReaderSize(r, 1<<16), source, limits.filled()))
	}
}

// osmAttribution is what the licence of the data asks to be shown (ODbL 1.0
// section 4.3; osm.org/copyright).
const osmAttribution = "Map data © OpenStreetMap contributors, ODbL 1.0"

func readExtract(r *bufio.Reader, source string, limits Limits) *Collection {
	s := newSite(source, 0, limits)
	s.SetMember("attribution", osmAttribution)
	e := newExtract(limits)
	sum := sha256.New()
	tee := io.TeeReader(r, sum)
	var f *fault
	switch extractFormat(r) {
	case pbfExtract:
		f = readPBF(tee, e)
	case xmlExtract:
		f = readOSMXML(tee, e)
	case jsonExtract:
		f = readOverpass(tee, e)
	default:
		f = notExtract(r)
	}
	if f != nil {
		s.report(Problem{Severity: Refusal, Code: f.code, Place: s.file(), Text: f.text, Hint: f.hint})
	} else {
		newOSMSite(s, e).build()
	}
	sum.Sum(s.Digest[:0])
	return s.done()
}

// unreadOn is the fault of an input that fails while it is read.
func unreadOn(err error) *fault {
	return &fault{code: "read_failed", text: "cannot be read on: " + err.Error()}
}

// beyond is the fault of an input that has too much of something.
func beyond(code string, limit int, of string) *fault {
	return &fault{
		code: code, limit: true,
		text: fmt.Sprintf("has more than %d %s, the limit for one site", limit, of),
		hint: "cut out a smaller extract",
	}
}
