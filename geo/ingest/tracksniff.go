package ingest

import (
	"bufio"
	"bytes"
	"encoding/xml"
	"io"
	"path"
	"regexp"
	"strings"
)

// sniffBytes is how much of a file is looked at to tell its format.
const sniffBytes = 1 << 14

var byteOrderMark = []byte("\xef\xbb\xbf")

// A trackForm is a format of tracks.
type trackForm struct {
	name string
	read func(*bufio.Reader, *trackLog, Limits) *fault
}

var (
	formGPX    = trackForm{"GPX", readGPX}
	formNMEA   = trackForm{"NMEA 0183", readNMEA}
	formKML    = trackForm{"KML", readKML}
	formKMZ    = trackForm{"KMZ", readKMZ}
	formFIT    = trackForm{"FIT", readFIT}
	formTCX    = trackForm{"TCX", readTCX}
	formCSV    = trackForm{"CSV", readFixTable}
	formRTKLIB = trackForm{"RTKLIB", readPosLog}
)

// rootForms are the XML formats by their outermost element.
var rootForms = map[string]trackForm{
	"gpx": formGPX, "kml": formKML, "TrainingCenterDatabase": formTCX,
}

// sentence is the beginning of a sentence of NMEA 0183.
var sentence = regexp.MustCompile(`\$[A-Z]{2}(GGA|RMC|GST|GLL|GNS|GSA|GSV|VTG|ZDA|TXT),`)

// trackFormOf tells the format of an input by its first bytes, or why it is no
// file of tracks.
func trackFormOf(head []byte, source string) (trackForm, *fault) {
	head = bytes.TrimPrefix(head, byteOrderMark)
	ending := strings.ToLower(path.Ext(UnpackedName(source)))
	text := trimBlanks(head)
	switch {
	case len(text) == 0:
		return trackForm{}, &fault{code: "input_empty", text: "is empty"}
	case beginsFIT(head):
		return formFIT, nil
	case bytes.HasPrefix(head, []byte("PK\x03\x04")) && (ending == ".kmz" || holdsKML(head)):
		return formKMZ, nil
	case text[0] == '<':
		return markupForm(text)
	case text[0] == '{' || text[0] == '[':
		return trackForm{}, foreignToTracks("JSON", "")
	case isPosLog(text):
		return formRTKLIB, nil
	case isFixTable(text):
		return formCSV, nil
	case sentence.Match(head):
		return formNMEA, nil
	}
	for _, s := range signatures {
		if bytes.HasPrefix(head, []byte(s.magic)) {
			return trackForm{}, foreignToTracks(s.what, s.hint)
		}
	}
	switch ending {
	case ".csv", ".txt", ".tsv":
		return formCSV, nil // says what is missing
	case ".nmea":
		return formNMEA, nil
	case ".pos":
		return formRTKLIB, nil
	}
	return trackForm{}, &fault{
		code: "format_unknown",
		text: "is no walked track: begins with " + found(text[0]),
		hint: "export it as GPX, NMEA 0183, KML, FIT, TCX or CSV",
	}
}

// holdsKML reports whether the first entry of a zip archive may be KML.
func holdsKML(head []byte) bool { return bytes.Contains(bytes.ToLower(head), []byte(".kml")) }

// markupForm tells an XML format by its outermost element.
func markupForm(text []byte) (trackForm, *fault) {
	root := rootElement(text)
	if form, ok := rootForms[root]; ok {
		return form, nil
	}
	if strings.EqualFold(root, "html") || bytes.HasPrefix(bytes.ToLower(text), []byte("<!doctype html")) {
		return trackForm{}, foreignToTracks("a web page", "download the file itself")
	}
	if root == "" {
		return trackForm{}, foreignToTracks("XML without an element", "")
	}
	return trackForm{}, foreignToTracks("XML of another kind, its outermost element is "+Quoted(root), "")
}

// rootElement is the local name of the first element; empty if there is none.
func rootElement(text []byte) string {
	d := xml.NewDecoder(bytes.NewReader(text))
	d.Strict = false
	d.CharsetReader = func(_ string, r io.Reader) (io.Reader, error) { return r, nil } // names are ASCII
	for {
		token, err := d.RawToken()
		if err != nil {
			return ""
		}
		if start, ok := token.(xml.StartElement); ok {
			return start.Name.Local
		}
	}
}

func foreignToTracks(what, hint string) *fault {
	return &fault{code: "format_foreign", text: "is no walked track but looks like " + what, hint: hint}
}
