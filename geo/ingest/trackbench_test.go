package ingest

import (
	"fmt"
	"math"
	"strings"
	"testing"
	"time"
)

// roundLawn is a walk of n fixes, one a second, round a lawn of 20 m.
func roundLawn(n int) []Fix {
	begin := time.Date(2024, 5, 1, 12, 0, 0, 0, time.UTC)
	fixes := make([]Fix, n)
	for i := range fixes {
		angle := float64(i) / 50
		fixes[i].At = [2]float64{-93.1 + 0.0001*math.Cos(angle), 44.9 + 0.0001*math.Sin(angle)}
		fixes[i].Time = begin.Add(time.Duration(i) * time.Second)
	}
	return fixes
}

func BenchmarkReadTracks(b *testing.B) {
	const n = 10_000
	texts := map[string]string{}
	for format, write := range trackWriters {
		texts[format] = write(roundLawn(n))
	}
	var records strings.Builder
	for _, f := range roundLawn(n) {
		records.WriteString(fitRec(0, uint32(f.Time.Unix()), f.At[1], f.At[0]))
	}
	texts["FIT"] = fitFile(fitRecords, records.String())
	texts["KMZ"] = zipped(b, [2]string{"doc.kml", texts["KML"]})
	for _, format := range []string{"GPX", "TCX", "KML", "KMZ", "NMEA 0183", "FIT", "CSV", "RTKLIB"} {
		text := texts[format]
		b.Run(fmt.Sprintf("%s/n=%d", format, n), func(b *testing.B) {
			b.SetBytes(int64(len(text)))
			b.ReportAllocs()
			for b.Loop() {
				if tracks := readTracks(text, "bench", Limits{}); tracks.Fixes() != n {
					b.Fatal(toldTracks(tracks))
				}
			}
		})
	}
}
