package ingest

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// FuzzGeoJSON: no input makes the reader panic or eat memory, and a site that
// is not refused writes what reads back the same.
func FuzzGeoJSON(f *testing.F) {
	for _, r := range geometryRules {
		f.Add(inCollection(r.geometry))
	}
	for _, r := range documentRules {
		f.Add(r.text)
	}
	for _, r := range unreadable {
		f.Add(r.text)
	}
	for _, r := range lineRules {
		f.Add(r.text)
	}
	for _, path := range realFiles(f, "sites/*.geojson") {
		if text, err := os.ReadFile(path); err == nil && len(text) < 50_000 {
			f.Add(string(text))
		}
	}
	limits := Limits{Bytes: 1 << 20, Features: 1000, Positions: 10_000, Problems: 100}
	f.Fuzz(func(t *testing.T, text string) {
		for c := range GeoJSON(strings.NewReader(text), "x", limits) {
			if c.Refused() {
				continue
			}
			for _, f := range c.Features {
				_, _ = f.Properties.Tag("kind")
				_, _ = f.Properties.Number("height_m")
			}
			checkWrites(t, c)
		}
	})
}

// needFiles is realFiles for a test that is nothing without them: it is skipped
// where they are missing.
func needFiles(t testing.TB, pattern string) []string {
	t.Helper()
	files := realFiles(t, pattern)
	if len(files) == 0 {
		t.Skipf("no shared/data/%s beside the project", pattern)
	}
	return files
}

// realFiles finds files of the data that stands beside the project, going up
// from here; none if it is not there.
func realFiles(t testing.TB, pattern string) []string {
	t.Helper()
	dir, err := os.Getwd()
	if err != nil {
		t.Fatal(err)
	}
	for {
		if files, _ := filepath.Glob(filepath.Join(dir, "shared", "data", pattern)); len(files) > 0 {
			return files
		}
		up := filepath.Dir(dir)
		if up == dir {
			return nil
		}
		dir = up
	}
}
