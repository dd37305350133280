package render

import (
	"slices"
	"strings"
)

// layout shares out the width, in millimetres, and tells which columns stand
// beside each other: up to each of the bands, those from the band before.
func (t table) layout(width float64) (widths []float64, bands []int) {
	one := []int{len(t.columns)}
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
func (t table) wordsAbove(least []float64, width float64) (widths []float64, bands []int) {
	wraps := t.wrapping()
	if len(wraps) != 1 || wraps[0]+1 == len(t.columns) {
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
func (t table) lines(widths []float64, bands []int) (count int) {
	for _, row := range append(slices.Clip(t.rows), t.totals...) {
		from := 0
		for _, to := range bands {
			most := 0
			for i := from; i < min(to, len(row)); i++ {
				content, in := indented(row[i])
				most = max(most, len(t.fitted(content, t.columns[i], Regular, widths[i]-2*cellMargin-in)))
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
func (t table) wrapping() (columns []int) {
	for i, c := range t.columns {
		if c.wrap && c.width == 0 {
			columns = append(columns, i)
		}
	}
	return columns
}

// widths are those of all columns by a measure of one, but where they have a
// width of their own.
func (t table) widths(measure func(column int) float64) []float64 {
	widths := make([]float64, len(t.columns))
	for i, c := range t.columns {
		if widths[i] = c.width; c.width == 0 {
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
func (t table) loosened(widths []float64, width float64) []float64 {
	wraps := func(c column) bool { return c.wrap && c.width == 0 }
	if !t.stretch(widths, width, 0, wraps) && len(widths) > 0 {
		widths[0] += width - total(widths)
	}
	return widths
}

// narrowed takes the room that lacks from columns of words, or where these
// would have next to none from all.
func (t table) narrowed(widths []float64, width float64) []float64 {
	if !t.stretch(widths, width, leastWords, func(c column) bool { return c.anchor != End && c.width == 0 }) {
		t.stretch(widths, width, 0, func(c column) bool { return c.width == 0 })
	}
	return widths
}

// stretch makes a table as wide as it should be by making some columns wider or
// narrower in proportion, if that leaves them more than a least width.
func (t table) stretch(widths []float64, width, least float64, which func(column) bool) bool {
	of := 0.0
	for i, c := range t.columns {
		if which(c) {
			of += widths[i]
		}
	}
	wanted := of + width - total(widths)
	if of == 0 || wanted <= least {
		return false
	}
	for i, c := range t.columns {
		if which(c) {
			widths[i] *= wanted / of
		}
	}
	return true
}

// naturalWidth is that of the widest cell of a column or its head.
func (t table) naturalWidth(column int) float64 {
	return max(t.widest(column, whole), t.headWidth(column, whole))
}

// headedWidth is that of the widest cell, or word where words wrap, or the head.
func (t table) headedWidth(column int) float64 {
	if c := t.columns[column]; c.wrap {
		return t.leastWidth(column)
	}
	return t.naturalWidth(column)
}

// leastWidth is that of the widest cell, or word where words wrap, or word of
// the head.
func (t table) leastWidth(column int) float64 {
	parts := whole
	if t.columns[column].wrap {
		parts = words
	}
	return max(t.widest(column, parts), t.headWidth(column, words))
}

// whole and words are the parts of a text that are not broken.
func whole(text string) []string { return []string{text} }

func words(text string) []string { return strings.FieldsFunc(text, breaks) }

func (t table) headWidth(column int, parts func(string) []string) float64 {
	return t.widestPart(t.columns[column].head, parts, Bold) + 2*cellMargin
}

func (t table) widestPart(text string, parts func(string) []string, face Face) (widest float64) {
	for _, part := range parts(text) {
		widest = max(widest, face.width(part, t.size))
	}
	return widest
}

// widest is the width of the widest part of the cells of a column.
func (t table) widest(column int, parts func(string) []string) float64 {
	widest := 0.0
	measure := func(rows [][]string, face Face) {
		for _, row := range rows {
			text, in := indented(cell(row, column))
			widest = max(widest, in+t.widestPart(text, parts, face))
		}
	}
	measure(t.rows, Regular)
	measure(t.totals, Bold)
	return widest + 2*cellMargin
}
