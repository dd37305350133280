package main

import (
	"io"
	"strings"
	"unicode/utf8"
)

// A table prints rows in columns, the first to the left, those of figures to
// the right. Rows that are added once it was printed stand in the columns of
// those before.
type table struct {
	right  []bool // columns
	widths []int
	rows   [][]string
}

func newTable(alignment string) *table {
	t := new(table)
	for _, a := range alignment {
		t.right = append(t.right, a == 'r')
	}
	t.widths = make([]int, len(t.right))
	return t
}

// allowFor keeps columns for cells of a width that are yet to come.
func (t *table) allowFor(width int) {
	for i := range t.widths {
		t.widths[i] = width
	}
}

func (t *table) row(cells ...string) { t.rows = append(t.rows, cells) }

func (t *table) WriteTo(w io.Writer) (int64, error) {
	n, err := io.WriteString(w, t.text())
	return int64(n), err
}

func (t *table) text() string {
	for _, row := range t.rows {
		for i, cell := range row {
			t.widths[i] = max(t.widths[i], utf8.RuneCountInString(cell))
		}
	}
	var b strings.Builder
	for _, row := range t.rows {
		line := ""
		for i, cell := range row {
			pad := strings.Repeat(" ", t.widths[i]-utf8.RuneCountInString(cell))
			if t.right[i] {
				cell = pad + cell
			} else {
				cell += pad
			}
			line += cell + "  "
		}
		b.WriteString(strings.TrimRight(line, " ") + "\n")
	}
	return b.String()
}
