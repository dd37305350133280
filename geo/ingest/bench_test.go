package ingest

import (
	"bytes"
	"fmt"
	"math"
	"testing"
)

// tracedSite is a collection of n outlines of 24 points with map tags.
func tracedSite(n int) []byte {
	var b bytes.Buffer
	b.WriteString(`{"type":"FeatureCollection","site":{"id":"bench"},"features":[`)
	for i := range n {
		if i > 0 {
			b.WriteByte(',')
		}
		fmt.Fprintf(&b, "\n"+`{"type":"Feature","id":"way/%d","properties":{"building":"yes","building:levels":"%d","name":"block %d"},`, i, i%7, i)
		b.WriteString(`"geometry":{"type":"Polygon","coordinates":[[`)
		for k := range 25 {
			angle := float64(k%24) * math.Pi / 12
			fmt.Fprintf(&b, "[%.8f,%.8f],", 13.4+float64(i%100)*0.001+0.0004*math.Cos(angle), 52.4+float64(i/100)*0.001+0.0002*math.Sin(angle))
		}
		b.Truncate(b.Len() - 1)
		b.WriteString(`]]}}`)
	}
	b.WriteString("\n]}\n")
	return b.Bytes()
}

func BenchmarkGeoJSON(b *testing.B) {
	for _, n := range []int{400, 10_000} {
		text := tracedSite(n)
		b.Run(fmt.Sprintf("read/n=%d", n), func(b *testing.B) {
			b.SetBytes(int64(len(text)))
			b.ReportAllocs()
			for b.Loop() {
				for c := range GeoJSON(bytes.NewReader(text), "bench", Limits{}) {
					if len(c.Features) != n || len(c.Problems) > 0 {
						b.Fatal(len(c.Features), c.Problems)
					}
				}
			}
		})
	}
}
