package ingest

import (
	"bytes"
	"fmt"
)

// signatures are the first bytes of formats that are taken for GeoJSON now
// and then. Sources: RFC 1952 2.3.1 (gzip), the Unicode Standard 2.6 (byte
// order marks); the others from memory.
var signatures = []struct {
	magic, what, hint string
}{
	{"\x1f\x8b", "gzip-compressed data", "unpack it first"},
	{"PK\x03\x04", "a zip archive", "unpack it first"},
	{"\xfe\xff", "UTF-16 text", "save it with the UTF-8 encoding"},
	{"\xff\xfe", "UTF-16 text", "save it with the UTF-8 encoding"},
	{"%PDF", "a PDF document", exportIt},
	{"SQLite format 3\x00", "a database", "export its layers as GeoJSON"},
	{"\x00\x00\x27\x0a", "a shapefile", "convert it to GeoJSON in WGS 84"},
}

// sniff looks at the first bytes of an input, and returns a fault if they
// cannot begin GeoJSON text.
func sniff(head []byte) *fault {
	for _, s := range signatures {
		if bytes.HasPrefix(head, []byte(s.magic)) {
			return foreign(s.what, s.hint)
		}
	}
	text := bytes.TrimLeft(head, " \t\r\n\x1e")
	switch {
	case len(text) == 0:
		return nil
	case len(text) > 1 && (text[0] == 0 || text[1] == 0):
		return foreign("UTF-16 text", "save it with the UTF-8 encoding")
	case text[0] == '<':
		return markup(text)
	case text[0] != '{' && looksLikeTable(text):
		return foreign("a table", exportIt)
	case text[0] != '{':
		f := notGeoJSON(fmt.Sprintf("begins with %s, not with {", found(text[0])))
		if text[0] == '[' {
			f.hint = wrapIt
		}
		return f
	}
	return nil
}

// What to do about a text that is no GeoJSON.
const (
	exportIt = "export the outlines as GeoJSON"
	wrapIt   = `if it is a list of features, put {"type":"FeatureCollection","features": before it and } after it`
)

func notGeoJSON(why string) *fault {
	return &fault{code: "format_unknown", text: "is not GeoJSON: " + why, hint: exportIt}
}

// looksLikeTable reports whether the first two lines of a text have as many
// separators of one sort.
func looksLikeTable(text []byte) bool {
	lines := bytes.SplitN(text, []byte{'\n'}, 3)
	if len(lines) < 2 {
		return false
	}
	for _, separator := range []string{",", ";", "\t"} {
		n := bytes.Count(lines[0], []byte(separator))
		if n > 0 && text[0] != '[' && n == bytes.Count(lines[1], []byte(separator)) {
			return true
		}
	}
	return false
}

func foreign(what, hint string) *fault {
	return &fault{code: "format_foreign", text: "is not GeoJSON but looks like " + what, hint: hint}
}

// markup tells a web page, saved in place of the file it links to, from XML.
func markup(text []byte) *fault {
	text = bytes.ToLower(text)
	if bytes.Contains(text, []byte("<html")) || bytes.HasPrefix(text, []byte("<!doctype html")) {
		return foreign("a web page", "download the file itself")
	}
	return foreign("XML", "convert it to GeoJSON")
}
