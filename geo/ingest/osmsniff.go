package ingest

import (
	"bufio"
	"bytes"
	"encoding/json"
	"io"
)

// An extractForm is one of the forms of a map extract.
type extractForm int

const (
	noExtract extractForm = iota
	xmlExtract
	pbfExtract
	jsonExtract
)

// extractFormat looks at the beginning of an input.
func extractFormat(r *bufio.Reader) extractForm {
	head := Beginning(r)
	if bytes.HasPrefix(head[min(4, len(head)):], []byte(pbfBegin)) {
		return pbfExtract
	}
	text := textOf(head)
	switch {
	case len(text) == 0:
		return noExtract
	case text[0] == '<' && bytes.Contains(text, []byte("<osm")):
		return xmlExtract
	case text[0] == '{' && hasElements(text):
		return jsonExtract
	}
	return noExtract
}

// IsSite reports whether an input begins as one that [Read] can read: GeoJSON
// or a map extract. The first few thousand bytes are enough.
func IsSite(head []byte) bool {
	if len(textOf(head)) == 0 {
		return false
	}
	return extractFormat(bufio.NewReaderSize(bytes.NewReader(head), sniffBytes)) != noExtract || sniff(head) == nil
}

// textOf is the beginning of a text without byte order mark and blanks.
func textOf(head []byte) []byte {
	return bytes.TrimLeft(bytes.TrimPrefix(head, []byte("\xef\xbb\xbf")), " \t\r\n")
}

// hasElements reports whether a JSON object, of which text is the beginning,
// has the marks of the Overpass server among its first members.
func hasElements(text []byte) bool {
	d := json.NewDecoder(bytes.NewReader(text))
	if _, err := d.Token(); err != nil {
		return false
	}
	for {
		name, err := d.Token()
		if err != nil {
			return false
		}
		switch name {
		case "elements", "osm3s":
			return true
		case "type", "features":
			return false
		}
		var value json.RawMessage
		if d.Decode(&value) != nil {
			return false
		}
	}
}

// notExtract says what an input is that is no map extract.
func notExtract(r *bufio.Reader) *fault {
	head, err := r.Peek(512)
	if len(head) == 0 && err != io.EOF {
		return unreadOn(err)
	}
	for _, s := range signatures {
		if bytes.HasPrefix(head, []byte(s.magic)) {
			return foreignToExtracts(s.what, s.hint)
		}
	}
	text := textOf(head)
	switch {
	case len(text) == 0:
		return &fault{code: "input_empty", text: "is empty"}
	case bytes.HasPrefix(text, []byte("BZh")): // from memory
		return foreignToExtracts("bzip2-compressed data", "unpack it first")
	case bytes.Contains(bytes.ToLower(text), []byte("<html")):
		return foreignToExtracts("a web page", "download the file itself")
	case text[0] == '<':
		return &fault{code: "format_unknown", text: "is no map extract: is XML without an osm element"}
	case text[0] == '{':
		return &fault{code: "format_unknown", text: "is no map extract: is JSON without a member elements"}
	}
	return &fault{code: "format_unknown", text: "is no map extract: begins with " + found(text[0])}
}

func foreignToExtracts(what, hint string) *fault {
	return &fault{code: "format_foreign", text: "is no map extract but looks like " + what, hint: hint}
}
