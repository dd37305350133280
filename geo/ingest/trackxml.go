package ingest

import (
	"bufio"
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"strings"

	"golang.org/x/text/encoding/charmap"
)

// A trackMarkup takes the elements of an XML document of tracks. Elements go
// by their local names: prefixes and name spaces do not count.
type trackMarkup interface {
	// open is called where the last element of path begins.
	open(path []string, attrs []xml.Attr, line int)
	// close is called where it ends; text is what stands in an element that
	// holds no others. It may be used until close returns.
	close(path []string, text []byte, line int)
}

// An xmlWalk leads a trackMarkup through a document.
type xmlWalk struct {
	log    *trackLog
	markup trackMarkup
	depth  int // that is allowed
	input  *xmlInput

	path []string
	text []byte
	line int // on which text begins
}

// walkXML reads a document to its end. One that ends early is kept up to
// there, with a warning. Entities that a document defines are not expanded:
// they are an error.
func walkXML(r *bufio.Reader, log *trackLog, markup trackMarkup, depth int) *fault {
	w := &xmlWalk{log: log, markup: markup, depth: depth, input: &xmlInput{r: r}}
	d := xml.NewDecoder(w.input)
	d.CharsetReader = charsetReader
	for !log.full() {
		w.input.token = 0
		token, err := d.Token()
		line, _ := d.InputPos()
		if err == io.EOF {
			return nil
		}
		var f *fault
		if err == nil {
			f = w.take(token, line)
		} else {
			f = w.stopped(err, line)
		}
		if f != nil {
			log.stopped = line
		}
		if f != nil || err != nil {
			return f
		}
	}
	return nil
}

func (w *xmlWalk) take(token xml.Token, line int) *fault {
	switch t := token.(type) {
	case xml.StartElement:
		if len(w.path) == w.depth {
			return &fault{
				code: "limit_depth", limit: true,
				text: fmt.Sprintf("elements are nested more than %d deep, the limit", w.depth),
			}
		}
		w.path = append(w.path, t.Name.Local)
		w.text, w.line = w.text[:0], line
		w.markup.open(w.path, t.Attr, line)
	case xml.CharData:
		if len(w.text)+len(t) > xmlTokenBytes {
			return longToken()
		}
		w.text = append(w.text, t...)
	case xml.EndElement:
		w.markup.close(w.path, bytes.TrimSpace(w.text), w.line)
		w.path = w.path[:len(w.path)-1]
		w.text = w.text[:0]
	}
	return nil
}

// stopped says what an error of the decoder means; nil if what was read so far
// can be used.
func (w *xmlWalk) stopped(err error, line int) *fault {
	if errors.Is(err, errTokenLong) {
		return longToken()
	}
	var charset charsetError
	if errors.As(err, &charset) {
		return &fault{code: "xml_encoding", text: charset.Error(), hint: "save it with the UTF-8 encoding"}
	}
	var syntax *xml.SyntaxError
	if errors.As(err, &syntax) && strings.Contains(syntax.Msg, "unexpected EOF") {
		w.log.endsEarly(line)
		return nil
	}
	text := err.Error()
	if syntax != nil {
		text = syntax.Msg
	}
	return &fault{
		code: "xml_syntax",
		text: "is not valid XML: " + shortened(text),
		hint: "export it again",
	}
}

func longToken() *fault {
	return &fault{
		code: "limit_bytes", limit: true,
		text: fmt.Sprintf("a tag or a text has more than %d bytes, the limit", xmlTokenBytes),
	}
}

// xmlTokenBytes is how long a tag, a comment or a stretch of text may be: a
// line of a million positions.
const xmlTokenBytes = 32 << 20

var errTokenLong = errors.New("token is too long")

// An xmlInput counts the bytes of a token, so that none fills the memory.
type xmlInput struct {
	r     *bufio.Reader
	token int
}

func (in *xmlInput) ReadByte() (byte, error) {
	if in.token++; in.token > xmlTokenBytes {
		return 0, errTokenLong
	}
	return in.r.ReadByte()
}

// Read serves the readers of other charsets.
func (in *xmlInput) Read(p []byte) (int, error) {
	if in.token > xmlTokenBytes {
		return 0, errTokenLong
	}
	n, err := in.r.Read(p)
	in.token += n
	return n, err
}

// charsetReader turns the charsets that old programs write into UTF-8.
func charsetReader(label string, r io.Reader) (io.Reader, error) {
	switch strings.ToLower(label) {
	case "us-ascii", "ascii":
		return r, nil
	case "iso-8859-1", "latin1":
		return charmap.ISO8859_1.NewDecoder().Reader(r), nil
	case "iso-8859-15":
		return charmap.ISO8859_15.NewDecoder().Reader(r), nil
	case "windows-1252", "cp1252":
		return charmap.Windows1252.NewDecoder().Reader(r), nil
	}
	return nil, charsetError(label)
}

// A charsetError is the name of a charset that is not known.
type charsetError string

func (e charsetError) Error() string { return "encoding " + Quoted(string(e)) + " is unknown" }

// attribute is the value of an attribute by its local name; empty if there is
// none.
func attribute(attrs []xml.Attr, name string) []byte {
	for _, a := range attrs {
		if a.Name.Local == name {
			return trimBlanks([]byte(a.Value))
		}
	}
	return nil
}

// within reports whether the innermost elements of path are names, outermost
// first.
func within(path []string, names ...string) bool {
	if len(path) < len(names) {
		return false
	}
	for i, name := range names {
		if path[len(path)-len(names)+i] != name {
			return false
		}
	}
	return true
}
