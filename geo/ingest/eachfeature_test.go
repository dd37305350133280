package ingest

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"runtime"
	"slices"
	"strings"
	"testing"

	"github.com/paulmach/orb"
	"pgregory.net/rapid"
)

// each reads every feature of a text called x.
func each(text string) []*Collection {
	return slices.Collect(EachFeature(strings.NewReader(text), "x", Limits{}))
}

// toldEach sums up features read one by one.
func toldEach(text string) []string {
	var got []string
	for _, c := range each(text) {
		line := fmt.Sprintf("%d:", c.Line)
		for _, f := range c.Features {
			line += fmt.Sprintf(" features[%d] %s", f.Index, f.ID)
		}
		got = append(got, strings.Join(append([]string{strings.TrimSpace(line)}, said(c.Problems)...), "\n"))
	}
	return got
}

var eachFeatureRules = []struct {
	name, text string
	want       []string
}{
	{"document", collection(feature(`"id":"a"`), feature(`"id":"b"`)), []string{"0: features[0] a", "0: features[1] b"}},
	{"document over lines", "{\n\"type\": \"FeatureCollection\",\n\"features\": [\n" + feature(`"id":"a"`) + ",\n" + feature(`"id":"b"`) + "\n]\n}\n",
		[]string{"0: features[0] a", "0: features[1] b"}},
	{"no features", collection(), nil},
	{"one feature", feature(`"id":"a"`), []string{"0: features[0] a"}},
	{"bare geometry", point, []string{"0: features[0]"}},
	{"features on lines", feature(`"id":"a"`) + "\n\n" + feature(`"id":"b"`) + "\n", []string{"1: features[0] a", "3: features[1] b"}},
	{"record separators", "\x1e" + feature(`"id":"a"`) + "\n\x1e" + feature(`"id":"b"`) + "\n", []string{"1: features[0] a", "2: features[1] b"}},
	{"collections on lines", collection(feature(`"id":"a"`)) + "\n" + collection(feature(`"id":"b"`), feature(`"id":"c"`)) + "\n",
		[]string{"0: features[0] a", "2: features[1] b", "2: features[2] c"}},
	{"name with escapes", `{"type":"FeatureCollection","feature\u0073":[` + feature(`"id":"a"`) + `]}`, []string{"0: features[0] a"}},
	{"a name that ends alike", `{"type":"FeatureCollection","\"features":[1],"features":[` + feature(`"id":"a"`) + `]}`, []string{"0: features[0] a"}},
	{"a member of the features' name", `{"type":"FeatureCollection","x":{"features":[1]},"features":[` + feature(`"id":"a","features":[2]`) + `]}`, []string{"0: features[0] a"}},
	{"a feature with features", `{"type":"Feature","id":"a","features":[1],"properties":{},"geometry":` + point + `}`, []string{"0: features[0] a"}},
	{"type at the end", `{"features":[` + feature(`"id":"a"`) + `],"type":"FeatureCollection"}`, []string{"0: features[0] a"}},

	{"refused feature", collection("1", feature(`"id":"b"`)), []string{
		"0:\nerror feature_type: x: features[0]: feature is 1, not an object", "0: features[1] b"}},
	{"bad line", feature(`"id":"a"`) + "\n{\"type\":\n" + feature(`"id":"b"`) + "\n", []string{
		"1: features[0] a", "2:\nerror input_short: x: line 2: ends early, one bracket is still open", "3: features[1] b"}},
	{"bad first line", "{\"type\"!\n" + feature(`"id":"b"`) + "\n", []string{
		"1:\nerror json_syntax: x: line 1: is not valid JSON: expected a :, found ! at column 8", "2: features[0] b"}},
	{"cut short", collection(feature(`"id":"a"`), feature(`"id":"b"`))[:150], []string{
		"0: features[0] a", "0:\nerror input_short: x: ends early inside a string, 3 brackets are still open"}},
	{"broken on a later line", "{\"type\":\"FeatureCollection\",\"features\":[\n" + feature(`"id":"a"`) + ",\n\"é\" 1", []string{
		"0: features[0] a", "0:\nerror json_syntax: x: is not valid JSON: expected a comma or ], found 1 at line 3, column 5"}},
	{"more after a document", "{\n}\n{\n}\n", []string{
		"0:\nerror json_syntax: x: is not valid JSON: expected nothing more, found { at line 3, column 1"}},
	{"empty", " \n", []string{"0:\nerror input_empty: x: is empty"}},
	{"nothing of ours", `{"type":"Topology"}`, []string{
		"0:\nerror format_unknown: x: is not GeoJSON: its type is \"Topology\", not a FeatureCollection, a Feature or a geometry"}},
	{"XML", "<gpx/>", []string{"0:\nerror format_foreign: x: is not GeoJSON but looks like XML"}},
	{"no list", `{"type":"FeatureCollection","features":{}}`, []string{"0:\nerror features_type: x: features is an object, not an array"}},
	{"Latin-1 in a feature", collection(feature(`"id":"a"`), feature(`"id":"`+"\xe9"+`"`)), []string{
		"0: features[0] a", "0:\nerror utf8_invalid: x: features[1]: byte 0xe9 at offset 140 is not UTF-8"}},
	{"Latin-1 after the features", `{"type":"FeatureCollection","features":[` + feature(`"id":"a"`) + `],"name":"` + "\xe9" + `"}`, []string{
		"0: features[0] a", "0:\nerror utf8_invalid: x: is not UTF-8 before or after its features"}},

	{"coordinate system before", `{"type":"FeatureCollection","crs":{"properties":{"name":"EPSG:3857"}},"features":[` + feature(`"id":"a"`) + `]}`, []string{
		"0:\nerror crs_unknown: x: is in the coordinate system \"EPSG:3857\", not in WGS 84 longitude and latitude"}},
	{"coordinate system after", `{"type":"FeatureCollection","features":[` + feature(`"id":"a"`) + `],"crs":{"properties":{"name":"EPSG:3857"}}}`, []string{
		"0: features[0] a", "0:\nerror crs_unknown: x: is in the coordinate system \"EPSG:3857\", not in WGS 84 longitude and latitude"}},
}

