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

// layout shares out the width, in millimetres, and tells which columns stand
// beside each other: up to each of the bands, those from the band before.
func (t Table) layout(width float64) (widths []float64, bands []int) {
	one := []int{len(t.Columns)}
	natural, headed, least := t.widths(t.naturalWidth), t.widths(t.headedWidth), t.widths(t.leastWidth)
	above, under := t.wordsAbove(least, width)
	switch {
	case total(natural) <= width:
		return t.loosened(natural, width), one
	case total(headed) <= width:
		widths = betweenWidths(headed, natural, width)
	case total(least) <= width:
		widths = betweenWidths(least, headed, width)
	case above != nil:
		return above, under
	default:
		return t.narrowed(least, width), one
	}
	const much = 1.5
	if above != nil && float64(t.lines(widths, one)) > much*float64(t.lines(above, under)) {
		return above, under
	}
	return widths, one
}

// wordsAbove lays words that wrap over the rest of their row; nil if there are
// none, or more than one column of them, or a column is wider than the table.
func (t Table) wordsAbove(least []float64, width float64) (widths []float64, bands []int) {
	wraps := t.wrapping()
	if len(wraps) != 1 || wraps[0]+1 == len(t.Columns) {
		return nil, nil
	}
	words := wraps[0]
	room, under := width-total(least[:words]), bandsWithin(least, words+1, width)
	if room < least[words] || under == nil {
		return nil, nil
	}
	widths = slices.Clone(least)
	widths[words] = room
	return widths, append([]int{words + 1}, under...)
}

// lines counts those that the rows take in a layout.
func (t Table) lines(widths []float64, bands []int) (count int) {
	for _, row := range append(slices.Clip(t.Rows), t.Totals...) {
		from := 0
		for _, to := range bands {
			most := 0
			for i := from; i < min(to, len(row)); i++ {
				content, in := indented(row[i])
				most = max(most, len(t.fitted(content, t.Columns[i], Regular, widths[i]-2*cellMargin-in)))
			}
			count += most
			from = to
		}
	}
	return count
}

// bandsWithin parts the columns from one on into as few bands as hold them; nil if
// one of them is wider than the table.
func bandsWithin(widths []float64, from int, width float64) (bands []int) {
	used := 0.0
	for i := from; i < len(widths); i++ {
		switch {
		case widths[i] > width:
			return nil
		case used+widths[i] > width:
			bands = append(bands, i)
			used = 0
		}
		used += widths[i]
	}
	return append(bands, len(widths))
}

// wrapping are the columns that wrap and have no width of their own.
func (t Table) wrapping() (columns []int) {
	for i, c := range t.Columns {
		if c.Wrap && c.Width == 0 {
			columns = append(columns, i)
		}
	}
	return columns
}

// widths are those of all columns by a measure of one, but where they have a
// width of their own.
func (t Table) widths(measure func(column int) float64) []float64 {
	widths := make([]float64, len(t.Columns))
	for i, c := range t.Columns {
		if widths[i] = c.Width; c.Width == 0 {
			widths[i] = measure(i)
		}
	}
	return widths
}

func total(widths []float64) (sum float64) {
	for _, w := range widths {
		sum += w
	}
	return sum
}

// betweenWidths widens columns from what they need towards what they would
// like, until they are as wide as the table.
func betweenWidths(needed, liked []float64, width float64) []float64 {
	least := total(needed)
	share := (width - least) / (total(liked) - least)
	widths := slices.Clone(needed)
	for i := range widths {
		widths[i] += share * (liked[i] - needed[i])
	}
	return widths
}

// loosened gives the room that is left to columns that wrap, or else to the
// first.
func (t Table) loosened(widths []float64, width float64) []float64 {
	wraps := func(c Column) bool { return c.Wrap && c.Width == 0 }
	if !t.stretch(widths, width, 0, wraps) && len(widths) > 0 {
		widths[0] += width - total(widths)
	}
	return widths
}

