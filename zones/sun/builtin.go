package sun

import (
	"encoding/csv"
	"fmt"
	"strconv"
	"strings"
)

// A builtInRow is a row of a table that is part of the program, by column.
type builtInRow map[string]string

func (r builtInRow) number(column string) float64 {
	v, err := strconv.ParseFloat(r[column], 64)
	must(err)
	return v
}

func builtIn(table string) []builtInRow {
	records, err := csv.NewReader(strings.NewReader(table)).ReadAll()
	must(err)
	var rows []builtInRow
	for _, record := range records[1:] {
		row := builtInRow{}
		for i, column := range records[0] {
			row[column] = record[i]
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
