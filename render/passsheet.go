package render

import (
	"fmt"
	"slices"
	"strings"
)

// A passMap is the subject of the sheet of the lanes of a step's further pass.
type passMap struct {
	laneMap
	step stepSheet
}

func (p passMap) name() (id, title string) {
	id, title = p.step.name()
	n := p.lanes.passNo()
	return fmt.Sprintf("%s-pass-%d", id, n), fmt.Sprintf("%s, pass %d", title, n)
}

func (p passMap) method() string {
	text := p.laneMap.method()
	if !p.lanes.liesAcross() {
		return text
	}
	return strings.Replace(text, "at the heading that takes the least walking", "at right angles to those of the pass before, where there is room", 1)
}

// blocks tell what differs from the pass on the step's own sheet.
func (p passMap) blocks(level detail) []block {
	blocks := p.lanes.passBlocks(min(mostFillings, level.objects))
	return append(blocks, p.lanes.laneTable(level.objects), p.brief,
		paragraph{text: "Amounts, cautions, hazards and boxes to tick: on the step's own sheet. The label is the law.", face: Bold, size: tableSize, ink: black})
}

// passBlocks tell how a further pass is walked, where it repeats the one before,
// and, if they are not too many, how the hopper is filled.
func (l laneLayer) passBlocks(mostFills int) []block {
	work := l.workTable()
	work.columns[0].head += fmt.Sprintf(", pass %d", l.passNo())
	work.rows = slices.DeleteFunc(work.rows, func(row []string) bool {
		return !slices.Contains([]string{"Passes", "Lanes", "Setting", "Walk", "Time", "Refill", "Deflector"}, row[0])
	})
	again := table{size: tableSize, columns: []column{{head: "On the way", wrap: true}}}
	for _, text := range l.againTexts() {
		again.rows = append(again.rows, []string{text})
	}
	blocks := []block{work}
	if len(again.rows) > 0 {
		blocks = append(blocks, again)
	}
	if fills := l.fillTable(mostFills); fills != nil {
		blocks = append(blocks, fills)
	}
	return blocks
}

// passSheets draws the lanes of each pass of the step but the first, which stand
// on its own sheet.
func (s stepSheet) passSheets(property *draft) ([]*Sheet, error) {
	var sheets []*Sheet
	for i, pass := range s.passes {
		if i == 0 || pass.sum.Lanes == 0 {
			continue
		}
		d := property.again()
		d.show(append(shells(d.site), placesIn(pass.plan)...))
		l := laneMap{draft: d, lanes: newLaneLayer(d, pass.plan, pass.sum)}
		l.key, l.brief = l.legend(true), l.legend(false)
		d.subject = passMap{l, s}
		drawn, err := d.sheets()
		if err != nil {
			return nil, err
		}
		sheets = append(sheets, drawn...)
	}
	return sheets, nil
}

// passNo is the number of the pass that the lanes are of, from 1.
func (l laneLayer) passNo() int {
	if len(l.plan.Lanes) == 0 {
		return 1
	}
	return l.plan.Lanes[0].PassNo
}

// ofPasses says of which pass something is; "" if there is only one.
func (l laneLayer) ofPasses(before string) string {
	if load := l.plan.Work.Load; load.Several() {
		return fmt.Sprintf("%spass %d of %d", before, l.passNo(), load.Passes)
	}
	return ""
}

// passGroup is what is put behind the names of a further pass's groups on a page,
// which has the lanes of all passes on one map.
func passGroup(pass int) string {
	if pass == 1 {
		return ""
	}
	return fmt.Sprintf("-pass-%d", pass)
}
