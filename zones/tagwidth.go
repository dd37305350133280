package zones

import (
	"regexp"
	"strconv"
	"strings"

	"example.org/turfplat/geo"
	"example.org/turfplat/geo/ingest"
)

// taggedWidth returns the width, in metres, that map tags give a line: width,
// else est_width, else its lanes.
func taggedWidth(tags ingest.Properties, lane float64) (float64, bool) {
	for _, key := range []string{"width", "est_width"} {
		if text, ok := tags.Tag(key); ok {
			if w, ok := parseTagLength(text); ok && w <= widest {
				return w, true
			}
		}
	}
	if text, ok := tags.Tag("lanes"); ok && lane > 0 {
		if n, err := strconv.ParseFloat(text, 64); err == nil && n >= 1 && n <= 20 {
			return n * lane, true
		}
	}
	return 0, false
}

var (
	decimalLength = regexp.MustCompile(`^(\d{1,4}(?:\.\d+)?) ?(m|ft|'|)$`)
	feetInches    = regexp.MustCompile(`^(\d{1,4})' ?(\d{1,2}(?:\.\d+)?)"$`)
)

// parseTagLength reads a length as the OSM wiki's Key:width and Key:height have
// it: metres, or a number and a unit, or feet and inches (16'3").
func parseTagLength(text string) (float64, bool) {
	text = strings.TrimSpace(text)
	if m := decimalLength.FindStringSubmatch(text); m != nil {
		v, err := strconv.ParseFloat(m[1], 64)
		if m[2] == "ft" || m[2] == "'" {
			v *= geo.FootM
		}
		return v, err == nil && v > 0
	}
	if m := feetInches.FindStringSubmatch(text); m != nil {
		feet, err1 := strconv.ParseFloat(m[1], 64)
		inches, err2 := strconv.ParseFloat(m[2], 64)
		w := (feet + inches/12) * geo.FootM
		return w, err1 == nil && err2 == nil && w > 0
	}
	return 0, false
}