func TestEachFeatureRules(t *testing.T) {
	for _, tt := range eachFeatureRules {
		t.Run(tt.name, func(t *testing.T) {
			if got := toldEach(tt.text); !slices.Equal(got, tt.want) {
				t.Errorf("got\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(tt.want, "\n"))
			}
		})
	}
}

// checkEachFeature: one by one, features are those that the text has when it is
// read whole, with the same problems.
func checkEachFeature(t failer, text string) {
	t.Helper()
	var whole, single []*Feature
	var toldWhole, toldSingle []string
	for c := range GeoJSON(strings.NewReader(text), "x", Limits{}) {
		whole = append(whole, c.Features...)
		toldWhole = append(toldWhole, ofFeatures(c.Problems)...)
	}
	for c := range EachFeature(strings.NewReader(text), "x", Limits{}) {
		single = append(single, c.Features...)
		toldSingle = append(toldSingle, ofFeatures(c.Problems)...)
	}
	if len(whole) != len(single) {
		t.Fatalf("%d features one by one, %d of the whole, in %.300q", len(single), len(whole), text)
	}
	for i, f := range single {
		if w := whole[i]; f.ID != w.ID || !orb.Equal(f.Geometry, w.Geometry) || !slices.Equal(f.Properties.Keys(), w.Properties.Keys()) {
			t.Errorf("features[%d] is not what it is in the whole: %v, want %v", i, f, w)
		}
	}
	if !slices.Equal(toldSingle, toldWhole) {
		t.Errorf("told\n%s\nbut of the whole\n%s", strings.Join(toldSingle, "\n"), strings.Join(toldWhole, "\n"))
	}
}

type failer interface {
	Helper()
	Errorf(format string, args ...any)
	Fatalf(format string, args ...any)
}

// ofFeatures are problems of features, without the places that differ by how a
// text is read, and without repeated ids, which no feature has by itself.
func ofFeatures(problems []Problem) []string {
	var kept []string
	for _, p := range problems {
		if p.Place.Feature >= 0 && p.Code != "id_repeated" {
			kept = append(kept, p.Code+": "+p.Text)
		}
	}
	return kept
}

func TestEachFeatureIsThatOfTheWhole(t *testing.T) {
	for _, r := range geometryRules {
		checkEachFeature(t, inCollection(r.geometry))
	}
	for _, r := range documentRules {
		if !strings.Contains(r.text, `"EPSG::3857"`) {
			checkEachFeature(t, r.text)
		}
	}
}

// TestCutsAnywhere: wherever the chunks of a stream end, the same is cut out.
func TestCutsAnywhere(t *testing.T) {
	text := []byte("{ \"a\" : [1,[2]], \"features\" : [ {\"x\":\"]},\\\"\"} ,\n[3,{}],4 , \"é\" ],\n\"b\":{\"features\":[5]}}")
	want := []string{`{"x":"]},\""}`, "[3,{}]", "4", `"é"`}
	rapid.Check(t, func(t *rapid.T) {
		var got []string
		c := &cutter{
			grammar: grammar{depth: 9}, most: math.MaxInt,
			head: func([]byte) bool { return true },
			item: func(piece []byte, begin int) {
				got = append(got, string(piece))
				if !bytes.HasPrefix(text[begin:], piece) {
					t.Errorf("%s does not begin at %d", piece, begin)
				}
			},
		}
		for rest := text; len(rest) > 0; {
			n := rapid.IntRange(1, len(rest)).Draw(t, "chunk")
			c.feed(rest[:n], 1)
			rest = rest[n:]
		}
		if !slices.Equal(got, want) || c.fault != nil || !c.grammar.complete() {
			t.Errorf("cut out %q (%v), want %q", got, c.fault, want)
		}
		if around := string(c.text); around != "{ \"a\" : [1,[2]], \"features\" : [],\n\"b\":{\"features\":[5]}}" {
			t.Errorf("left %q", around)
		}
	})
}

// TestEachFeatureTakesTheMemoryOfOne: 100 MB of features, on one line or on
// many, pass through less than 20 MB.
func TestEachFeatureTakesTheMemoryOfOne(t *testing.T) {
	one := `{"type":"Feature","properties":{"note":"` + strings.Repeat("n", 10_000) + `"},"geometry":` + point + "}"
	for _, tt := range []struct{ name, start, line string }{
		{"one line", `{"type":"FeatureCollection","features":[1`, "," + one},
		{"lines of a document", `{"type":"FeatureCollection","features":[1`, ",\n" + one},
		{"lines", "", one + "\n"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			var before, now runtime.MemStats
			runtime.GC()
			runtime.ReadMemStats(&before)
			seen, most := 0, uint64(0)
			for range EachFeature(&endless{start: tt.start, line: tt.line}, "x", Limits{Features: 5, Positions: 100}) {
				if seen++; seen == 10_000 {
					break
				}
				if seen%1000 == 0 {
					runtime.GC()
					runtime.ReadMemStats(&now)
					most = max(most, now.HeapAlloc)
				}
			}
			if seen < 10_000 || most > before.HeapAlloc+20<<20 {
				t.Errorf("%d features held %d MB", seen, (most-before.HeapAlloc)>>20)
			}
		})
	}
}

