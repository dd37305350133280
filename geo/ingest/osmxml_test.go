package ingest

import (
	"errors"
	"io"
	"strings"
	"testing"
	"testing/iotest"
)

// laughs is XML whose entities would grow to a billion words if anybody
// replaced them.
const laughs = `<?xml version="1.0"?>
<!DOCTYPE osm [
 <!ENTITY a "lawn">
 <!ENTITY b "&a;&a;&a;&a;&a;&a;&a;&a;&a;&a;">
 <!ENTITY c "&b;&b;&b;&b;&b;&b;&b;&b;&b;&b;">
 <!ENTITY d "&c;&c;&c;&c;&c;&c;&c;&c;&c;&c;">
 <!ENTITY e "&d;&d;&d;&d;&d;&d;&d;&d;&d;&d;">
 <!ENTITY f "&e;&e;&e;&e;&e;&e;&e;&e;&e;&e;">
 <!ENTITY g "&f;&f;&f;&f;&f;&f;&f;&f;&f;&f;">
 <!ENTITY h "&g;&g;&g;&g;&g;&g;&g;&g;&g;&g;">
 <!ENTITY i "&h;&h;&h;&h;&h;&h;&h;&h;&h;&h;">
]>
<osm><node id="1" lon="1" lat="2"><tag k="name" v="&i;"/></node></osm>`

var brokenMaps = []struct{ name, text, want string }{
	{"nothing", "", `error input_empty: x: is empty`},
	{"blanks", "\ufeff \n", `error input_empty: x: is empty`},
	{"words", "lawn", `error format_unknown: x: is no map extract: begins with l`},
	{"GeoJSON", point, `error format_unknown: x: is no map extract: is JSON without a member elements`},
	{"other XML", "<gpx/>", `error format_unknown: x: is no map extract: is XML without an osm element`},
	{"web page", "<!DOCTYPE html><html lang=en>", `error format_foreign: x: is no map extract but looks like a web page`},
	{"gzip", "\x1f\x8b\x08", `error format_foreign: x: is no map extract but looks like gzip-compressed data`},
	{"bzip2", "BZh91AY", `error format_foreign: x: is no map extract but looks like bzip2-compressed data`},

	{"change file", "<osmChange><create/></osmChange>", `error xml_root: x: is no map extract: its root is "osmChange", not one osm at line 1, column 12`},
	{"two roots", "<osm></osm>\n<osm></osm>", `error xml_root: x: is no map extract: its root is "osm", not one osm at line 2, column 6`},
	{"root in a comment", "<!-- <osm> -->", `error xml_root: x: is no map extract: has no osm element`},
	{"cut short", "<osm>\n<node id='1' lon='1' lat='2'>", `error input_short: x: ends early, "node" is still open at line 2, column 30`},
	{"cut short in a tag", "<osm>\n<node id='1' lo", `error input_short: x: ends early, "osm" is still open at line 2, column 16`},
	{"ends that do not fit", "<osm><node></way></osm>", `error xml_syntax: x: is not valid XML: element <node> closed by </way> at line 1, column 18`},
	{"no XML", "<osm><node id=1></osm>", `error xml_syntax: x: is not valid XML: unquoted or missing attribute value in element at line 1, column 16`},
	{"not UTF-8", "<osm><tag v='T\xfcr'/></osm>", `error xml_syntax: x: is not valid XML: invalid UTF-8 at line 1, column 18`},
	{"another encoding", "<?xml version='1.0' encoding='latin-1'?><osm/>", `error xml_syntax: x: is not readable XML: opening charset "latin-1": its encoding is "latin-1", not UTF-8 at line 1, column 41`},
	{"an entity of its own", "<!DOCTYPE osm [<!ENTITY a 'lawn'>]><osm><tag v='&a;'/></osm>", `error xml_syntax: x: is not valid XML: invalid character entity &a; at line 1, column 52`},
	{"a billion laughs", laughs, `error xml_syntax: x: is not valid XML: invalid character entity &i; at line 13, column 55`},
	{"too deep", "<osm>" + strings.Repeat("<a>", 200), `error limit_depth: x: elements are nested more than 100 deep, the limit`},
	{"a text too long", "<osm><tag v='" + strings.Repeat("x", 2<<20) + "'/></osm>", `error limit_bytes: x: has more than 1048576 bytes in one piece of text, the limit for one site`},

	{"JSON without an end", `{"elements":[{"type":"node"`, `error input_short: x: ends early, 3 brackets are still open`},
	{"JSON that is not", "{\"elements\":[\n{type:1}]}", `error json_syntax: x: is not valid JSON: expected a name in double quotes, found t at line 2, column 2`},
	{"JSON without elements", `{"osm3s":{},"features":[]}`, `error osm_element: x: is no map extract: has no member elements`},
	{"elements an object", `{"elements":{}}`, `error osm_element: x: elements is an object, not an array`},
	{"an element that is none", `{"elements":[{"type":"count","id":0},7]}`, `error osm_element: x: elements[1] is 7, not an object`},
	{"more than one JSON", `{"elements":[]}` + "\n{}", `error json_syntax: x: is not valid JSON: expected nothing more, found { at line 2, column 1`},
}

func TestBrokenMaps(t *testing.T) {
	for _, tt := range brokenMaps {
		t.Run(tt.name, func(t *testing.T) {
			checkMapped(t, mapped(t, tt.text, Limits{}), nil, []string{tt.want})
		})
	}
}

// TestMapReadError: an input that fails is told so, whatever the format.
func TestMapReadError(t *testing.T) {
	failing := func(text string) io.Reader {
		return io.MultiReader(strings.NewReader(text), iotest.ErrReader(errors.New("disk gone")))
	}
	for _, text := range []string{"", "<osm>", `{"elements":[`, string(inventedPBF(t)[:100]), string(inventedPBF(t)[:47])} {
		for c := range OSM(failing(text), "x", Limits{}) {
			checkSaid(t, c.Problems, `error read_failed: x: cannot be read on: disk gone`)
		}
	}
}
