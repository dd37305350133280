package zones

import (
	"encoding/csv"
	"fmt"
	"strings"
)

// mustReadRows returns the rows of a built-in table below its head, each made
// by what reads one. It panics on a malformed row: the table is part of the
// program.
func mustReadRows[Row any](name, table string, read func(cells []string) (row Row, ok bool)) []Row {
	records, err := csv.NewReader(strings.NewReader(table)).ReadAll()
	if err != nil {
		panic(fmt.Sprintf("zones: %s: %v", name, err))
	}
	rows := make([]Row, len(records)-1)
	for i, cells := range records[1:] {
		row, ok := read(cells)
		if !ok {
			panic(fmt.Sprintf("zones: %s: bad row %q", name, cells))
		}
		rows[i] = row
	}
	return rows
}
