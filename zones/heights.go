package zones

import (
	_ "embed"
	"encoding/csv"
	"fmt"
	"strconv"
	"strings"

	"example.org/turfplat/geo/ingest"
)

// heightsCSV holds the heights of objects of which none is known, by kind and
// map tags, the first row that fits deciding, each with a note of what it
// rests on. Those of single trees are in crowns.csv.
//
//go:embed heights.csv
var heightsCSV string

var heightRows = mustReadHeights(heightsCSV)

type heightRow struct {
	kind      Kind
	tags      []tagMatch // none = any
	height    float64    // m
	thickness float64    // m, of what stands open below; 0 = reaches the ground
	opaque    bool       // else light passes as through the leaves of a tree
}

// mustReadHeights panics on a malformed row: the table is part of the program.
func mustReadHeights(table string) []heightRow {
	records, err := csv.NewReader(strings.NewReader(table)).ReadAll()
	if err != nil {
		panic(fmt.Sprintf("zones: heights.csv: %v", err))
	}
	var rows []heightRow
	for _, record := range records[1:] {
		row := heightRow{kind: Kind(record[0]), opaque: record[4] == "yes"}
		var errTags, errHeight, errThick error
		if record[1] != "" {
			row.tags, errTags = parseTags(record[1])
		}
		row.height, errHeight = strconv.ParseFloat(record[2], 64)
		row.thickness, errThick = parseSize("thick_m", record[3])
		if !row.kind.Known() || errTags != nil || errHeight != nil || errThick != nil {
			panic(fmt.Sprintf("zones: heights.csv: bad row %q", record))
		}
		rows = append(rows, row)
	}
	return rows
}

// defaultHeightOf returns the row of an object of a kind; false if the kind
// is level with the ground.
func defaultHeightOf(kind Kind, p ingest.Properties) (heightRow, bool) {
	for _, row := range heightRows {
		if row.kind == kind && fitAll(row.tags, p) {
			return row, true
		}
	}
	return heightRow{}, false
}

// tagNumber returns the number that a tag holds, if it is one from 0 to most.
func tagNumber(p ingest.Properties, key string, most float64) (float64, bool) {
	text, ok := p.Tag(key)
	if !ok {
		return 0, false
	}
	v, err := strconv.ParseFloat(strings.TrimSpace(text), 64)
	return v, err == nil && v >= 0 && v <= most
}
