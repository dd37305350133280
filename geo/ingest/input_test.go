package ingest

import (
	"errors"
	"io"
	"strings"
	"testing"
	"testing/iotest"
)

// unreadable are inputs that are no GeoJSON at all.
var unreadable = []struct {
	name, text, want, hint string
}{
	{"nothing", "", `error input_empty: x: is empty`, ""},
	{"blanks", " \n\r\n\t", `error input_empty: x: is empty`, ""},
	{"mark only", "\ufeff", `error input_empty: x: is empty`, ""},
	{"UTF-16", "\xff\xfe{\x00\"\x00", `error format_foreign: x: is not GeoJSON but looks like UTF-16 text`, "save it with the UTF-8 encoding"},
	{"UTF-16 big end first", "\xfe\xff\x00{\x00\"", `error format_foreign: x: is not GeoJSON but looks like UTF-16 text`, "save it with the UTF-8 encoding"},
	{"UTF-16 without a mark", "{\x00\"\x00", `error format_foreign: x: is not GeoJSON but looks like UTF-16 text`, "save it with the UTF-8 encoding"},
	{"gzip", "\x1f\x8b\x08\x00", `error format_foreign: x: is not GeoJSON but looks like gzip-compressed data`, "unpack it first"},
	{"zip", "PK\x03\x04\x14", `error format_foreign: x: is not GeoJSON but looks like a zip archive`, "unpack it first"},
	{"web page", "\n<!DOCTYPE html><html>", `error format_foreign: x: is not GeoJSON but looks like a web page`, "download the file itself"},
	{"web page of old", "<HEAD></HEAD><HTML>", `error format_foreign: x: is not GeoJSON but looks like a web page`, "download the file itself"},
	{"XML", "<?xml version='1.0'?><osm/>", `error format_foreign: x: is not GeoJSON but looks like XML`, "convert it to GeoJSON"},
	{"words", "lawn", `error format_unknown: x: is not GeoJSON: begins with l, not with {`, "export the outlines as GeoJSON"},
	{"array", "[1,2]", `error format_unknown: x: is not GeoJSON: begins with [, not with {`, wrapIt},
	{"null", "null", `error format_unknown: x: is not GeoJSON: begins with n, not with {`, "export the outlines as GeoJSON"},
	{"table", "id,area\n1,20\n", `error format_foreign: x: is not GeoJSON but looks like a table`, "export the outlines as GeoJSON"},
	{"list with a comma", "[1,2],\n[3,4],\n", `error format_unknown: x: is not GeoJSON: begins with [, not with {`, wrapIt},
	{"array after many blanks", strings.Repeat(" ", 600) + "[1,2]", `error format_unknown: x: is not GeoJSON: holds an array, not a FeatureCollection, a Feature or a geometry`, wrapIt},
	{"no type", `{"rings":[]}`, `error format_unknown: x: is not GeoJSON: has no type, must be a FeatureCollection, a Feature or a geometry`, "export the outlines as GeoJSON"},
	{"other type", `{"type":"Topology"}`, `error format_unknown: x: is not GeoJSON: its type is "Topology", not a FeatureCollection, a Feature or a geometry`, "export the outlines as GeoJSON"},

	{"cut short", `{"type":"Point","coordinates":[1,2`, `error input_short: x: ends early, 2 brackets are still open`, "copy or export it again"},
	{"cut short in a string", "{\n\"type\":\"Poi", `error input_short: x: ends early inside a string, one bracket is still open`, "copy or export it again"},
	{"missing comma", "{\"type\":\"Point\"\n\"coordinates\":[1,2]}", `error json_syntax: x: is not valid JSON: expected a comma or }, found " at line 2, column 1`, "mend it there, or export it again"},
	{"comma too many", `{"type":"Point","coordinates":[1,2],}`, `error json_syntax: x: is not valid JSON: expected a name in double quotes, found } at line 1, column 37`, "mend it there, or export it again"},
	{"columns are characters", `{"ïd":NaN}`, `error json_syntax: x: is not valid JSON: expected a value, found N at line 1, column 7`, "mend it there, or export it again"},
	{"lines count from the top", "\ufeff\n\n{\n'type'}", `error json_syntax: x: is not valid JSON: expected a name in double quotes, found ' at line 4, column 1`, "mend it there, or export it again"},
	{"not a word", `{"a":trve}`, `error json_syntax: x: is not valid JSON: expected true, false or null, found v at line 1, column 8`, "mend it there, or export it again"},
	{"leading zero", `{"a":01}`, `error json_syntax: x: is not valid JSON: expected a comma or }, found 1 at line 1, column 7`, "mend it there, or export it again"},
	{"line break in a string", "{\"a\":\"b\nc\"}", `error json_syntax: x: is not valid JSON: expected the end of the string, found a line break at line 1, column 8`, "mend it there, or export it again"},
	{"two on a line", point + point, `error json_syntax: x: is not valid JSON: expected nothing more, found { at line 1, column 37`, "mend it there, or export it again"},
	{"Latin-1", "\ufeff{\"type\":\"Point\",\"name\":\"caf\xe9\"}", `error utf8_invalid: x: byte 0xe9 at offset 30 is not UTF-8 at line 1, column 28`, "save it with the UTF-8 encoding"},
	{"control byte", "{\x01}", `error json_syntax: x: is not valid JSON: expected a name in double quotes, found byte 0x01 at line 1, column 2`, "mend it there, or export it again"},
}

func TestUnreadable(t *testing.T) {
	for _, tt := range unreadable {
		t.Run(tt.name, func(t *testing.T) {
			c := readOne(t, tt.text)
			checkSaid(t, c.Problems, tt.want)
			if len(c.Features) > 0 || !c.Refused() || c.Problems[0].Hint != tt.hint {
				t.Errorf("got %d features, refused %v, hint %q", len(c.Features), c.Refused(), c.Problems[0].Hint)
			}
		})
	}
}

func TestReadError(t *testing.T) {
	broken := errors.New("disk on fire")
	for _, before := range []string{"", "\n", `{"type":`, point, "\n" + point + "\n" + point[:9]} {
		r := io.MultiReader(strings.NewReader(before), iotest.ErrReader(broken))
		var problems []Problem
		for c := range GeoJSON(r, "x", Limits{}) {
			problems = append(problems, c.Problems...)
		}
		if len(problems) != 1 || problems[0].Code != "read_failed" || problems[0].Text != "cannot be read on: disk on fire" {
			t.Errorf("after %q: %v", before, problems)
		}
	}
}

// TestSmallReads: where reads end makes no difference.
func TestSmallReads(t *testing.T) {
	text := inCollection(`{"type":"Polygon","coordinates":[[[0,0],[1,0],[1,1]]]}`)
	for c := range GeoJSON(iotest.OneByteReader(strings.NewReader(text)), "x", Limits{}) {
		if got, want := written(t, c), written(t, readOne(t, text)); got != want {
			t.Errorf("got %s want %s", got, want)
		}
	}
}
