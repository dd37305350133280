package ingest

import (
	"crypto/sha256"
	"fmt"
	"slices"
	"strings"
	"testing"
)

// siteLine is a collection with an id on one line.
func siteLine(id string) string {
	return `{"type":"FeatureCollection","site":{"id":"` + id + `"},"features":[` + feature(`"properties":{}`) + `]}`
}

// told sums up a site: line, number of features, site id, problems.
func told(c *Collection) string {
	site, _ := c.Member("site")
	s := fmt.Sprintf("%d: %d features %s", c.Line, len(c.Features), site)
	return strings.Join(append([]string{strings.TrimSpace(s)}, said(c.Problems)...), "\n")
}

var lineRules = []struct {
	name, text string
	want       []string
}{
	{"a site a line", siteLine("a") + "\n" + siteLine("b") + "\n",
		[]string{`1: 1 features {"id":"a"}`, `2: 1 features {"id":"b"}`}},
	{"blank lines and carriage returns", "\n" + siteLine("a") + "\r\n\r\n \n" + siteLine("b"),
		[]string{`2: 1 features {"id":"a"}`, `5: 1 features {"id":"b"}`}},
	{"one line is a document", siteLine("a") + "\n\n", []string{`0: 1 features {"id":"a"}`}},
	{"record separators", "\x1e" + siteLine("a") + "\n\x1e" + siteLine("b") + "\n",
		[]string{`1: 1 features {"id":"a"}`, `2: 1 features {"id":"b"}`}},
	{"one record", "\x1e" + siteLine("a") + "\n", []string{`1: 1 features {"id":"a"}`}},
	{"records over several lines", "\x1e{\"type\":\n\"Point\",\"coordinates\":[1,2]}\n\x1e{\n\"type\":\n\"Point\" 1}\n", []string{
		"1: 1 features\nerror json_syntax: x: line 3: is not valid JSON: expected a comma or }, found 1 at line 5, column 9"}},
	{"features are one site", feature(`"id":1`) + "\n" + point + "\n" + feature(`"id":1`) + "\n", []string{
		"1: 3 features\nwarning id_repeated: x: line 3: features[2] \"1\": has the id of an earlier feature, features[0] \"1\""}},
	{"features between sites", siteLine("a") + "\n" + point + "\n" + point + "\n" + siteLine("b") + "\n" + point, []string{
		`1: 1 features {"id":"a"}`, `2: 2 features`, `4: 1 features {"id":"b"}`, `5: 1 features`}},
	{"problem of a site on a line", siteLine("a") + "\n" + collection(feature(`"properties":1`)) + "\n", []string{
		`1: 1 features {"id":"a"}`,
		"2: 1 features\nerror properties_type: x: line 2: features[0]: properties is 1, not an object"}},
	{"bad line among sites", siteLine("a") + "\n" + siteLine("b")[:59] + "\n" + siteLine("c") + "\n", []string{
		`1: 1 features {"id":"a"}`,
		"2: 0 features\nerror input_short: x: line 2: \"b\": ends early, 3 brackets are still open",
		`3: 1 features {"id":"c"}`}},
	{"bad first line", siteLine("a") + "!\n" + siteLine("b") + "\n", []string{
		"1: 0 features\nerror json_syntax: x: line 1: \"a\": is not valid JSON: expected nothing more, found ! at column 143",
		`2: 1 features {"id":"b"}`}},
	{"first lines cut short", siteLine("a")[:59] + "\n\n" + siteLine("b")[:59] + "\n" + siteLine("c") + "\n" + siteLine("d"), []string{
		"1: 0 features\nerror input_short: x: line 1: \"a\": ends early, 3 brackets are still open",
		"3: 0 features\nerror input_short: x: line 3: \"b\": ends early, 3 brackets are still open",
		`4: 1 features {"id":"c"}`, `5: 1 features {"id":"d"}`}},
	{"a document with its features a line", `{"type":"FeatureCollection","site":{"id":"a"},"features":[` + "\n" + feature(`"id":1`) + ",\n" + feature(`"id":2`) + "\n]}\n", []string{`0: 2 features {"id":"a"}`}},
	{"a document with one feature", `{"type":"FeatureCollection","site":{"id":"a"},"features":[` + "\n" + feature(`"id":1`) + "\n]}\n", []string{`0: 1 features {"id":"a"}`}},
	{"line cut short in a string", siteLine("a") + "\n" + siteLine("b")[:70] + "\n" + siteLine("c") + "\n", []string{
		`1: 1 features {"id":"a"}`,
		"2: 0 features\nerror json_syntax: x: line 2: \"b\": is not valid JSON: expected the end of the string, found a line break at column 71",
		`3: 1 features {"id":"c"}`}},
	{"bad last line", siteLine("a") + "\n}", []string{
		`1: 1 features {"id":"a"}`,
		"2: 0 features\nerror json_syntax: x: line 2: is not valid JSON: expected a value, found } at column 1"}},
	{"bad line among features", point + "\n{\"type\":\"Feature\"\n" + point + "\n", []string{
		"1: 2 features\nerror input_short: x: line 2: ends early, one bracket is still open"}},
	{"line of another kind", siteLine("a") + "\n[1]\n{\"type\":\"Topology\"}\n", []string{
		`1: 1 features {"id":"a"}`,
		"2: 0 features\nerror format_unknown: x: line 2: is not GeoJSON: holds an array, not a FeatureCollection, a Feature or a geometry",
		"3: 0 features\nerror format_unknown: x: line 3: is not GeoJSON: its type is \"Topology\", not a FeatureCollection, a Feature or a geometry"}},
	{"a broken document is not taken for lines", "{'type':\n\"Point\"}\n", []string{
		"0: 0 features\nerror json_syntax: x: is not valid JSON: expected a name in double quotes, found ' at line 1, column 2"}},
	{"Latin-1 on a line", siteLine("a") + "\n" + siteLine("\xe9"), []string{
		`1: 1 features {"id":"a"}`,
		"2: 0 features\nerror utf8_invalid: x: line 2: \"\\xe9\": byte 0xe9 at offset 185 is not UTF-8 at column 43"}},
}

