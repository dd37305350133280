package material

import (
	"encoding/csv"
	"fmt"
	"slices"
	"strconv"
	"strings"
)

// mustTable reads a table that is part of the program: a header, which must
// hold these columns, and rows. It panics on anything else.
func mustTable(name, text string, columns ...string) [][]string {
	rows, err := csv.NewReader(strings.NewReader(text)).ReadAll()
	if err != nil {
		panic(fmt.Sprintf("material: %s: %v", name, err))
	}
	if !slices.Equal(rows[0], columns) {
		panic(fmt.Sprintf("material: %s: columns are %q", name, rows[0]))
	}
	return rows[1:]
}

// mustRatio reads a decimal number or a fraction of two.
func mustRatio(text string) float64 {
	over, under, fraction := strings.Cut(text, "/")
	if fraction {
		return mustRatio(over) / mustRatio(under)
	}
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		panic(fmt.Sprintf("material: %q is no number", text))
	}
	return v
}

// mustParse reads a quantity of a table that is part of the program.
func mustParse(text string) Quantity {
	q, err := Parse(text)
	if err != nil {
		panic("material: " + err.Error())
	}
	return q
}
