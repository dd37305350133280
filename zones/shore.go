package zones

import (
	_ "embed"
	"encoding/csv"
	"fmt"
	"strings"

	"example.org/turfplat/geo/ingest"
)

// shoresCSV says what is water, a drain or a well, the first row that fits
// deciding.
//
//go:embed shores.csv
var shoresCSV string

var shores = mustReadShores(shoresCSV)

// nearWords are the name of what setbacks keep away from, and the name in a
// sentence.
var nearWords = map[string][2]string{
	"water": {"Water", "water"}, "drain": {"Drain", "a drain or ditch"}, "well": {"Well", "a well"},
}

type shore struct {
	kind Kind
	tags []tagMatch // none = any
	near string
}

// mustReadShores panics on a malformed row: the table is part of the program.
func mustReadShores(table string) []shore {
	records, err := csv.NewReader(strings.NewReader(table)).ReadAll()
	if err != nil {
		panic(fmt.Sprintf("zones: shores.csv: %v", err))
	}
	var rows []shore
	for _, r := range records[1:] {
		row := shore{kind: Kind(r[0]), near: r[2]}
		if r[1] != "" {
			row.tags, err = parseTags(r[1])
		}
		if err != nil || !row.kind.Known() || nearWords[row.near] == [2]string{} {
			panic(fmt.Sprintf("zones: shores.csv: bad row %q", r))
		}
		rows = append(rows, row)
	}
	return rows
}

// nearOf says whether an object is water, a drain or a well; "" if it is none.
func nearOf(kind Kind, p ingest.Properties) string {
	for _, row := range shores {
		if row.kind == kind && fitAll(row.tags, p) {
			return row.near
		}
	}
	return ""
}
