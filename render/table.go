package render

import (
	"strings"
)

// table is rows of text under headings. Rules run across only. A cell that
// begins with a tab is indented.
type table struct {
	columns []column
	rows    [][]string // a cell for each column; missing cells are empty
	totals  [][]string // rows set in bold under a rule
	size    float64    // points
}

// column is one column of a table. Text too long for it is broken into lines
// if it wraps, and cut with an ellipsis if not.
type column struct {
	head   string
	anchor Anchor  // End for numbers
	width  float64 // mm; zero is as wide as its text
	wrap   bool
}

const (
	cellMargin = 1.0  // mm left and right of text
	rowMargin  = 0.25 // mm above and below text
	indent     = 2.5  // mm
	leastWords = 6.0  // mm: columns of words give way to figures down to this
)

// set implements block. The table is as wide as the column of text: wrapping
// columns, or else the first, take up the slack. If there is too little room,
// words that wrap are broken into lines, then heads; then, or if that saves much
// height, words that wrap stand above the rest of their row, in as many lines of
// columns as it takes. At last columns of words shrink, and when these are narrow
// all columns without a width of their own.
func (t table) set(corner Point, width float64) (elements []Element, height float64) {
	setter := tableSetter{table: t, corner: corner, width: width}
	setter.columns, setter.bands = t.layout(width)
	setter.rule(heavyLine)
	setter.heads(t.heads())
	setter.rule(thinLine)
	for i, row := range t.rows {
		if i > 0 {
			setter.hairline()
		}
		setter.row(row, Regular)
	}
	if len(t.totals) > 0 {
		setter.rule(thinLine)
	}
	for _, row := range t.totals {
		setter.row(row, Bold)
	}
	setter.rule(heavyLine)
	return setter.elements, setter.down
}

func (t table) heads() []string {
	heads := make([]string, len(t.columns))
	for i, c := range t.columns {
		heads[i] = c.head
	}
	return heads
}

func cell(row []string, column int) string {
	if column < len(row) {
		return row[column]
	}
	return ""
}

// indented returns the text of a cell and how far it is indented.
func indented(cell string) (text string, by float64) {
	if text, tab := strings.CutPrefix(cell, "\t"); tab {
		return text, indent
	}
	return cell, 0
}

// fitted are the lines of a cell.
func (t table) fitted(text string, c column, face Face, room float64) []string {
	const rounding = 1e-9 // so that the widest cell fits its own width
	if c.wrap {
		return wrapped(text, face, t.size, room+rounding)
	}
	return []string{shortened(text, face, t.size, room+rounding)}
}

// orNone is a table, or nothing if it has no rows.
func orNone(t table) block {
	if len(t.rows) == 0 {
		return nil
	}
	return t
}
