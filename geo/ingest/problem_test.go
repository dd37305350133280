package ingest

import (
	"strings"
	"testing"

	"github.com/paulmach/orb"
)

func TestProblemString(t *testing.T) {
	long := strings.Repeat("é", 100)
	for _, tt := range []struct {
		place Place
		want  string
	}{
		{Place{Source: "yard.geojson", Feature: 3, Label: "back bed", Near: &orb.Point{-93.1, 44.9}},
			`yard.geojson: features[3] "back bed": says so near [-93.1, 44.9]`},
		{Place{Source: "season.yaml", Line: 12, Column: 7, Feature: -1}, `season.yaml: line 12, column 7: says so`},
		{Place{Source: "route.ndjson", Line: 12, Feature: 3, Label: "back bed"}, `route.ndjson: line 12: features[3] "back bed": says so`},
		{Place{Source: "yard.geojson", Feature: -1}, `yard.geojson: says so`},
		{Place{Feature: -1, Near: &orb.Point{-0.00000001, 179.99999999}}, `says so near [0, 180]`},
		{Place{Feature: 0, Label: "bed\n\"2\""}, `features[0] "bed\n\"2\"": says so`},
		{Place{Feature: 0, Label: long}, `features[0] "` + long[:59*len("é")] + `…": says so`},
		{Place{Feature: 0, Label: long[:60*len("é")]}, `features[0] "` + long[:60*len("é")] + `": says so`},
	} {
		if got := (Problem{Place: tt.place, Text: "says so"}).String(); got != tt.want {
			t.Errorf("got  %s\nwant %s", got, tt.want)
		}
	}
}

func TestSeverityString(t *testing.T) {
	for s, want := range []string{"note", "warning", "error"} {
		if got := Severity(s).String(); got != want {
			t.Errorf("got %s, want %s", got, want)
		}
	}
	if !(Note < Warning && Warning < Refusal) {
		t.Error("severities are out of order")
	}
}
