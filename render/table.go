package render

import (
	"strings"
)

// Table is rows of text under headings. Rules run across only. A cell that
// begins with a tab is indented.
type Table struct {
	Columns []Column
	Rows    [][]string // a cell for each column; missing cells are empty
	Totals  [][]string // rows set in bold under a rule
	Size    float64    // points
}

// Column is one column of a table. Text too long for it is broken into lines
// if it wraps, and cut with an ellipsis if not.
type Column struct {
	Head   string
	Anchor Anchor  // End for numbers
	Width  float64 // mm; zero is as wide as its text
	Wrap   bool
}

const (
	cellMargin = 1.0  // mm left and right of text
	rowMargin  = 0.25 // mm above and below text
	indent     = 2.5  // mm
	leastWords = 6.0  // mm: columns of words give way to figures down to this
)

// Set implements [Block]. The table is as wide as the column of text: wrapping
// columns, or else the first, take up the slack. If there is too little room,
// words that wrap are broken into lines, then heads; then, or if that saves much
// height, words that wrap stand above the rest of their row, in as many lines of
// columns as it takes. At last columns of words shrink, and when these are narrow
// all columns without a width of their own.
func (t Table) Set(corner Point, width float64) (elements []Element, height float64) {
	setter := tableSetter{table: t, corner: corner, width: width}
	setter.columns, setter.bands = t.layout(width)
	setter.rule(HeavyLine)
	setter.heads(t.heads())
	setter.rule(ThinLine)
	for i, row := range t.Rows {
		if i > 0 {
			setter.hairline()
		}
		setter.row(row, Regular)
	}
	if len(t.Totals) > 0 {
		setter.rule(ThinLine)
	}
	for _, row := range t.Totals {
		setter.row(row, Bold)
	}
	setter.rule(HeavyLine)
	return setter.elements, setter.down
}

func (t Table) heads() []string {
	heads := make([]string, len(t.Columns))
	for i, c := range t.Columns {
		heads[i] = c.Head
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
func (t Table) fitted(text string, c Column, face Face, room float64) []string {
	const rounding = 1e-9 // so that the widest cell fits its own width
	if c.Wrap {
		return wrapped(text, face, t.Size, room+rounding)
	}
	return []string{shortened(text, face, t.Size, room+rounding)}
}

// orNone is a table, or nothing if it has no rows.
func orNone(t Table) Block {
	if len(t.Rows) == 0 {
		return nil
	}
	return t
}