// narrowed takes the room that lacks from columns of words, or where these
// would have next to none from all.
func (t Table) narrowed(widths []float64, width float64) []float64 {
	if !t.stretch(widths, width, leastWords, func(c Column) bool { return c.Anchor != End && c.Width == 0 }) {
		t.stretch(widths, width, 0, func(c Column) bool { return c.Width == 0 })
	}
	return widths
}

// stretch makes a table as wide as it should be by making some columns wider or
// narrower in proportion, if that leaves them more than a least width.
func (t Table) stretch(widths []float64, width, least float64, which func(Column) bool) bool {
	of := 0.0
	for i, c := range t.Columns {
		if which(c) {
			of += widths[i]
		}
	}
	wanted := of + width - total(widths)
	if of == 0 || wanted <= least {
		return false
	}
	for i, c := range t.Columns {
		if which(c) {
			widths[i] *= wanted / of
		}
	}
	return true
}

// naturalWidth is that of the widest cell of a column or its head.
func (t Table) naturalWidth(column int) float64 {
	return max(t.widest(column, whole), t.headWidth(column, whole))
}

// headedWidth is that of the widest cell, or word where words wrap, or the head.
func (t Table) headedWidth(column int) float64 {
	if c := t.Columns[column]; c.Wrap {
		return t.leastWidth(column)
	}
	return t.naturalWidth(column)
}

// leastWidth is that of the widest cell, or word where words wrap, or word of
// the head.
func (t Table) leastWidth(column int) float64 {
	parts := whole
	if t.Columns[column].Wrap {
		parts = words
	}
	return max(t.widest(column, parts), t.headWidth(column, words))
}

// whole and words are the parts of a text that are not broken.
func whole(text string) []string { return []string{text} }
func words(text string) []string { return strings.FieldsFunc(text, breaks) }

func (t Table) headWidth(column int, parts func(string) []string) float64 {
	return t.widestPart(t.Columns[column].Head, parts, Bold) + 2*cellMargin
}

func (t Table) widestPart(text string, parts func(string) []string, face Face) (widest float64) {
	for _, part := range parts(text) {
		widest = max(widest, face.Width(part, t.Size))
	}
	return widest
}

// widest is the width of the widest part of the cells of a column.
func (t Table) widest(column int, parts func(string) []string) float64 {
	widest := 0.0
	measure := func(rows [][]string, face Face) {
		for _, row := range rows {
			text, in := indented(cell(row, column))
			widest = max(widest, in+t.widestPart(text, parts, face))
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
	bands    []int
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
	from := 0
	for _, to := range s.bands {
		s.band(cells, face, from, to)
		from = to
	}
	s.down += 2 * rowMargin
}

// band sets the cells of some columns of a row beside each other, up to the
// right edge of the table.
func (s *tableSetter) band(cells []string, face Face, from, to int) {
	size, lines := s.table.Size, 0
	if from == 0 {
		lines = 1
	}
	x := s.corner.X + s.width - total(s.columns[from:to])
	for i, c := range s.table.Columns[from:to] {
		column := from + i
		content, in := indented(cell(cells, column))
		room := s.columns[column] - 2*cellMargin - in
		text := s.table.fitted(content, c, face, room)
		for n, line := range text {
			s.elements = append(s.elements, Text{
				At:     Point{x + cellMargin + in + room*c.Anchor.share(), baseLine(s.corner.Y-s.down-rowMargin, n, face, size)},
				String: line, Face: face, Size: size, Ink: Black, Anchor: c.Anchor,
			})
		}
		if content != "" {
			lines = max(lines, len(text))
		}
		x += s.columns[column]
	}
	s.down += float64(lines) * lineHeight(size)
}

// fitted are the lines of a cell.
func (t Table) fitted(text string, c Column, face Face, room float64) []string {
	const rounding = 1e-9 // so that the widest cell fits its own width
	if c.Wrap {
		return wrapped(text, face, t.Size, room+rounding)
	}
	return []string{shortened(text, face, t.Size, room+rounding)}
}
