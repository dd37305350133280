package ingest

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"github.com/paulmach/orb"
)

// Severity orders problems: a Note informs, a Warning tells of a repair or a
// doubt, a Refusal blocks the site.
type Severity int

// The severities, mildest first.
const (
	Note Severity = iota
	Warning
	Refusal
)

// String gives the word printed before a message.
func (s Severity) String() string {
	switch s {
	case Note:
		return "note"
	case Warning:
		return "warning"
	}
	return "error"
}

// A Place says where in the input something stands.
type Place struct {
	Source  string     // file name as the user gave it
	Line    int        // 1-based line, where the input is read by lines, else 0
	Site    string     // id of the site that the line is, where it is told
	Column  int        // 1-based column of the line, in characters, where it is known, else 0
	Feature int        // index in features, -1 for the file itself
	Label   string     // the feature's name or id, or the site's id
	Near    *orb.Point // longitude, latitude in degrees, as read
}

// String names the place without Near, as in
//
//	route.ndjson: line 12 "maple-3": features[3] "back bed"
//
// Empty parts are left out.
func (p Place) String() string {
	var parts []string
	if p.Source != "" {
		parts = append(parts, p.Source)
	}
	if p.Line > 0 {
		line := "line " + strconv.Itoa(p.Line)
		if p.Column > 0 {
			line += ", column " + strconv.Itoa(p.Column)
		}
		if p.Site != "" {
			line += " " + Quoted(p.Site)
		}
		parts = append(parts, line)
	}
	if object := p.object(); object != "" {
		parts = append(parts, object)
	}
	return strings.Join(parts, ": ")
}

func (p Place) object() string {
	var parts []string
	if p.Feature >= 0 {
		parts = append(parts, "features["+strconv.Itoa(p.Feature)+"]")
	}
	if p.Label != "" {
		parts = append(parts, Quoted(p.Label))
	}
	return strings.Join(parts, " ")
}

// A Problem is one thing found in an input. Code is stable, for programs;
// Text and Hint are for people, Hint being something to do about it.
type Problem struct {
	Severity Severity
	Code     string
	Place    Place
	Text     string
	Hint     string
	Count    int // of the things found, if they are told together; else 0
}

// Number is how many things were found.
func (p Problem) Number() int { return max(1, p.Count) }

// Refuses reports whether any of the problems blocks the site.
func Refuses(problems []Problem) bool {
	return slices.ContainsFunc(problems, func(p Problem) bool { return p.Severity == Refusal })
}

// String is the place, the text and the position, without severity and hint:
//
//	yard.geojson: features[3] "back bed": ring is not closed, closed it near [-93.1, 44.9]
func (p Problem) String() string {
	s := p.Text
	if place := p.Place.String(); place != "" {
		s = place + ": " + s
	}
	if p.Place.Near != nil {
		s += " near " + brief(*p.Place.Near)
	}
	return s
}

// messageDecimals are those of degrees in messages: a centimetre, enough to
// find a place.
const messageDecimals = 7

// brief prints a position.
func brief(p orb.Point) string {
	b := appendBrief([]byte{'['}, p.Lon())
	b = append(b, ", "...)
	b = appendBrief(b, p.Lat())
	return string(append(b, ']'))
}

// appendBrief writes a number of a position, in few digits if it is so large that
// none of them tells a place.
func appendBrief(dst []byte, v float64) []byte {
	const large = 1e9 // more than metres in any plane
	if math.Abs(v) >= large {
		return strconv.AppendFloat(dst, v, 'g', 6, 64)
	}
	return appendDegrees(dst, v, messageDecimals)
}
