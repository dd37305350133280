package main

import (
	"strconv"
	"strings"
)

// plainCells are the cells of a row as a spreadsheet shows them. A text that it
// would take for a formula gets an apostrophe before it: names come out of map
// data that anybody writes. (OWASP, CSV injection.)
func plainCells(cells []string) []string {
	plain := make([]string, len(cells))
	for i, text := range cells {
		plain[i] = plainCell(text)
	}
	return plain
}

func plainCell(text string) string {
	const formula = "=+-@\t\r＝＋－＠" // with their full-width forms
	if text == "" || !strings.ContainsRune(formula, []rune(text)[0]) {
		return text
	}
	if _, err := strconv.ParseFloat(text, 64); err == nil {
		return text
	}
	return "'" + text
}
