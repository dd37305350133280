package tables

import (
	"encoding/csv"
	"fmt"
	"slices"
	"strings"
)

// BuiltIn returns the rows of a table that is part of the program, below its
// head, which must name these columns. It panics on a malformed table, by its
// name.
func BuiltIn(name, table string, columns ...string) [][]string {
	rows, err := csv.NewReader(strings.NewReader(table)).ReadAll()
	switch {
	case err != nil:
		panic(fmt.Sprintf("%s: %v", name, err))
	case len(rows) == 0 || !slices.Equal(rows[0], columns):
		panic(fmt.Sprintf("%s: the columns are not %s", name, strings.Join(columns, ",")))
	}
	return rows[1:]
}
