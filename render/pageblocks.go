package render

import (
	"fmt"
	"slices"
)

// A pageBlock is a block of a sheet as it stands on a page: one of its kinds is
// filled.
type pageBlock struct {
	Standing *standingBlock
	List     *listBlock
	Table    *tableBlock
}

// A standingBlock says whether a step may be done.
type standingBlock struct {
	Word, Why string
	GoAhead   bool
}

// A listBlock is texts in a list, perhaps with boxes to tick.
type listBlock struct {
	Head   string
	Items  []string
	Ticked bool
}

// A tableBlock is rows of cells under headings. The first cells of rows are
// headings too.
type tableBlock struct {
	Head  string // over all
	Heads []pageHead
	Rows  []pageRow
}

// A pageHead is the heading of one or more columns.
type pageHead struct {
	Text  string
	Spans int
	Right bool
}

type pageRow struct {
	Cells []pageCell
	Total bool
}

// A pageCell is a cell with the heading that it is read with where tables are
// too wide for columns.
type pageCell struct {
	Head, Text string
	Unit       string // that the heading is
	Right      bool
	Inner      bool   // under the row above
	Zone       string // letter of the zone that the cell names
}

// pageBlockOf makes a block fit for a page; each kind of block that stands in a
// section of a page has a form here.
func pageBlockOf(b Block) pageBlock {
	switch b := b.(type) {
	case standing:
		return pageBlock{Standing: &standingBlock{b.word, b.why, b.goAhead}}
	case hazardList:
		return pageBlock{List: &listBlock{Head: "Hazards", Items: b.texts}}
	case tickList:
		return pageBlock{List: &listBlock{Head: "Tick when done", Items: b.texts, Ticked: true}}
	case seasonStrip:
		return pageBlock{Table: stripTable(b)}
	case Table:
		if len(b.Columns) == 1 {
			return pageBlock{List: &listBlock{Head: b.Columns[0].Head, Items: firstCells(b.Rows)}}
		}
		return pageBlock{Table: pageTable(b)}
	}
	panic(fmt.Sprintf("render: a page has no form for a %T", b))
}

func firstCells(rows [][]string) []string {
	var texts []string
	for _, row := range rows {
		texts = append(texts, row[0])
	}
	return texts
}

// pageTable keeps what a table says. The heading of its words stands over it,
// where it is read on narrow screens too.
func pageTable(t Table) *tableBlock {
	b := &tableBlock{}
	t.Columns = slices.Clone(t.Columns)
	words := 0
	if head := t.Columns[0].Head; head == zoneHead || head == stepHead {
		words = 1
	}
	b.Head, t.Columns[words].Head = t.Columns[words].Head, ""
	headed := false
	for i, c := range t.Columns {
		if c.Head == "" && i > 0 {
			b.Heads[len(b.Heads)-1].Spans++
			continue
		}
		headed = headed || c.Head != ""
		b.Heads = append(b.Heads, pageHead{c.Head, 1, c.Anchor == End})
	}
	if !headed {
		b.Heads = nil
	}
	for _, row := range t.Rows {
		b.Rows = append(b.Rows, pageRow{Cells: t.pageCells(row)})
	}
	for _, row := range t.Totals {
		cells := t.pageCells(row)
		for i := range cells {
			cells[i].Zone = ""
		}
		b.Rows = append(b.Rows, pageRow{cells, true})
	}
	return b
}

func (t Table) pageCells(row []string) []pageCell {
	cells := make([]pageCell, len(t.Columns))
	for i, c := range t.Columns {
		cells[i] = pageCell{Head: c.Head, Right: c.Anchor == End}
		if slices.Contains(unitHeads, c.Head) {
			cells[i].Unit = c.Head
		}
		if i >= len(row) {
			continue
		}
		cells[i].Text = row[i]
		if text, inner := cutIndent(row[i]); inner {
			cells[i].Text, cells[i].Inner = text, true
		}
		if i == 0 && c.Head == zoneHead {
			cells[i].Zone = row[i]
		}
	}
	return cells
}

// unitHeads are headings of columns that are no more than the unit of figures.
var unitHeads = []string{"ft²", "m²", "ft", "m"}

// Headings of columns of letters of zones and of numbers of steps.
const (
	zoneHead = "Zone"
	stepHead = "Step"
)

func cutIndent(cell string) (text string, indented bool) {
	if len(cell) > 0 && cell[0] == '\t' {
		return cell[1:], true
	}
	return cell, false
}

// stripTable is the steps of a season in rows.
func stripTable(s seasonStrip) *tableBlock {
	t := Table{Columns: []Column{{Head: stepHead}, {}, {Head: "Status"}, {Head: "Window"}, {Head: "Zones"}}}
	for _, r := range s.rows {
		t.Rows = append(t.Rows, []string{r.number, r.name, string(r.status), r.window, r.letters})
	}
	return pageTable(t)
}
