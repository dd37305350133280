package ingest

import (
	"bytes"
	"math"
	"os"
	"strings"
	"testing"
)

// fuzzTracks seeds a target with rules and with the real files of a pattern,
// and checks what every input must fulfil.
func fuzzTracks(f *testing.F, source, pattern string, rules []trackRule) {
	f.Helper()
	for _, r := range rules {
		if len(r.text) < 10_000 {
			f.Add([]byte(r.text))
		}
	}
	for _, path := range realFiles(f, "tracks/"+pattern) {
		if text, err := os.ReadFile(path); err == nil {
			f.Add(text[:min(len(text), 3000)])
		}
	}
	limits := Limits{Bytes: 1 << 20, Depth: 50, Positions: 10_000}
	f.Fuzz(func(t *testing.T, text []byte) {
		tracks := ReadTracks(bytes.NewReader(text), source, limits)
		checkTracks(t, tracks, limits)
		again := ReadTracks(bytes.NewReader(text), source, limits)
		if toldTracks(tracks) != toldTracks(again) {
			t.Error("reads differently the second time")
		}
	})
}

// checkTracks: a file is refused or has fixes, all of which are on the globe
// and in segments that are not empty.
func checkTracks(t *testing.T, tracks *Tracks, limits Limits) {
	t.Helper()
	if tracks.Refused() != (tracks.Fixes() == 0) || tracks.Refused() != (tracks.Tracks == nil) || tracks.Fixes() > limits.Positions {
		t.Errorf("refused %v, %d fixes", tracks.Refused(), tracks.Fixes())
	}
	seen := make(map[string]bool)
	for _, p := range tracks.Problems {
		if p.Code == "" || p.Text == "" || len(p.Text) > 400 || strings.ContainsAny(p.String(), "\n\x00") || seen[p.Code] {
			t.Errorf("bad problem %q %q", p.Code, p)
		}
		seen[p.Code] = true
	}
	for _, track := range tracks.Tracks {
		for _, segment := range track.Segments {
			if len(segment) == 0 {
				t.Error("segment is empty")
			}
			for _, f := range segment {
				checkFix(t, f)
			}
		}
	}
}

func checkFix(t *testing.T, f Fix) {
	t.Helper()
	good := math.Abs(f.At.Lon()) <= 180 && math.Abs(f.At.Lat()) <= 90 &&
		f.HDOP >= 0 && !math.IsInf(f.HDOP, 0) && f.Sigma >= 0 && !math.IsInf(f.Sigma, 0) &&
		0 <= f.Satellites && f.Satellites <= 1000 && -1 <= f.Quality && f.Quality <= mostQuality
	if !good {
		t.Errorf("bad fix %+v", f)
	}
}

func FuzzGPX(f *testing.F)    { fuzzTracks(f, "x.gpx", "*.gpx", gpxRules) }
func FuzzTCX(f *testing.F)    { fuzzTracks(f, "x.tcx", "*.tcx", tcxRules) }
func FuzzKML(f *testing.F)    { fuzzTracks(f, "x.kml", "*.kml", kmlRules) }
func FuzzNMEA(f *testing.F)   { fuzzTracks(f, "x.nmea", "*.nmea", nmeaRules) }
func FuzzFIT(f *testing.F)    { fuzzTracks(f, "x.fit", "*.fit", fitRules) }
func FuzzFixCSV(f *testing.F) { fuzzTracks(f, "x.csv", "*.csv", fixTableRules) }
func FuzzPosLog(f *testing.F) { fuzzTracks(f, "x.pos", "*.pos", posRules) }

func FuzzKMZ(f *testing.F) {
	rules := []trackRule{{text: zipped(f, [2]string{"a.txt", "x"})}}
	for _, r := range kmlRules {
		rules = append(rules, trackRule{text: zipped(f, [2]string{"doc.kml", r.text})})
	}
	fuzzTracks(f, "x.kmz", "*.kmz", rules)
}
