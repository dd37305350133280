package zones

import (
	_ "embed"

	"example.org/turfplat/geo/ingest"
)

// shoresCSV says what is water, a drain or a well, the first row that fits
// deciding.
//
//go:embed shores.csv
var shoresCSV string

var shores = mustReadRows("shores.csv", shoresCSV, readShore,
	"kind", "tags", "near", "note")

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

func readShore(cells []string) (shore, bool) {
	row := shore{kind: Kind(cells[0]), near: cells[2]}
	var err error
	if cells[1] != "" {
		row.tags, err = parseTags(cells[1])
	}
	return row, err == nil && row.kind.Known() && nearWords[row.near] != [2]string{}
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
