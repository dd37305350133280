package soil

import (
	"strings"
	"testing"

	"example.org/turfplat/geo"
	"example.org/turfplat/geo/ingest"
	"example.org/turfplat/zones/material"
)

// readWith reads a log with columns as the command line has them.
func readWith(t testing.TB, text, columns string) (*Log, []ingest.Problem) {
	t.Helper()
	var o Options
	if columns != "" {
		var err error
		if o.Columns, err = ParseColumns(columns); err != nil {
			t.Fatal(err)
		}
	}
	return ReadLog(strings.NewReader(text), "soil.csv", o)
}

// mustRead reads a log that must not be refused.
func mustRead(t testing.TB, text, columns string) *Log {
	t.Helper()
	l, problems := readWith(t, text, columns)
	if l == nil {
		t.Fatalf("refused: %v", problems)
	}
	return l
}

func mustLength(t testing.TB, text string) geo.Length {
	t.Helper()
	q, err := material.Parse(text)
	if err != nil {
		t.Fatal(err)
	}
	length, err := q.Length()
	if err != nil {
		t.Fatal(err)
	}
	return length
}

// soilAt gives the days of a station at a depth, which must be there.
func soilAt(t testing.TB, l *Log, station, depth string, stat Statistic) Series {
	t.Helper()
	s, err := l.Station(station)
	if err != nil {
		t.Fatal(err)
	}
	series, err := s.Soil(mustLength(t, depth), stat)
	if err != nil {
		t.Fatal(err)
	}
	return series
}
