package ingest

import (
	"fmt"
	"math"
	"strings"

	"github.com/paulmach/orb"
)

// axes are those of a position, by index.
var axes = [...]struct{ name, span string }{{"longitude", "-180..180"}, {"latitude", "-90..90"}}

// offGlobe says which number of a position is out of range.
func offGlobe(p orb.Point, axis int) string {
	return fmt.Sprintf("%s %s is outside %s", axes[axis].name, appendBrief(nil, p[axis]), axes[axis].span)
}

const degreesHint = "write degrees as decimals, with a point: 41.25, -93.5"

// position reads the position of a fix, in degrees. If it cannot, it notes that
// the fix is left out.
func (l *trackLog) position(lon, lat []byte, line int) (p orb.Point, ok bool) {
	for axis, text := range [...][]byte{lon, lat} {
		if len(text) == 0 {
			l.leaveOut(finding{code: "position_missing", text: "fix has no " + axes[axis].name}, line)
			return p, false
		}
		if p[axis], ok = plainNumber(text); !ok {
			l.leaveOut(finding{code: "position_text", text: axes[axis].name + " " + Quoted(string(text)) + " is not a number", hint: degreesHint}, line)
			return p, false
		}
	}
	return p, true
}

// positive reads a measure of how good a fix is; 0 if it says nothing.
func (l *trackLog) positive(what string, text []byte, line int) float64 {
	const most = 1e6 // more means that nothing is known
	text = trimBlanks(text)
	if len(text) == 0 {
		return 0
	}
	v, ok := plainNumber(text)
	if !ok || v < 0 || v > most {
		l.unread(what, string(text), line)
		return 0
	}
	return v
}

// satellites reads how many were used; 0 if it says nothing.
func (l *trackLog) satellites(text []byte, line int) int {
	text = trimBlanks(text)
	if len(text) == 0 {
		return 0
	}
	n, ok := plainCount(text)
	if !ok {
		l.unread("satellites", string(text), line)
		return 0
	}
	return n
}

// fixWords are the words for the quality of a fix, as the codes of NMEA 0183
// GGA. Those of GPX 1.1 (type fixType) come first, the others are common
// practice.
var fixWords = map[string]int{
	"none": 0, "2d": 1, "3d": 1, "dgps": 2, "pps": 3,
	"invalid": 0, "no fix": 0, "autonomous": 1, "single": 1, "gps": 1, "spp": 1, "differential": 2, "dgnss": 2, "sbas": 2,
	"rtk": 4, "fixed": 4, "rtk fixed": 4, "rtk fix": 4, "float": 5, "rtk float": 5, "estimated": 6, "manual": 7, "simulated": 8,
}

// mostQuality is the highest code of NMEA 0183 GGA in use.
const mostQuality = 9

// quality reads a word for the quality of a fix, or its code of NMEA 0183 GGA;
// -1 if it says nothing.
func (l *trackLog) quality(text []byte, line int) int {
	text = trimBlanks(text)
	if len(text) == 0 {
		return -1
	}
	if n, ok := plainCount(text); ok && n <= mostQuality {
		return n
	}
	word := strings.NewReplacer("_", " ", "-", " ").Replace(strings.ToLower(string(text)))
	if n, ok := fixWords[word]; ok {
		return n
	}
	l.unread("fix", string(text), line)
	return -1
}

// axisSigma is the 1-sigma error on one axis where a receiver states those of
// both: their quadratic mean, 0 if either is missing.
func axisSigma(a, b float64) float64 {
	if a <= 0 || b <= 0 {
		return 0
	}
	return math.Sqrt((float64(a*a) + float64(b*b)) / 2)
}

// sigmaOfAccuracy is the 1-sigma error on one axis where a phone states the
// radius of the circle that holds the true place with 68 % probability
// (Android reference, Location.getAccuracy). For equal normal errors on both
// axes that radius is sqrt(-2 ln(1 - 0.68)) sigma.
func sigmaOfAccuracy(radius float64) float64 { return radius / 1.5096 }
