package main

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.org/turfplat/geo/ingest"
)

// realFiles lists real inputs in place, in a folder of ../shared/data.
func realFiles(t *testing.T, folder string) []string {
	t.Helper()
	files, err := filepath.Glob(filepath.Join("..", "..", "..", "shared", "data", folder, "*"))
	if err != nil || len(files) == 0 {
		t.Skipf("no ../shared/data/%s beside the project", folder)
	}
	return files
}

// A surveyedFile is what the command made of a file, and told.
type surveyedFile struct {
	code     int
	account  surveyAccount
	messages string
	site     *ingest.Collection // nil if none was written
}

func surveyFile(t *testing.T, args ...string) surveyedFile {
	t.Helper()
	output := filepath.Join(t.TempDir(), "site.geojson")
	var out, messages bytes.Buffer
	s := surveyedFile{}
	s.code = run(append([]string{"turfplat", "survey", "--json", "-o", output}, args...), nil, &out, &messages)
	s.messages = messages.String()
	if f, err := os.Open(output); err == nil {
		defer f.Close()
		for c := range ingest.GeoJSON(f, "site.geojson", ingest.DefaultLimits) {
			s.site = c
		}
	}
	if (s.code == 0) != (s.site != nil) {
		t.Fatalf("exit %d, and a site file: %v\n%s", s.code, s.site != nil, s.messages)
	}
	if s.code != 0 {
		return s
	}
	if err := json.Unmarshal(out.Bytes(), &s.account); err != nil {
		t.Fatal(err)
	}
	if len(s.site.Problems) > 0 || len(s.site.Features) != objects(s.account) {
		t.Errorf("%d features for %d taken; read back: %v", len(s.site.Features), objects(s.account), s.site.Problems)
	}
	return s
}

// objects counts those taken.
func objects(a surveyAccount) int {
	n := 0
	for _, row := range a.Taken {
		n += row.Objects
	}
	return n
}

// unused counts the features ignored; what else was ignored the reader had left
// aside before it became one.
func unused(a surveyAccount) int {
	n := 0
	for _, row := range a.Ignored {
		if strings.HasPrefix(row.Reason, "no ") {
			n += row.Objects
		}
	}
	return n
}

// TestRealWalkFiles: each real track becomes a site file whose rings a person
// would expect, or is refused in words a walker understands.
func TestRealWalkFiles(t *testing.T) {
	refusals := map[string]string{
		"block_walk_no_time.gpx":             "the walk does not close: it ends 241.7 ft from its start",
		"hike_scotland.fit":                  "(1 sigma), no measurement",
		"hut_stroll_extensions.gpx":          "too small to be told from the receiver's wandering",
		"jog_lisbon_1s.fit":                  "(1 sigma), no measurement",
		"lake_walk_segments.gpx":             "the receiver was lost along ring 2",
		"rtk_fix_and_dgps_mixed.nmea":        "the walk does not close",
		"rtk_float_static.nmea":              "the receiver stood still",
		"rtk_float_to_fix_static_40min.pos":  "the receiver stood still",
		"short_walk.tcx":                     "the walk does not close",
		"static_autonomous_14min.csv":        "the receiver stood still",
		"static_autonomous_open_18min.csv":   "the receiver stood still",
		"static_brussels_urban_1hz.nmea":     "the receiver stood still",
		"static_float_jumps_11min.csv":       "too small to be told from the receiver's wandering",
		"static_open_autonomous_boston.nmea": "the receiver stood still",
		"static_open_rtk_ref_boston.nmea":    "the receiver stood still",
		"static_rtk_open_10min.csv":          "the receiver stood still",
		"static_seattle_multignss_1hz.nmea":  "the receiver stood still",
		"static_wisconsin_1hz.nmea":          "the receiver stayed within 9.9 ft, as one that stands still",
		"walk_austin_10s.kml":                "crosses itself however it is smoothed",
		"walk_line_rtk_float_boston.nmea":    "the walk does not close",
	}
	for _, file := range realFiles(t, "tracks") {
		name := filepath.Base(file)
		t.Run(name, func(t *testing.T) {
			s := surveyFile(t, "--as", "turf", "--side", "edge", file)
			if want, refused := refusals[name]; refused {
				if s.code != exitData || !strings.Contains(s.messages, want) || !strings.Contains(s.messages, "turfplat: hint: ") {
					t.Errorf("exit %d, told\n%swant %q and a hint", s.code, s.messages, want)
				}
				return
			}
			if s.code != 0 {
				t.Fatalf("exit %d\n%s", s.code, s.messages)
			}
			w := s.account.Walks[0]
			if len(w.Rings) == 0 || w.Fixes < 60 {
				t.Errorf("%d rings of %d fixes", len(w.Rings), w.Fixes)
			}
			for _, r := range w.Rings {
				if r.AreaM2 < 50 || r.SigmaM2 <= 0 || r.SigmaM2 > 0.25*r.AreaM2 || r.CI95M2 < r.SigmaM2 || r.FixesUsed > w.Fixes || r.Class < "A" || r.Class > "E" {
					t.Errorf("%+v", r)
				}
			}
		})
	}
}

// TestRealMapFiles: of each real extract and collection, every feature read is
// taken or ignored with a reason, and what could not be read is told with its
// place.
func TestRealMapFiles(t *testing.T) {
	for _, folder := range []string{"osm", "polygons"} {
		for _, file := range realFiles(t, folder) {
			t.Run(filepath.Base(file), func(t *testing.T) {
				s := surveyFile(t, file)
				if s.code != 0 {
					t.Fatalf("exit %d\n%s", s.code, s.messages)
				}
				read := featuresOf(t, file)
				if got := objects(s.account) + unused(s.account); got != read {
					t.Errorf("taken and ignored are %d of %d features: %+v", got, read, s.account)
				}
				left := 0
				for _, f := range s.account.Found {
					if f.Severity == "warning" && strings.Contains(f.Text, "left out") {
						left++
						if f.Label == "" && f.Near == nil && !strings.Contains(f.Text, "osm:") {
							t.Errorf("left out without a place: %+v", f)
						}
					}
				}
				all := 0
				for _, row := range s.account.LeftOut {
					all += row.Objects
				}
				if all < left {
					t.Errorf("%d problems tell of objects left out, the account of %d", left, all)
				}
			})
		}
	}
}

// featuresOf counts the features that the reader of a file finds.
func featuresOf(t *testing.T, file string) int {
	t.Helper()
	f, err := os.Open(file)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	n := 0
	for c := range ingest.Read(f, file, ingest.DefaultLimits) {
		n += len(c.Features)
	}
	return n
}
