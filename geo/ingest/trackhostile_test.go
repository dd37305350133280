package ingest

import (
	"errors"
	"fmt"
	"io"
	"runtime"
	"slices"
	"strings"
	"testing"
	"testing/iotest"
)

// TestHostileTracks: streams of 200 MB are refused after a part of them, and
// without memory to match.
func TestHostileTracks(t *testing.T) {
	const size = 200 << 20
	small := Limits{Bytes: 1 << 20}
	for _, tt := range []struct {
		name   string
		stream *endless
		limits Limits
		code   string
		read   int
	}{
		{"elements in elements", &endless{start: "<gpx>", line: "<a>"}, Limits{}, "limit_depth", 1 << 18},
		{"tracks", &endless{start: "<gpx>", line: `<trk><trkseg><trkpt lat="1" lon="1"/></trkseg></trk>`}, Limits{}, "limit_features", 6 << 20},
		{"segments", &endless{start: "<gpx><trk>", line: `<trkseg><trkpt lat="1" lon="1"/></trkseg>`}, Limits{}, "limit_features", 5 << 20},
		{"tracks without fixes", &endless{start: "<gpx>", line: "<trk><trkseg/></trk>"}, small, "limit_bytes", 2 << 20},
		{"fixes", &endless{start: "<gpx><trk><trkseg>", line: `<trkpt lat="1" lon="1"/>`}, Limits{Positions: 1000}, "limit_positions", 1 << 18},
		{"routes", &endless{start: "<gpx><rte>", line: `<rtept lat="1" lon="1"/>`}, Limits{Positions: 1000}, "limit_positions", 1 << 18},
		{"times of a track", &endless{start: "<kml><Track>", line: "<when/>"}, Limits{Positions: 1000}, "limit_positions", 1 << 18},
		{"a comment", &endless{start: "<gpx><!--", line: strings.Repeat("x", 4096)}, Limits{}, "limit_bytes", 34 << 20},
		{"a text", &endless{start: "<kml><Placemark><LineString><coordinates>", line: strings.Repeat("1,1 ", 1024)}, Limits{}, "limit_bytes", 34 << 20},
		{"a text in pieces", &endless{start: "<gpx><trk><name>", line: "<!---->" + strings.Repeat("x", 4096)}, Limits{}, "limit_bytes", 34 << 20},
		{"attributes", &endless{start: "<gpx><trk ", line: `a="` + strings.Repeat("x", 4096) + `" `}, Limits{}, "limit_bytes", 34 << 20},
		{"sentences that cannot be read", &endless{line: "$GPGGA,,*00\n"}, small, "limit_bytes", 2 << 20},
		{"fields of a sentence", &endless{start: "$GPGGA,", line: ","}, small, "limit_bytes", 2 << 20},
		{"a row without an end", &endless{start: "lat,lon\n", line: "1,2,"}, small, "limit_bytes", 2 << 20},
		{"rows", &endless{start: "lat,lon\n", line: "1,2\n"}, Limits{Positions: 1000}, "limit_positions", 1 << 18},
		{"rows of a position log", &endless{start: "% GPST latitude(deg) longitude(deg)\n", line: "1 2 3 4\n"}, Limits{Positions: 1000}, "limit_positions", 1 << 18},
		{"records", &endless{start: "\x0e\x20\x00\x00\xff\xff\xff\xff.FIT\x00\x00" + fitPlaces, line: fitPlace(1, 45, 45)}, Limits{Positions: 1000}, "limit_positions", 1 << 18},
		{"definitions", &endless{start: "\x0e\x20\x00\x00\xff\xff\xff\xff.FIT\x00\x00", line: fitPlaces}, small, "limit_bytes", 2 << 20},
		{"an archive", &endless{start: "PK\x03\x04.kml", line: strings.Repeat("x", 4096)}, Limits{}, "limit_bytes", 65 << 20},
	} {
		t.Run(tt.name, func(t *testing.T) {
			var before, after runtime.MemStats
			runtime.ReadMemStats(&before)
			tracks := ReadTracks(io.LimitReader(tt.stream, size), "x", tt.limits)
			runtime.ReadMemStats(&after)
			if last := tracks.Problems[len(tracks.Problems)-1]; last.Code != tt.code || last.Severity != Refusal || tracks.Tracks != nil {
				t.Errorf("got %v", tracks.Problems)
			}
			if tt.stream.read > tt.read {
				t.Errorf("read %d bytes, want at most %d", tt.stream.read, tt.read)
			}
			if used := after.TotalAlloc - before.TotalAlloc; used > 600<<20 {
				t.Errorf("took %d bytes of memory", used)
			}
		})
	}
}

