package ingest

import (
	"fmt"
	"io"
	"runtime"
	"slices"
	"strings"
	"testing"
)

func TestLimits(t *testing.T) {
	deep := `{"type":"Feature","properties":{"a":` + strings.Repeat("[", 9) + strings.Repeat("]", 9) + `},"geometry":` + point + `}`
	for _, tt := range []struct {
		name, text string
		limits     Limits
		want       string // of the one refusal; empty if there must be none
	}{
		{"deep enough", deep, Limits{Depth: 11}, ""},
		{"too deep", deep, Limits{Depth: 10}, `x: brackets are nested more than 10 deep, the limit at line 1, column 45`},
		{"long enough", point, Limits{Bytes: len(point)}, ""},
		{"too long", point, Limits{Bytes: len(point) - 1}, fmt.Sprintf("x: has more than %d bytes, the limit for one site", len(point)-1)},
		{"features enough", collection(feature(`"id":1`), feature(`"id":2`)), Limits{Features: 2}, ""},
		{"too many features", collection(feature(`"id":1`), feature(`"id":2`), feature(`"id":3`)), Limits{Features: 2}, `x: has more than 2 features, the limit for one site`},
		{"positions enough", point + "\n" + point, Limits{Positions: 2}, ""},
		{"too many positions", `{"type":"LineString","coordinates":[[1,2],[3,4],[5,6]]}`, Limits{Positions: 2}, `x: has more than 2 positions, the limit for one site`},
		{"features on lines too long together", point + "\n" + point + "\n" + point, Limits{Bytes: 2*len(point) + 2}, fmt.Sprintf("x: line 1: has more than %d bytes, the limit for one site", 2*len(point)+2)},
		{"features on lines long enough", point + "\n" + point, Limits{Bytes: 2*len(point) + 2}, ""},
	} {
		t.Run(tt.name, func(t *testing.T) {
			sites := slices.Collect(GeoJSON(strings.NewReader(tt.text), "x", tt.limits))
			if len(sites) != 1 {
				t.Fatalf("got %d sites", len(sites))
			}
			var got []string
			for _, p := range sites[0].Problems {
				got = append(got, p.String())
			}
			if strings.Join(got, "\n") != tt.want {
				t.Errorf("got %q, want %q", got, tt.want)
			}
			if sites[0].Refused() && len(sites[0].Features) > 0 {
				t.Error("kept features of a site that is too large")
			}
		})
	}
}

// TestLongLineAmongSites: a line beyond the limit is passed over, the next is read.
func TestLongLineAmongSites(t *testing.T) {
	long := siteLine(strings.Repeat("b", 200_000))
	var got []string
	for c := range GeoJSON(strings.NewReader(siteLine("a")+"\n"+long+"\n"+siteLine("c")), "x", Limits{Bytes: 100_000}) {
		got = append(got, told(c))
	}
	want := []string{
		`1: 1 features {"id":"a"}`,
		"2: 0 features\nerror limit_bytes: x: line 2: has more than 100000 bytes, the limit for one site",
		`3: 1 features {"id":"c"}`,
	}
	if !slices.Equal(got, want) {
		t.Errorf("got %q, want %q", got, want)
	}
}

func TestManyProblemsAreCounted(t *testing.T) {
	text := collection(slices.Repeat([]string{"1"}, 1000)...)
	for c := range GeoJSON(strings.NewReader(text), "x", Limits{Problems: 10}) {
		last := c.Problems[len(c.Problems)-1]
		if len(c.Problems) != 11 || last.String() != "x: has 990 more problems, not listed" || last.Severity != Refusal {
			t.Errorf("got %d problems, the last %v %v", len(c.Problems), last.Severity, last)
		}
	}
}

// TestHostileStreams: streams of 200 MB are refused after a small part of
// them, and without memory to match.
func TestHostileStreams(t *testing.T) {
	const size = 200 << 20
	for _, tt := range []struct {
		name   string
		stream *endless
		limits Limits
		code   string
		read   int
	}{
		{"brackets", &endless{start: `{"a":`, line: "["}, Limits{}, "limit_depth", 1 << 18},
		{"brackets on lines", &endless{start: `{"a":`, line: "[\n"}, Limits{}, "limit_depth", 1 << 18},
		{"objects", &endless{line: `{"a":`}, Limits{}, "limit_depth", 1 << 18},
		{"digits", &endless{start: `{"a":`, line: "1"}, Limits{Bytes: 1 << 20}, "limit_bytes", 1 << 21},
		{"one long line", &endless{start: `{"type":"LineString","coordinates":[[1,2]`, line: ",[1,2]"}, Limits{Bytes: 1 << 20}, "limit_bytes", 1 << 21},
		{"many short lines", &endless{start: `{"type":"LineString","coordinates":[[1,2]`, line: ",\n[1,2]"}, Limits{Bytes: 1 << 20}, "limit_bytes", 1 << 21},
		{"blanks", &endless{start: `{`, line: " "}, Limits{Bytes: 1 << 20}, "limit_bytes", 1 << 21},
		{"long broken line", &endless{start: `{x`, line: "1"}, Limits{Bytes: 1 << 20}, "json_syntax", 1 << 21},
		{"no GeoJSON", &endless{line: "lawn "}, Limits{}, "format_unknown", 1 << 18},
	} {
		t.Run(tt.name, func(t *testing.T) {
			var before, after runtime.MemStats
			runtime.ReadMemStats(&before)
			var codes []string
			for c := range GeoJSON(io.LimitReader(tt.stream, size), "x", tt.limits) {
				for _, p := range c.Problems {
					codes = append(codes, p.Code)
				}
			}
			runtime.ReadMemStats(&after)
			if !slices.Equal(codes, []string{tt.code}) {
				t.Errorf("got problems %v, want %s", codes, tt.code)
			}
			if tt.stream.read > tt.read {
				t.Errorf("read %d bytes, want at most %d", tt.stream.read, tt.read)
			}
			if used := after.TotalAlloc - before.TotalAlloc; used > 8<<20 {
				t.Errorf("took %d bytes of memory", used)
			}
		})
	}
}
