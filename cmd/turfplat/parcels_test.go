package main

import (
	"flag"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"testing"
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
