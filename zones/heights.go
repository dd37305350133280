package zones

import (
	_ "embed"
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

var heightRows = mustReadRows("heights.csv", heightsCSV, readHeight,
	"kind", "tags", "height_m", "thick_m", "opaque", "note")

type heightRow struct {
	kind      Kind
	tags      []tagMatch // none = any
	height    float64    // m
	thickness float64    // m, of what stands open below; 0 = reaches the ground
	opaque    bool       // else light passes as through the leaves of a tree
}

func readHeight(cells []string) (heightRow, bool) {
	row := heightRow{kind: Kind(cells[0]), opaque: cells[4] == "yes"}
	var errTags, errHeight, errThick error
	if cells[1] != "" {
		row.tags, errTags = parseTags(cells[1])
	}
	row.height, errHeight = strconv.ParseFloat(cells[2], 64)
	row.thickness, errThick = parseSize("thick_m", cells[3])
	return row, row.kind.Known() && errTags == nil && errHeight == nil && errThick == nil
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
