package ingest

import (
	"bytes"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"testing"
)

// BenchmarkOSM reads the largest real extract.
func BenchmarkOSM(b *testing.B) {
	var largest []byte
	var name string
	for _, path := range realFiles(b, "osm/*.osm") {
		if text, err := os.ReadFile(path); err == nil && len(text) > len(largest) {
			largest, name = text, filepath.Base(path)
		}
	}
	if largest == nil {
		b.Skip("the real extracts are not beside the project (shared/data)")
	}
	b.Run(name, func(b *testing.B) { benchmarkOSM(b, largest) })
}

func BenchmarkPBF(b *testing.B) {
	for _, n := range []int{400, 10_000} {
		b.Run(fmt.Sprintf("ways=%d", n), func(b *testing.B) {
			file, err := io.ReadAll(largeMap(n, 10, 4))
			if err != nil {
				b.Fatal(err)
			}
			benchmarkOSM(b, file)
		})
	}
}

func benchmarkOSM(b *testing.B, file []byte) {
	b.SetBytes(int64(len(file)))
	b.ReportAllocs()
	for b.Loop() {
		for c := range OSM(bytes.NewReader(file), "bench", Limits{}) {
			if c.Refused() || len(c.Features) == 0 {
				b.Fatal(c.Problems)
			}
		}
	}
}

// BenchmarkAssembly builds one area of n positions.
func BenchmarkAssembly(b *testing.B) {
	for _, n := range []int{100, 10_000} {
		b.Run(fmt.Sprintf("n=%d", n), func(b *testing.B) {
			file, err := io.ReadAll(spiral(n/100, 101))
			if err != nil {
				b.Fatal(err)
			}
			benchmarkOSM(b, file)
		})
	}
}
