package ingest

import (
	"bytes"
	"crypto/sha256"
	"hash"
	"io"
	"iter"
)

// GeoJSON reads RFC 7946 text from r: a FeatureCollection, a Feature or a
// bare geometry, or many of them on lines of their own (also with the record
// separators of RFC 8142). It yields the sites one at a time, each with its
// problems; what cannot be read is a refused site without features. source
// names the input in them. The sequence reads r, so it runs only once.
//
// A FeatureCollection on a line is a site of its own; Features and geometries
// on lines that follow each other are one site together, and a line among
// them that cannot be read refuses that site.
func GeoJSON(r io.Reader, source string, limits Limits) iter.Seq[*Collection] {
	return func(yield func(*Collection) bool) { newGeoJSON(r, source, limits, yield).read() }
}

func newGeoJSON(r io.Reader, source string, limits Limits, yield func(*Collection) bool) *geoJSON {
	limits = limits.filled()
	return &geoJSON{input: newInput(r, limits), source: source, limits: limits, yield: yield, reader: newGeometries(newObjects(), limits.Positions)}
}

// geoJSON hands out the sites of one input.
type geoJSON struct {
	*input
	source string
	limits Limits
	yield  func(*Collection) bool
	reader *geometries // of collections, one after the other
	prompt bool        // a collection on the first line is one of many, were it alone

	open  *site     // its features stand on lines of their own
	bytes int       // of those lines
	lines hash.Hash // of those lines
}

// read finds out whether the input is one document or many: they are many if
// its first line is a whole value and more follows, or if it is no value at
// all but the next line is one, or if it broke off and a collection follows.
func (g *geoJSON) read() {
	if f := sniff(beginning(g.r, 512)); f != nil {
		g.document(record{fault: f, at: -1})
		return
	}
	first, ok := g.next()
	if !ok {
		g.document(record{fault: &fault{code: "input_empty", text: "is empty"}, at: -1})
		return
	}
	if first.fault == nil && !first.complete() && g.separator == '\n' {
		document, lines := g.firstBroken(first)
		if lines == nil {
			g.document(document)
			return
		}
		g.records(lines)
		return
	}
	if g.many = first.complete(); g.prompt && g.isCollection(first.text) {
		g.records([]record{first})
		return
	}
	second, more := g.next()
	if g.separator == '\n' && !(more && (first.complete() || second.object())) {
		g.document(first)
		return
	}
	read := []record{first}
	if more {
		read = append(read, second)
	}
	g.records(read)
}

// document yields the one site of an input.
func (g *geoJSON) document(rec record) {
	s := newSite(g.source, 0, g.limits)
	if kind, value, ok := rec.open(); ok {
		s.top(kind, value, 0)
	} else {
		s.report(rec.problem(s.file()))
	}
	g.sum.Sum(s.Digest[:0])
	g.yield(s.doubted().done())
}

// records yields the sites of an input of many records, of which the first
// ones were read already.
func (g *geoJSON) records(read []record) {
	g.many, g.sum = true, nil
	for _, rec := range read {
		if !g.record(rec) {
			return
		}
	}
	for rec, ok := g.next(); ok; rec, ok = g.next() {
		if !g.record(rec) {
			return
		}
	}
	g.close()
}

// record takes one record, and returns false if no more are wanted.
func (g *geoJSON) record(rec record) bool {
	kind, value, ok := rec.open()
	switch {
	case ok && kind == "FeatureCollection":
		s := newSiteFor(g.reader.again(g.limits.Positions), g.source, rec.line, g.limits)
		s.top(kind, value, rec.line)
		s.Digest = sha256.Sum256(rec.content())
		return g.close() && g.yield(s.doubted().done())
	case ok:
		g.join(kind, value, rec)
		return true
	}
	s := newSite(g.source, rec.line, g.limits)
	place := s.file()
	place.Label = siteID(rec.text)
	if g.open != nil {
		g.open.report(rec.problem(place))
		return true
	}
	s.report(rec.problem(place))
	s.Digest = sha256.Sum256(rec.content())
	return g.yield(s.doubted().done())
}

// join adds a feature or a bare geometry to the open site.
func (g *geoJSON) join(kind string, value []byte, rec record) {
	if g.open == nil {
		g.open = newSite(g.source, rec.line, g.limits)
		g.bytes, g.lines = 0, sha256.New()
	} else {
		g.lines.Write([]byte{'\n'})
	}
	g.lines.Write(rec.content())
	g.bytes += len(rec.text)
	switch {
	case g.open.full:
	case g.bytes > g.limits.Bytes:
		g.open.exceed("limit_bytes", g.limits.Bytes, "bytes")
	default:
		g.open.top(kind, value, rec.line)
	}
}

// close yields the open site, if any.
func (g *geoJSON) close() bool {
	if g.open == nil {
		return true
	}
	s := g.open
	g.open = nil
	g.lines.Sum(s.Digest[:0])
	return g.yield(s.doubted().done())
}

// siteID finds the id of the site in a line that cannot be read, if it stands
// where it usually does.
func siteID(line []byte) string {
	_, after, _ := bytes.Cut(line, []byte(`"site"`))
	_, after, _ = bytes.Cut(after, []byte(`"id"`))
	after = bytes.TrimLeft(after, ": \t")
	if len(after) == 0 || after[0] != '"' {
		return ""
	}
	id, _, closed := bytes.Cut(after[1:], []byte{'"'})
	if !closed {
		return ""
	}
	return string(id)
}
