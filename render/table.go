package render

import (
	"slices"
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
// columns, or else the first, take up the slack; if there is too little room
// columns of words shrink, and when these are narrow all columns without a
// width of their own.
func (t Table) Set(corner Point, width float64) (elements []Element, height float64) {
	setter := tableSetter{table: t, corner: corner, width: width, columns: t.columnWidths(width)}
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

// columnWidths shares out the width, in millimetres. Where there is too little
// room heads are broken into lines.
func (t Table) columnWidths(width float64) []float64 {
	widths, ok := t.shared(width, t.likedWidth)
	if !ok {
		widths, _ = t.shared(width, t.leastWidth)
	}
	return widths
}

// shared shares out the width to columns that would like some of their own. It
// reports whether figures are whole.
func (t Table) shared(width float64, liked func(column int) float64) (widths []float64, whole bool) {
	whole = true
	widths = make([]float64, len(t.Columns))
	var total, elastic, words, wrapping float64
	for i, c := range t.Columns {
		widths[i] = liked(i)
		if c.Width == 0 {
			elastic += widths[i]
			if c.Wrap {
				wrapping += widths[i]
			}
			if c.Anchor != End {
				words += widths[i]
			}
		}
		total += widths[i]
	}
	slack := width - total
	switch {
	case wrapping > 0 && wrapping+slack > leastWords:
		t.stretch(widths, 1+slack/wrapping, func(c Column) bool { return c.Wrap && c.Width == 0 })
	case slack < 0 && words+slack > leastWords:
		t.stretch(widths, 1+slack/words, func(c Column) bool { return c.Anchor != End && c.Width == 0 })
	case slack < 0 && elastic > 0:
		whole = false
		t.stretch(widths, max(0, 1+slack/elastic), func(c Column) bool { return c.Width == 0 })
	case slack > 0 && len(widths) > 0:
		widths[0] += slack
	}
	return widths, whole
}

func (t Table) stretch(widths []float64, factor float64, which func(Column) bool) {
	for i, c := range t.Columns {
		if which(c) {
			widths[i] *= factor
		}
	}
}

// likedWidth is the width that a column is given, or else its natural one.
func (t Table) likedWidth(column int) float64 {
	if width := t.Columns[column].Width; width > 0 {
		return width
	}
	return t.naturalWidth(column)
}

// naturalWidth is that of the widest cell of a column or its head.
func (t Table) naturalWidth(column int) float64 {
	return max(t.widestCell(column), Bold.Width(t.Columns[column].Head, t.Size)+2*cellMargin)
}

// leastWidth is that of the widest cell of a column or word of its head.
func (t Table) leastWidth(column int) float64 {
	least := t.widestCell(column)
	for _, word := range strings.FieldsFunc(t.Columns[column].Head, breaks) {
		least = max(least, Bold.Width(word, t.Size)+2*cellMargin)
	}
	return least
}

func (t Table) widestCell(column int) float64 {
	widest := 0.0
	measure := func(rows [][]string, face Face) {
		for _, row := range rows {
			text, in := indented(cell(row, column))
			widest = max(widest, in+face.Width(text, t.Size))
		}
	}
	measure(t.Rows, Regular)
	measure(t.Totals, Bold)
	return widest + 2*cellMargin
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

// tableSetter sets a table row by row.
type tableSetter struct {
	table    Table
	corner   Point
	width    float64
	columns  []float64
	down     float64 // height set so far
	elements []Element
}

func (s *tableSetter) rule(weight float64) {
	s.elements = append(s.elements, Path{Lines: []Line{s.level()}, Stroke: Black, Weight: weight})
}

func (s *tableSetter) hairline() {
	s.elements = append(s.elements, Path{Lines: []Line{s.level()}, Stroke: Grey.Tint(0.5), Weight: HairLine})
}

func (s *tableSetter) level() Line {
	from := s.corner.plus(0, -s.down)
	return Line{Points: []Point{from, from.plus(s.width, 0)}}
}

// heads sets a row in which all columns wrap.
func (s *tableSetter) heads(cells []string) {
	columns := s.table.Columns
	s.table.Columns = slices.Clone(columns)
	for i := range columns {
		s.table.Columns[i].Wrap = true
	}
	s.row(cells, Bold)
	s.table.Columns = columns
}

func (s *tableSetter) row(cells []string, face Face) {
	size, lines := s.table.Size, 1
	x := s.corner.X
	for i, c := range s.table.Columns {
		content, in := indented(cell(cells, i))
		room := s.columns[i] - 2*cellMargin - in
		text := s.fitted(content, c, face, room)
		for n, line := range text {
			s.elements = append(s.elements, Text{
				At:     Point{x + cellMargin + in + room*c.Anchor.share(), baseLine(s.corner.Y-s.down-rowMargin, n, face, size)},
				String: line, Face: face, Size: size, Ink: Black, Anchor: c.Anchor,
			})
		}
		lines = max(lines, len(text))
		x += s.columns[i]
	}
	s.down += float64(lines)*lineHeight(size) + 2*rowMargin
}

func (s *tableSetter) fitted(text string, c Column, face Face, room float64) []string {
	const rounding = 1e-9 // so that the widest cell fits its own width
	if c.Wrap {
		return wrapped(text, face, s.table.Size, room+rounding)
	}
	return []string{shortened(text, face, s.table.Size, room+rounding)}
}