func TestLineRules(t *testing.T) {
	for _, tt := range lineRules {
		t.Run(tt.name, func(t *testing.T) {
			var got []string
			for _, c := range readAll(tt.text) {
				got = append(got, told(c))
			}
			if !slices.Equal(got, tt.want) {
				t.Errorf("got\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(tt.want, "\n"))
			}
		})
	}
}

func TestLineDigests(t *testing.T) {
	want := []string{siteLine("a"), point + "\n" + point, siteLine("b"), "}"}
	for i, c := range readAll(siteLine("a") + "\n" + point + "\r\n\n" + point + "\n" + siteLine("b") + "\r\n}\n") {
		if c.Digest != sha256.Sum256([]byte(want[i])) {
			t.Errorf("digest of site %d is not that of %q", i, want[i])
		}
	}
}

func TestStopsWhenAsked(t *testing.T) {
	text := siteLine("a") + "\n" + point + "\n" + siteLine("b") + "\n!\n" + siteLine("c")
	for stop := 1; stop <= 5; stop++ {
		seen := 0
		for range GeoJSON(strings.NewReader(text), "x", Limits{}) {
			if seen++; seen == stop {
				break
			}
		}
		if seen != stop {
			t.Errorf("saw %d sites, wanted to stop at %d", seen, stop)
		}
	}
}

// TestOneSiteAtATime: a site is handed out before the input is read to its end.
func TestOneSiteAtATime(t *testing.T) {
	line := siteLine("a") + "\n"
	r := &endless{line: line}
	seen := 0
	for range GeoJSON(r, "x", Limits{}) {
		if seen++; seen == 1000 {
			break
		}
	}
	if most := 1000*len(line) + 1<<17; r.read > most {
		t.Errorf("read %d bytes for 1000 sites, want at most %d", r.read, most)
	}
}

// endless repeats a line for ever after a beginning.
type endless struct {
	start, line string
	rest        string
	read        int
}

func (e *endless) Read(p []byte) (int, error) {
	if e.read == 0 {
		e.rest = e.start
	}
	if e.rest == "" {
		e.rest = e.line
	}
	n := copy(p, e.rest)
	e.rest = e.rest[n:]
	e.read += n
	return n, nil
}
