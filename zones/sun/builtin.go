package sun

import (
	"fmt"
	"strconv"

	"example.org/turfplat/zones/tables"
)

// A builtInRow is a row of a table that is part of the program, by column.
type builtInRow map[string]string

func (r builtInRow) number(column string) float64 {
	v, err := strconv.ParseFloat(r[column], 64)
	must(err)
	return v
}

func builtIn(name, table string, columns ...string) []builtInRow {
	var rows []builtInRow
	for _, cells := range tables.BuiltIn("sun: "+name, table, columns...) {
		row := builtInRow{}
		for i, column := range columns {
			row[column] = cells[i]
		}
		rows = append(rows, row)
	}
	return rows
}

func must(err error) {
	if err != nil {
		panic(fmt.Sprintf("sun: built-in table: %v", err)) // part of the program
	}
}
