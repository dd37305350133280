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
func pageBlockOf(b block) pageBlock {
	switch b := b.(type) {
	case standing:
		return pageBlock{Standing: &standingBlock{b.word, b.why, b.goAhead}}
	case hazardList:
		return pageBlock{List: &listBlock{Head: "Hazards", Items: b.texts}}
	case tickList:
		return pageBlock{List: &listBlock{Head: "Tick when done", Items: b.texts, Ticked: true}}
	case seasonStrip:
		return pageBlock{Table: stripTable(b)}
	case table:
		if len(b.columns) == 1 {
			return pageBlock{List: &listBlock{Head: b.columns[0].head, Items: firstCells(b.rows)}}
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
func pageTable(t table) *tableBlock {
	b := &tableBlock{}
	t.columns = slices.Clone(t.columns)
	words := 0
	if head := t.columns[0].head; head == zoneHead || head == stepHead {
		words = 1
	}
	b.Head, t.columns[words].head = t.columns[words].head, ""
	headed := false
	for i, c := range t.columns {
		if c.head == "" && i > 0 {
			b.Heads[len(b.Heads)-1].Spans++
			continue
		}
		headed = headed || c.head != ""
		b.Heads = append(b.Heads, pageHead{c.head, 1, c.anchor == End})
	}
	if !headed {
		b.Heads = nil
	}
	for _, row := range t.rows {
		b.Rows = append(b.Rows, pageRow{Cells: t.pageCells(row)})
	}
	for _, row := range t.totals {
		cells := t.pageCells(row)
		for i := range cells {
			cells[i].Zone = ""
		}
		b.Rows = append(b.Rows, pageRow{cells, true})
	}
	return b
}

func (t table) pageCells(row []string) []pageCell {
	cells := make([]pageCell, len(t.columns))
	for i, c := range t.columns {
		cells[i] = pageCell{Head: c.head, Right: c.anchor == End}
		if slices.Contains(unitHeads, c.head) {
			cells[i].Unit = c.head
		}
		if i >= len(row) {
			continue
		}
		cells[i].Text = row[i]
		if text, inner := cutIndent(row[i]); inner {
			cells[i].Text, cells[i].Inner = text, true
		}
		if i == 0 && c.head == zoneHead {
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
	t := table{columns: []column{{head: stepHead}, {}, {head: "Status"}, {head: "Window"}, {head: "Zones"}}}
	for _, r := range s.rows {
		t.rows = append(t.rows, []string{r.number, r.name, string(r.status), r.window, r.letters})
	}
	return pageTable(t)
}
