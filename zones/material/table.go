package material

import (
	"fmt"
	"strconv"
	"strings"
)

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
