package render

import (
	"fmt"
	"strings"
)

// textPages are sheets without a map: blocks over the whole width, then blocks in
// columns, on as many sheets as they need.
type textPages struct {
	id, title string
	paper     Paper
	block     titleBlock
	method    string
	inWords   string
	wide      []block
	blocks    []block
}

// leastTextColumn is the width of columns of a sheet without a map, in
// millimetres.
const leastTextColumn = 80.0

// textSheets sets a text; nothing of it is left out.
func (d *draft) textSheets(t textPages) ([]*Sheet, error) {
	var sheets []*Sheet
	for len(t.wide)+len(t.blocks) > 0 {
		id := t.id
		if n := len(sheets) + 1; n > 1 {
			id = fmt.Sprintf("%s-%d", t.id, n)
		}
		s := NewSheet(id, d.letters.of(d.measured.Name)+", "+strings.ToLower(t.title), t.paper)
		s.Name, s.Site, s.Subject = t.title, d.letters.of(d.measured.Name), t.inWords
		if !d.setText(s, &t) {
			return nil, fmt.Errorf("%s of site %s does not fit %s paper: use larger paper", strings.ToLower(t.title), d.measured.ID, t.paper.Name)
		}
		sheets = append(sheets, s)
	}
	return sheets, nil
}

// setText sets as much of a text on a sheet as there is room for, and takes it
// out of the text. It reports whether anything was set.
func (d *draft) setText(s *Sheet, t *textPages) bool {
	area := rect{max: Point{s.Width, s.Height}}.inset(sheetMargin)
	caution := strings.Replace(cautionText, "map", "sheet", 1)
	_, h := d.footingWith(caution, t.method, Point{}, area.width())
	foot, _ := d.footingWith(caution, t.method, area.min.plus(0, h), area.width())
	area.min.Y += h + blockGap
	title, h := t.block.set(Point{area.min.X, area.max.Y}, area.width())
	area.max.Y -= h + blockGap

	var tables []Element
	if len(t.wide) > 0 {
		set, left, rest := pourSome([]rect{area}, t.wide)
		tables, t.wide = set, rest
		area.max.Y = area.min.Y + left[0] - 1.5*blockGap
	}
	if len(t.wide) == 0 && len(t.blocks) > 0 && area.height() > 0 {
		columns := divided(area, int((area.width()+gutter)/(leastTextColumn+gutter)))
		if _, _, all := flow(columns, blockGap, true, t.blocks); all {
			set, left := evenFlow(columns, blockGap, t.blocks)
			tables = append(tables, set...)
			tables = append(tables, roomToWrite(columns, left)...)
			t.blocks = nil
		} else {
			set, _, rest := pourSome(columns, t.blocks)
			tables, t.blocks = append(tables, set...), rest
		}
	}
	s.Add(Group{ID: "title-block", Title: "Title block", Elements: title}, Group{ID: "tables", Title: "Tables", Elements: tables})
	s.Add(foot...)
	s.Missing = d.letters.missing
	if d.options.Mono {
		s.Elements = recoloured(s.Elements, Ink.grey)
	}
	return len(tables) > 0
}

// pourSome pours blocks into columns. What no cut of a few rows makes fit is cut
// row by row.
func pourSome(columns []rect, blocks []block) (elements []Element, left []float64, rest []block) {
	elements, left, rest = pour(columns, blockGap, worthACut, blocks)
	if len(elements) == 0 {
		return pour(columns, blockGap, 1, blocks)
	}
	return elements, left, rest
}