// TestEntities: a document that defines entities by entities is refused where
// it uses the first.
func TestEntities(t *testing.T) {
	var b strings.Builder
	b.WriteString("<!DOCTYPE gpx [<!ENTITY a0 \"ha\">")
	for i := range 20 {
		fmt.Fprintf(&b, "<!ENTITY a%d \"%s\">", i+1, strings.Repeat(fmt.Sprintf("&a%d;", i), 10))
	}
	b.WriteString("]><gpx><trk><name>&a20;</name></trk></gpx>")
	got := toldTracks(readTracks(b.String(), "x", Limits{}))
	if want := "GPX\nerror xml_syntax: x: line 1: is not valid XML: invalid character entity &a20;"; got != want {
		t.Errorf("got %s, want %s", got, want)
	}
}

// A gauge watches the memory while a reader runs.
type gauge struct {
	r      io.Reader
	unseen int // bytes read since it last looked
	most   uint64
}

func (g *gauge) Read(p []byte) (int, error) {
	n, err := g.r.Read(p)
	if g.unseen += n; g.unseen > 4<<20 {
		g.unseen = 0
		g.look()
	}
	return n, err
}

func (g *gauge) look() {
	var m runtime.MemStats
	runtime.ReadMemStats(&m)
	g.most = max(g.most, m.HeapAlloc)
}

// TestTwoMillionFixes: a long log is read whole, in a quarter of a gigabyte
// and what waits to be collected.
func TestTwoMillionFixes(t *testing.T) {
	const n, a = 2_000_000, 1000
	text := &endless{start: "<gpx><trk><trkseg>\n", line: strings.Repeat(`<trkpt lat="44.9" lon="-93.1"/>`+"\n", a)}
	length := len(text.start) + n/a*len(text.line)
	runtime.GC()
	g := &gauge{r: io.MultiReader(io.LimitReader(text, int64(length)), strings.NewReader("</trkseg></trk></gpx>"))}
	tracks := ReadTracks(g, "x", Limits{})
	g.look()
	if tracks.Fixes() != n || len(tracks.Problems) > 0 {
		t.Fatalf("got %d fixes, %v", tracks.Fixes(), tracks.Problems)
	}
	if g.most > 600<<20 {
		t.Errorf("took %d bytes of memory", g.most)
	}
}

func TestTrackLimits(t *testing.T) {
	fixes := "lat,lon\n1,1\n2,2\n3,3\n"
	for _, tt := range []struct {
		name   string
		limits Limits
		want   string // of the one problem; empty if there must be none
	}{
		{"fixes enough", Limits{Positions: 3}, ""},
		{"too many fixes", Limits{Positions: 2}, "x: has more than 2 fixes, the limit for one file"},
		{"long enough", Limits{Bytes: len(fixes)}, ""},
		{"too long", Limits{Bytes: len(fixes) - 1}, fmt.Sprintf("x: has more than %d bytes, the limit for one file", len(fixes)-1)},
	} {
		var got []string
		for _, p := range readTracks(fixes, "x", tt.limits).Problems {
			got = append(got, p.String())
		}
		if strings.Join(got, "\n") != tt.want {
			t.Errorf("%s: got %q, want %q", tt.name, got, tt.want)
		}
	}
}

// TestTracksReadError: an input that fails is refused, whatever it is.
func TestTracksReadError(t *testing.T) {
	broken := errors.New("wire broken")
	for name, text := range map[string]string{
		"GPX": inGPX("<trkseg>" + gpxPoint), "NMEA": nmea(gga("120001")), "KML": inKML(""), "FIT": fitFile(fitRecords, fitSomewhat)[:40],
		"CSV": "lat,lon\n1,2\n", "KMZ": "PK\x03\x04.kml", "nothing": "",
	} {
		tracks := ReadTracks(io.MultiReader(strings.NewReader(text), iotest.ErrReader(broken)), "x", Limits{})
		last := tracks.Problems[len(tracks.Problems)-1]
		if !tracks.Refused() || tracks.Tracks != nil || last.Code != "read_failed" || !strings.HasSuffix(last.Text, "wire broken") {
			t.Errorf("%s: got %v", name, tracks.Problems)
		}
	}
}

// TestTracksInPieces: how the bytes arrive makes no difference.
func TestTracksInPieces(t *testing.T) {
	for _, rules := range [][]trackRule{gpxRules, tcxRules, kmlRules, nmeaRules, fitRules, fixTableRules, posRules} {
		for _, r := range rules {
			whole := readTracks(r.text, "x", Limits{})
			pieces := ReadTracks(iotest.OneByteReader(strings.NewReader(r.text)), "x", Limits{})
			if toldTracks(whole) != toldTracks(pieces) || whole.Digest != pieces.Digest {
				t.Errorf("%s: differs", r.name)
			}
		}
	}
}

// TestProblemsOfTracks: a problem occurs once for a file, and says how often.
func TestProblemsOfTracks(t *testing.T) {
	tracks := readTracks("lat,lon\n"+strings.Repeat("91,100\n", 1000)+"1,1\n", "x", Limits{})
	codes := make([]string, 0, 1)
	for _, p := range tracks.Problems {
		codes = append(codes, p.Code)
	}
	if !slices.Equal(codes, []string{"latitude_range"}) || !strings.HasSuffix(tracks.Problems[0].Text, "(1000 fixes)") {
		t.Errorf("got %v", tracks.Problems)
	}
}
