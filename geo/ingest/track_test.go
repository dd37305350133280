package ingest

import (
	"crypto/sha256"
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// readTracks reads a text of tracks.
func readTracks(text, source string, limits Limits) *Tracks {
	return ReadTracks(strings.NewReader(text), source, limits)
}

// toldTracks tells what was read, one track and one problem a line.
func toldTracks(t *Tracks) string {
	var b strings.Builder
	b.WriteString(t.Format + "\n")
	for _, track := range t.Tracks {
		fmt.Fprintf(&b, "%q", track.Name)
		if track.Closed {
			b.WriteString(" closed")
		}
		for i, segment := range track.Segments {
			if i > 0 {
				b.WriteString(" /")
			}
			for _, f := range segment {
				b.WriteString(" " + toldFix(f))
			}
		}
		b.WriteString("\n")
	}
	for _, p := range t.Problems {
		fmt.Fprintf(&b, "%v %s: %v\n", p.Severity, p.Code, p)
	}
	return strings.TrimSuffix(b.String(), "\n")
}

// toldFix is a fix without what is not given, as in [1 2 12:00:01 h0.9 n7 q1].
func toldFix(f Fix) string {
	s := fmt.Sprintf("[%.9g %.9g", f.At.Lon(), f.At.Lat())
	if !f.Time.IsZero() {
		s += f.Time.Format(" 2006-01-02T15:04:05.999")
	}
	if f.HDOP != 0 {
		s += fmt.Sprintf(" h%g", f.HDOP)
	}
	if f.Sigma != 0 {
		s += fmt.Sprintf(" s%.4g", f.Sigma)
	}
	if f.Satellites != 0 {
		s += fmt.Sprintf(" n%d", f.Satellites)
	}
	if f.Quality != -1 {
		s += fmt.Sprintf(" q%d", f.Quality)
	}
	return s + "]"
}

// A trackRule is a text and what must be told of it.
type trackRule struct {
	name, text string
	want       []string // lines of toldTracks after the format
}

func checkTrackRules(t *testing.T, source, format string, rules []trackRule) {
	t.Helper()
	for _, r := range rules {
		t.Run(r.name, func(t *testing.T) {
			got := toldTracks(readTracks(r.text, source, Limits{}))
			if want := strings.Join(append([]string{format}, r.want...), "\n"); got != want {
				t.Errorf("got\n%s\nwant\n%s", got, want)
			}
		})
	}
}

// realTracks are the real files: their format, how many fixes each segment has
// (a / between tracks), and how often each problem occurs. The counts of fixes are
// those of the list that comes with the files, or of a text search.
var realTracks = map[string]struct {
	format   string
	segments string
	problems map[string]int
}{
	"block_walk_no_time.gpx":             {"GPX", "119", nil},
	"hike_scotland.fit":                  {"FIT", "583", map[string]int{"fix_none": 1}},
	"hut_stroll_extensions.gpx":          {"GPX", "35", nil},
	"jog_lisbon_1s.fit":                  {"FIT", "3424", nil},
	"lake_walk_segments.gpx":             {"GPX", "173 / 52 / 2 / 44 / 2 / 2 / 21", map[string]int{"waypoints": 1}},
	"loop_freiburg_10s.gpx":              {"GPX", "100", nil},
	"loop_mainz_5s.gpx":                  {"GPX", "378 / 4 / 5 / 8", nil},
	"rtk_fix_and_dgps_mixed.nmea":        {"NMEA 0183", "122", nil},
	"rtk_float_static.nmea":              {"NMEA 0183", "30", nil},
	"rtk_float_to_fix_static_40min.pos":  {"RTKLIB", "2480", map[string]int{"time_scale": 1}},
	"short_walk.tcx":                     {"TCX", "18", nil},
	"static_autonomous_14min.csv":        {"CSV", "853", nil},
	"static_autonomous_open_18min.csv":   {"CSV", "1100", nil},
	"static_brussels_urban_1hz.nmea":     {"NMEA 0183", "187", map[string]int{"fix_none": 1}},
	"static_float_jumps_11min.csv":       {"CSV", "669", nil},
	"static_open_autonomous_boston.nmea": {"NMEA 0183", "364", map[string]int{"date_none": 1}},
	"static_open_rtk_ref_boston.nmea":    {"NMEA 0183", "322", nil},
	"static_rtk_open_10min.csv":          {"CSV", "710", nil},
	"static_seattle_multignss_1hz.nmea":  {"NMEA 0183", "130", nil},
	"static_wisconsin_1hz.nmea":          {"NMEA 0183", "154", nil},
	"walk_austin_10s.kml":                {"KML", "451", nil},
	"walk_line_rtk_float_boston.nmea":    {"NMEA 0183", "76", nil},
	"yard_walk_a_rtk.gpx":                {"GPX", "99", nil},
	"yard_walk_b_float_dgps.gpx":         {"GPX", "103", nil},
	"yard_walk_c_float_occluded.gpx":     {"GPX", "65", nil},
	"yard_walk_e_rtk.gpx":                {"GPX", "211", nil},
	"yard_walk_h_rtk_occluded.gpx":       {"GPX", "96", nil},
	"yard_walk_i_float_fast.gpx":         {"GPX", "443", nil},
	"yard_walk_k_float.gpx":              {"GPX", "174", nil},
}

func TestRealTracks(t *testing.T) {
	files := needFiles(t, "tracks/*")
	if len(files) != len(realTracks) {
		t.Errorf("there are %d files, %d are known", len(files), len(realTracks))
	}
	for _, path := range files {
		name := filepath.Base(path)
		t.Run(name, func(t *testing.T) {
			text, err := os.ReadFile(path)
			if err != nil {
				t.Fatal(err)
			}
			want, known := realTracks[name]
			if !known {
				t.Fatal("is not known")
			}
			// The content must do: without its name the format is the same.
			tracks := readTracks(string(text), "", Limits{})
			if tracks.Format != want.format || !IsTrack(text[:min(len(text), 4096)], "") {
				t.Errorf("format is %q, want %q", tracks.Format, want.format)
			}
			if got := countedFixes(tracks); got != want.segments {
				t.Errorf("fixes are %s, want %s", got, want.segments)
			}
			problems := make(map[string]int)
			for _, p := range tracks.Problems {
				problems[p.Code]++
			}
			if !maps.Equal(problems, want.problems) {
				t.Errorf("problems are %v, want %v", tracks.Problems, want.problems)
			}
			if tracks.Digest != sha256.Sum256(text) {
				t.Error("digest is not that of the file")
			}
		})
	}
}

func countedFixes(tracks *Tracks) string {
	var counts []string
	for _, track := range tracks.Tracks {
		var of []string
		for _, segment := range track.Segments {
			of = append(of, fmt.Sprint(len(segment)))
		}
		counts = append(counts, strings.Join(of, " "))
	}
	return strings.Join(counts, " / ")
}

// TestRealFixes: some fixes of the real files, read by eye in their texts.
func TestRealFixes(t *testing.T) {
	for _, tt := range []struct {
		file        string
		first, last string
	}{
		{"loop_freiburg_10s.gpx",
			"[7.8387022 47.9881096 2008-08-16T16:01:30.187 h5.3 n7]", "[7.8387022 47.9880345 2008-08-16T16:18:37.271 h3.56 n7]"},
		{"yard_walk_a_rtk.gpx",
			"[-71.086419 42.3381765 2022-10-08T18:00:35.091 q2]", "[-71.0864193 42.3381765 2022-10-08T18:02:13.086 q2]"},
		{"walk_line_rtk_float_boston.nmea",
			"[-71.0866097 42.3381146 2024-02-02T17:02:09 h1.3 s0.8373 n10 q5]", "[-71.086043 42.3385851 2024-02-02T17:03:24 h0.9 s0.2009 n14 q5]"},
		{"rtk_float_to_fix_static_40min.pos",
			"[-105.147249 40.0970249 2020-12-24T21:28:42 s5.206 n11 q5]", "[-105.14725 40.0970237 2020-12-24T22:10:01 s0.001523 n13 q4]"},
		{"static_rtk_open_10min.csv",
			"[-71.0864263 42.338196 2023-02-20T19:33:20.18 q4]", "[-71.0864263 42.338196 2023-02-20T19:45:09.158 q4]"},
		{"walk_austin_10s.kml",
			"[-97.8586 30.244696 2014-05-25T18:30:59]", "[-97.89716 30.227217 2014-05-25T20:13:09]"},
		{"short_walk.tcx",
			"[-16.581523 28.389956 2012-01-04T00:00:00]", "[-16.582049 28.389777 2012-01-04T00:05:09]"},
	} {
		files := needFiles(t, "tracks/"+tt.file)
		text, err := os.ReadFile(files[0])
		if err != nil {
			t.Fatal(err)
		}
		tracks := readTracks(string(text), "", Limits{})
		segments := tracks.Tracks[0].Segments
		last := segments[len(segments)-1]
		first, end := toldFix(segments[0][0]), toldFix(last[len(last)-1])
		if first != tt.first || end != tt.last {
			t.Errorf("%s: first is %s, want %s; last is %s, want %s", tt.file, first, tt.first, end, tt.last)
		}
	}
}
