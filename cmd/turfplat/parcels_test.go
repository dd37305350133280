package main

import (
	"bytes"
	"flag"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"regexp"
	"runtime"
	"slices"
	"strings"
	"testing"

	"example.org/turfplat/geo/ingest"
)

var townDir = flag.String("town", "", "where the benchmark of parcels leaves its town, to run other things on")

// townFiles writes a town and its lots into a directory.
func townFiles(t testing.TB, dir string, lots int) (osm, parcels string) {
	t.Helper()
	osm, parcels = filepath.Join(dir, "town.osm"), filepath.Join(dir, "parcels.geojson")
	f, err := os.Create(osm)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	town, err := writeTown(f, lots)
	if err != nil {
		t.Fatal(err)
	}
	text := []byte(`{"type":"FeatureCollection","features":[`)
	for i := range town.lots {
		if i > 0 {
			text = append(text, ',')
		}
		text = fmt.Appendf(text, "\n%s", town.parcel(i))
	}
	if err := os.WriteFile(parcels, append(text, "\n]}\n"...), 0o666); err != nil {
		t.Fatal(err)
	}
	return osm, parcels
}

// succeeds runs a command that must end well, and returns what it writes.
func succeeds(t *testing.T, args ...string) []byte {
	t.Helper()
	var out, messages bytes.Buffer
	if code := run(append([]string{"turfplat"}, args...), nil, &out, &messages); code != 0 {
		t.Fatalf("%v: exit status %d\n%s", args, code, &messages)
	}
	return out.Bytes()
}

var siteMember = regexp.MustCompile(`"site":\{[^}]*\}`)

// TestParcelsAreSurveysWithAnOutline: a line is the site file that survey makes
// of the one parcel, but for id and name, on one core and on many.
func TestParcelsAreSurveysWithAnOutline(t *testing.T) {
	dir := t.TempDir()
	osm, parcels := townFiles(t, dir, 60)
	text := succeeds(t, "survey", "--parcels", parcels, osm)
	lines := bytes.SplitAfter(text, []byte{'\n'})
	if len(lines) != 61 || len(lines[60]) > 0 {
		t.Fatalf("%d lines", len(lines))
	}
	alone := filepath.Join(dir, "alone.geojson")
	i := 0
	for c := range ingest.EachFeature(openFile(t, parcels), "", ingest.DefaultLimits) {
		var feature bytes.Buffer
		if err := c.WriteGeoJSONLine(&feature); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(alone, feature.Bytes(), 0o666); err != nil {
			t.Fatal(err)
		}
		want := succeeds(t, "survey", "--lines", "--outline", alone, osm)
		if header := fmt.Sprintf(`"site":{"id":"lot-%d","name":"lot-%d"}`, i, i); !bytes.Contains(lines[i], []byte(header)) {
			t.Errorf("line %d is not that of lot %d", i+1, i)
		}
		if got := siteMember.ReplaceAll(lines[i], nil); !bytes.Equal(got, siteMember.ReplaceAll(want, nil)) {
			t.Errorf("lot %d is\n%s\nalone it is\n%s", i, got, want)
		}
		i++
	}
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(1))
	if !bytes.Equal(succeeds(t, "survey", "--parcels", parcels, osm), text) {
		t.Error("one core writes something else")
	}
}

func openFile(t *testing.T, name string) io.Reader {
	t.Helper()
	f, err := os.Open(name)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { f.Close() })
	return f
}

func TestParcelIDs(t *testing.T) {
	feature := func(members string) string {
		return `{"type":"Feature",` + members + `,"geometry":null}` + "\n"
	}
	text := feature(`"id":"a"`) + feature(`"properties":{"name":"a"}`) + feature(`"properties":{"id":"a-2"}`) + "\n" +
		feature(`"properties":{}`) + feature(`"properties":{"id":7,"name":"b"}`) + strings.Repeat(feature(`"id":"a"`), 3)
	ids := newParcelIDs("")
	var got []string
	warned := 0
	for c := range ingest.EachFeature(strings.NewReader(text), "town/parcels.ndjson", ingest.DefaultLimits) {
		got = append(got, ids.of(c))
		for _, p := range c.Problems {
			if p.Code == "parcel_repeated" {
				warned++
			}
		}
	}
	want := []string{"a", "a-2", "a-2-2", "parcels-5", "7", "a-3", "a-4", "a-5"}
	if !slices.Equal(got, want) || warned != 5 {
		t.Errorf("ids are %q with %d warnings, want %q with 5", got, warned, want)
	}
}

// BenchmarkParcels makes the sites of all lots of a town of 10,000, which has
// 50,000 objects.
func BenchmarkParcels(b *testing.B) {
	dir := *townDir
	if dir == "" {
		dir = b.TempDir()
	}
	osm, parcels := townFiles(b, dir, 10_000)
	for b.Loop() {
		if code := run([]string{"turfplat", "survey", "--parcels", parcels, osm, "-o", filepath.Join(dir, "sites.ndjson")}, nil, io.Discard, io.Discard); code != 0 {
			b.Fatal("exit status", code)
		}
	}
}