func TestEachFeatureLimits(t *testing.T) {
	limits := Limits{Bytes: 1 << 20}
	for _, tt := range []struct {
		name   string
		stream *endless
		code   string
	}{
		{"a long feature", &endless{start: `{"type":"FeatureCollection","features":[[1`, line: ",1"}, "limit_bytes"},
		{"much before the features", &endless{start: `{"type":"FeatureCollection","x":[1`, line: ",\n1"}, "limit_bytes"},
		{"brackets", &endless{start: `{"features":[`, line: "["}, "limit_depth"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			for c := range EachFeature(tt.stream, "x", limits) {
				if len(c.Problems) != 1 || c.Problems[0].Code != tt.code {
					t.Errorf("got %v", said(c.Problems))
				}
			}
			if tt.stream.read > 8<<20 {
				t.Errorf("read %d bytes", tt.stream.read)
			}
		})
	}
}

func TestEachFeatureStopsWhenAsked(t *testing.T) {
	for _, text := range []string{collection(feature(`"id":1`), feature(`"id":2`), "3"), feature(`"id":1`) + "\n" + feature(`"id":2`) + "\n!\n" + point} {
		all := len(each(text))
		for stop := 1; stop <= all; stop++ {
			seen := 0
			for range EachFeature(strings.NewReader(text), "x", Limits{}) {
				if seen++; seen == stop {
					break
				}
			}
			if seen != stop {
				t.Errorf("saw %d, wanted to stop at %d", seen, stop)
			}
		}
	}
}

// FuzzEachFeature: no input makes it panic or hang, and what is read whole
// without a refusal comes the same one by one.
func FuzzEachFeature(f *testing.F) {
	for _, r := range eachFeatureRules {
		f.Add(r.text)
	}
	for _, r := range documentRules {
		f.Add(r.text)
	}
	for _, r := range lineRules {
		f.Add(r.text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		refused := false
		for _, c := range readAll(text) {
			refused = refused || c.Refused()
		}
		if refused || claimsFeatures(text) {
			each(text)
			return
		}
		checkEachFeature(t, text)
	})
}

// claimsFeatures reports whether a text is an object that has features and is
// no collection: they are handed out before its type is known.
func claimsFeatures(text string) bool {
	var top struct {
		Type     any
		Features json.RawMessage
	}
	return json.Unmarshal([]byte(text), &top) == nil && top.Features != nil && top.Type != "FeatureCollection"
}
