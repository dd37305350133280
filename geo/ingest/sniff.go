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
	{"%PDF", "a PDF document", "export the outlines as GeoJSON"},
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
	case text[0] != '{':
		return &fault{
			code: "format_unknown",
			text: fmt.Sprintf("is not GeoJSON: begins with %s, not with {", found(text[0])),
		}
	}
	return nil
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
