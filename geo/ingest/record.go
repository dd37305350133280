package ingest

import (
	"bytes"
	"fmt"
	"slices"
)

// A record is one stretch of an input.
type record struct {
	text    []byte
	line    int // on which it begins
	offset  int // at which it begins
	grammar grammar
	fault   *fault
	at      int // offset of the fault in text, -1 if it has none
}

// add takes the next bytes of the record.
func (rec *record) add(chunk []byte, limit int) {
	if len(rec.text)+len(chunk) > limit {
		rec.fail(tooLong(limit), -1)
		return
	}
	good, f := rec.grammar.feed(chunk)
	if room := cap(rec.text); len(rec.text)+len(chunk) > room {
		rec.text = slices.Grow(rec.text, room+len(chunk)) // at least double it
	}
	rec.text = append(rec.text, chunk...)
	if f != nil {
		rec.fail(f, len(rec.text)-len(chunk)+good)
	}
}

// tooLong is the fault of a text of more bytes than one site may have.
func tooLong(limit int) *fault {
	return &fault{
		code:  "limit_bytes",
		limit: true,
		text:  fmt.Sprintf("has more than %d bytes, the limit for one site", limit),
		hint:  "split it into smaller files",
	}
}

func (rec *record) fail(f *fault, at int) { rec.fault, rec.at = f, at }

// complete reports whether the record is one whole value.
func (rec *record) complete() bool { return rec.fault == nil && rec.grammar.complete() }

// object reports whether the record is one whole object.
func (rec *record) object() bool { return rec.complete() && trimBlanks(rec.text)[0] == '{' }

// content is the text without its line end.
func (rec *record) content() []byte { return bytes.TrimRight(rec.text, "\r\n") }

// open returns the GeoJSON object a record holds and its kind. It is not ok
// if the record has a fault, or turns out to have one.
func (rec *record) open() (kind string, value []byte, ok bool) {
	rec.close()
	if rec.fault != nil {
		return "", nil, false
	}
	value = trimBlanks(rec.text)
	kind, f := topKind(value)
	if f != nil {
		rec.fail(f, -1)
		return "", nil, false
	}
	return kind, value, true
}

// close looks at the text as a whole, once no more will be added.
func (rec *record) close() {
	if rec.fault == nil && !rec.grammar.complete() {
		rec.fail(endsEarly(&rec.grammar), -1)
	}
	if rec.fault != nil {
		return
	}
	if at, f := notUTF8(rec.text, rec.offset); f != nil {
		rec.fail(f, at)
	}
}

// topKind returns the type of a whole GeoJSON text.
func topKind(value []byte) (string, *fault) {
	const want = "a FeatureCollection, a Feature or a geometry"
	if value[0] != '{' {
		f := notGeoJSON("holds " + describe(value) + ", not " + want)
		if value[0] == '[' {
			f.hint = wrapIt
		}
		return "", f
	}
	for name, value := range pairs(value) {
		if unquote(name) != "type" {
			continue
		}
		kind, _ := scalarText(value)
		if kind == "FeatureCollection" || kind == "Feature" || isGeometry(kind) {
			return kind, nil
		}
		return "", notGeoJSON("its type is " + describe(value) + ", not " + want)
	}
	return "", notGeoJSON("has no type, must be " + want)
}

// problem is the record's fault as seen from outside. Lines and columns are
// those of the input.
func (rec *record) problem(place Place) Problem {
	p := Problem{Severity: Refusal, Code: rec.fault.code, Place: place, Text: rec.fault.text, Hint: rec.fault.hint}
	if rec.at < 0 {
		return p
	}
	line, column := lineColumn(rec.text, rec.at)
	line += rec.line - 1
	if line == place.Line {
		p.Text += fmt.Sprintf(" at column %d", column)
	} else {
		p.Text += fmt.Sprintf(" at line %d, column %d", line, column)
	}
	return p
}
