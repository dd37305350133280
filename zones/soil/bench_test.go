package soil

import (
	"bytes"
	"testing"
)

// BenchmarkReadLog reads the network's year of 63 stations, 23,058 rows of two
// depths and air.
func BenchmarkReadLog(b *testing.B) {
	text := realFile(b, stationsFile)
	columns, err := ParseColumns(stationsColumns)
	if err != nil {
		b.Fatal(err)
	}
	b.SetBytes(int64(len(text)))
	b.ReportAllocs()
	for b.Loop() {
		if l, _ := ReadLog(bytes.NewReader(text), "x.csv", Options{Columns: columns}); l == nil {
			b.Fatal("refused")
		}
	}
}

// BenchmarkWindow finds the window of a year of days.
func BenchmarkWindow(b *testing.B) {
	l := mustRead(b, string(realFile(b, stationsFile)), stationsColumns)
	series := soilAt(b, l, l.Stations()[0], "5 cm", Mean)
	r := Rule{Opens: fahrenheit(55), HasClose: true, Closes: fahrenheit(65), TrailDays: 5}
	for b.Loop() {
		r.Window(series, date(2020, 1, 1), lastOf(l))
	}
}
