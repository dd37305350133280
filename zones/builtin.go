package zones

import (
	"fmt"

	"example.org/turfplat/zones/tables"
)

// mustReadRows returns the rows of a built-in table, each made by what reads one.
// It panics on a malformed row: the table is part of the program.
func mustReadRows[Row any](name, table string, read func(cells []string) (row Row, ok bool), columns ...string) []Row {
	var rows []Row
	for _, cells := range tables.BuiltIn("zones: "+name, table, columns...) {
		row, ok := read(cells)
		if !ok {
			panic(fmt.Sprintf("zones: %s: bad row %q", name, cells))
		}
		rows = append(rows, row)
	}
	return rows
}
