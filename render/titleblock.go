package render

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
)

// titleBlock names the site and the sheet, and says what else one must know to
// find and to trust it. It is a block; on a wide sheet the facts stand beside
// the name.
type titleBlock struct {
	name  string
	title string
	facts [][2]string // label and value
}

func (d *draft) titleBlock(paper Paper, scale Scale) titleBlock {
	m := d.measured
	_, title := d.subject.name()
	return titleBlock{
		name:  d.letters.of(m.Name),
		title: title,
		facts: [][2]string{
			{"Scale", scaleWords(scale)},
			{"Site", d.letters.of(m.ID)},
			{"Centre", degreesText(m.Center[0], m.Center[1])},
			{"S2 cell", m.Cell},
			{"Paper", capitalized(paper.Name)},
			{"Revision", strconv.Itoa(m.Revision)},
		},
	}
}

// scaleWords tell the scale of a sheet; zero is that of one without a map.
func scaleWords(s Scale) string {
	if s == 0 {
		return "no map"
	}
	return s.String()
}

const (
	wideTitle   = 150.0 // mm from which on the facts stand beside the name
	nameSize    = 16.0
	smallerName = 13.0
	factSize    = 9.0
	labelSize   = 9.0
	factHeight  = 9.2 // mm
	titleMargin = 2.2 // mm under the rule
)

// set implements block.
func (b titleBlock) set(corner Point, width float64) (elements []Element, height float64) {
	const nameShare, gap = 0.4, 5.0
	elements = append(elements, Path{
		Lines:  []Line{{Points: []Point{corner, corner.plus(width, 0)}}},
		Stroke: accent, Weight: 2 * broadLine,
	})
	corner = corner.plus(0, -titleMargin)
	if width >= wideTitle {
		left := width * nameShare
		named, h := b.setName(corner, left)
		facts, beside := b.setFacts(corner.plus(left+gap, 0), width-left-gap)
		return append(append(elements, named...), facts...), titleMargin + max(h, beside)
	}
	named, h := b.setName(corner, width)
	facts, below := b.setFacts(corner.plus(0, -h-1), width)
	return append(append(elements, named...), facts...), titleMargin + h + 1 + below
}

func (b titleBlock) setName(corner Point, width float64) ([]Element, float64) {
	const lines = 2
	name, size := b.name, nameSize
	if Bold.width(name, size) > width {
		size = smallerName
	}
	if broken := wrapped(name, Bold, size, width); len(broken) > lines {
		name = broken[0] + "\n" + shortened(rejoined(broken[1:3]...), Bold, size, width)
	}
	title := strings.Join(wrapped(b.title, Medium, factSize, width-folioRoom), "\n")
	elements, height := stack(corner, width, 0.6,
		paragraph{text: title, face: Medium, size: factSize, ink: accent},
		paragraph{text: name, face: Bold, size: size, ink: black})
	return append(elements, folio(corner, title)), height
}

// folioRoom is what the number of a sheet takes after its title, in
// millimetres.
const folioRoom = 26.0

// folio is the number of the sheet among those it is bound with, after its
// title.
func folio(corner Point, title string) Element {
	const gap = 3.0
	lines := strings.Split(title, "\n")
	last := lines[len(lines)-1]
	at := Point{corner.X + Medium.width(last, factSize) + gap, baseLine(corner.Y, len(lines)-1, Medium, factSize)}
	return numbered{text: Text{At: at, Size: factSize, Ink: grey}, words: func(number, count int) string {
		return fmt.Sprintf("sheet %d of %d", number, count)
	}}
}

// setFacts sets the facts in columns, as many as there is room for.
func (b titleBlock) setFacts(corner Point, width float64) (elements []Element, height float64) {
	const room = 105.0 // mm for three columns
	count := 2
	if width >= room {
		count = 3
	}
	rows := len(b.facts) / count
	widths := b.columnWidths(count, width)
	for i, column := range widths {
		for j, fact := range b.facts[i*rows : (i+1)*rows] {
			at := corner.plus(0, -float64(j)*factHeight-Regular.capHeight(labelSize)-1)
			elements = append(elements,
				Text{At: at, String: fact[0], Size: labelSize, Ink: grey},
				Text{At: at.plus(0, -4), String: shortened(fact[1], Medium, factSize, column-1), Face: Medium, Size: factSize, Ink: black})
		}
		corner.X += column
	}
	return elements, float64(rows)*factHeight - 1
}

// columnWidths are what the columns hold; all take alike to fill the width, and
// the widest gives where they hold more.
func (b titleBlock) columnWidths(count int, width float64) []float64 {
	const gap = 3.0 // mm between columns
	widths := make([]float64, count)
	rows := len(b.facts) / count
	for i, fact := range b.facts {
		widths[i/rows] = max(widths[i/rows], Medium.width(fact[1], factSize)+gap)
	}
	total := 0.0
	for _, w := range widths {
		total += w
	}
	if spare := width - total; spare > 0 {
		for i := range widths {
			widths[i] += spare / float64(count)
		}
		return widths
	}
	return levelled(widths, width)
}

// levelled cuts the widest of some widths down to one, so that all together are
// a total.
func levelled(widths []float64, total float64) []float64 {
	rising := slices.Sorted(slices.Values(widths))
	left, most := total, 0.0
	for i, w := range rising {
		if most = left / float64(len(rising)-i); w > most {
			break
		}
		left -= w
	}
	for i := range widths {
		widths[i] = min(widths[i], most)
	}
	return widths
}
