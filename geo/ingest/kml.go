package ingest

import (
	"bufio"
	"bytes"
	"encoding/xml"
	"fmt"
	"time"
)

// A kmlReader reads what is drawn and recorded in KML 2.2 and 2.3 (OGC
// 12-007r2) and the older gx extension: LineString and Track, and Polygon and
// LinearRing, which are closed. The lines and tracks of a Placemark are
// segments of one track. Points and what is linked are passed over.
type kmlReader struct {
	log *trackLog

	name   string // of the Placemark at hand
	first  int    // of its tracks
	walked bool   // the open track is a line of the Placemark
	edged  bool   // the open polygon has its edge

	line   int     // of the Track at hand
	times  []int64 // packed
	coords int
}

func readKML(r *bufio.Reader, log *trackLog, limits Limits) *fault {
	return walkXML(r, log, &kmlReader{log: log}, limits.Depth)
}

func (k *kmlReader) open(path []string, _ []xml.Attr, line int) {
	switch path[len(path)-1] {
	case "Placemark":
		k.name, k.first, k.walked = "", k.log.count(), false
	case "LineString":
		k.walk(line)
	case "Track":
		k.walk(line)
		k.line, k.times, k.coords = line, k.times[:0], 0
	case "Polygon":
		k.draw(line)
	case "LinearRing":
		switch {
		case within(path, "Polygon", "innerBoundaryIs", "LinearRing"):
			k.log.pause()
		case !within(path, "Polygon", "outerBoundaryIs", "LinearRing"):
			k.draw(line)
		}
	}
}

// walk opens a line or track.
func (k *kmlReader) walk(line int) {
	if k.walked {
		k.log.pause()
		return
	}
	k.log.begin(line)
	k.walked = true
}

// draw opens a polygon.
func (k *kmlReader) draw(line int) {
	k.log.begin(line)
	k.log.track().closed = true
	k.walked, k.edged = false, false
}

func (k *kmlReader) close(path []string, text []byte, line int) {
	switch {
	case within(path, "LineString", "coordinates"), within(path, "LinearRing", "coordinates"):
		if k.ringFits(path, line) {
			k.coordinates(text, line)
		}
	case within(path, "Point", "coordinates"):
		k.log.waypoint(line)
	case within(path, "Track", "when"):
		k.when(text, line)
	case within(path, "Track", "coord"):
		k.coord(text, line)
	case within(path, "Track"):
		k.pairs()
	case within(path, "Placemark", "name"):
		k.name = string(text)
	case within(path, "Placemark"):
		for i := k.first; i < len(k.log.tracks); i++ {
			k.log.tracks[i].name = k.name
		}
	}
}

// ringFits reports whether coordinates may stand here: a polygon has one edge
// and then its holes.
func (k *kmlReader) ringFits(path []string, line int) bool {
	edge := within(path, "Polygon", "outerBoundaryIs", "LinearRing", "coordinates")
	hole := within(path, "Polygon", "innerBoundaryIs", "LinearRing", "coordinates")
	if edge && k.edged || hole && !k.edged {
		text := "hole stands before the edge of its polygon"
		if edge {
			text = "polygon has two edges"
		}
		k.log.note(finding{severity: Warning, code: "polygon_rings", text: text + ", left it out", plural: "rings"}, line)
		return false
	}
	if edge {
		k.edged = true
	}
	return true
}

// coordinates reads tuples of longitude, latitude and perhaps height, with
// blanks between them.
func (k *kmlReader) coordinates(text []byte, line int) {
	for len(text) > 0 && !k.log.full() {
		var tuple []byte
		if tuple, text = cutWord(text); len(tuple) > 0 {
			lon, rest, _ := bytes.Cut(tuple, []byte{','})
			lat, _, _ := bytes.Cut(rest, []byte{','})
			k.position(lon, lat, time.Time{}, line)
		}
		if len(text) > 0 {
			if text[0] == '\n' {
				line++
			}
			text = text[1:]
		}
	}
}

// cutWord cuts a text at the first blank.
func cutWord(text []byte) (word, rest []byte) {
	i := 0
	for i < len(text) && !isBlank(text[i]) {
		i++
	}
	return text[:i], text[i:]
}

// position adds a fix.
func (k *kmlReader) position(lon, lat []byte, at time.Time, line int) {
	if p, ok := k.log.position(lon, lat, line); ok {
		k.log.add(Fix{At: p, Time: at, Quality: -1}, line)
	}
}

// when keeps a time of a Track for the coord of the same number.
func (k *kmlReader) when(text []byte, line int) {
	if len(k.times) == k.log.limit {
		k.log.exceed("limit_positions", k.log.limit, "times")
		return
	}
	k.times = append(k.times, packTime(k.log.moment(string(text), line)))
}

// coord reads a position of a Track: longitude, latitude and perhaps height.
// An empty one stands for a time without a position.
func (k *kmlReader) coord(text []byte, line int) {
	var at time.Time
	if k.coords < len(k.times) {
		at = unpackTime(k.times[k.coords])
	}
	k.coords++
	lon, rest := cutWord(text)
	lat, _ := cutWord(trimBlanks(rest))
	if len(lon) == 0 {
		k.log.nowhere(line)
		return
	}
	k.position(lon, lat, at, line)
}

// pairs tells if a Track has not as many times as positions.
func (k *kmlReader) pairs() {
	if n := len(k.times); n > 0 && n != k.coords {
		k.log.note(finding{
			severity: Warning, code: "times_count", plural: "tracks",
			text: fmt.Sprintf("track has %d times for %d positions, paired them in order", n, k.coords),
		}, k.line)
	}
}
