package render

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"example.org/turfplat/zones"
)

// A sumRow is a row of a table of areas: what it is called, the first figure in
// it and how far rounding may have moved that.
type sumRow struct {
	label    string
	area     float64
	rounding float64
	indented bool
}

// sumRows reads the rows of all parts of a table off the sheet.
func (l *layout) sumRows(title string) (rows []sumRow) {
	for _, block := range blocksTitled(l.sheet.Elements, title) {
		left := extent(block.Elements).min.X + cellMargin
		lines := map[int][]Text{}
		for _, t := range textsOf(block.Elements) {
			at := int(math.Round(t.At.Y * 100))
			lines[at] = append(lines[at], t)
		}
		for _, line := range lines {
			if row, ok := sumRowOf(line, left); ok {
				rows = append(rows, row)
			}
		}
	}
	return rows
}

func blocksTitled(elements []Element, title string) (blocks []Group) {
	for _, e := range elements {
		if g, ok := e.(Group); ok {
			if g.ID == "block" && g.Title == title {
				blocks = append(blocks, g)
			}
			blocks = append(blocks, blocksTitled(g.Elements, title)...)
		}
	}
	return blocks
}

// sumRowOf reads the words at the left of a line and the first figure after
// them.
func sumRowOf(line []Text, left float64) (row sumRow, ok bool) {
	for _, t := range line {
		if t.Anchor == Start {
			row.label = strings.TrimSpace(row.label + " " + t.String)
			row.indented = row.indented || t.At.X > left+0.1 && t.At.X < left+2*indent
		}
	}
	figures := slices.DeleteFunc(slices.Clone(line), func(t Text) bool { return t.Anchor != End })
	if len(figures) == 0 {
		return row, false
	}
	first := slices.MinFunc(figures, func(a, b Text) int { return int(math.Copysign(1, a.At.X-b.At.X)) })
	plain := strings.NewReplacer(",", "", "−", "-").Replace(first.String)
	area, err := strconv.ParseFloat(plain, 64)
	row.area, row.rounding = area, roundingOf(plain)
	return row, err == nil
}

// roundingOf is the most that a figure may have been rounded by: half of its
// last place, which may count in fives.
func roundingOf(figure string) float64 {
	digits := strings.TrimRight(figure, "0")
	step := math.Pow10(len(figure) - len(digits))
	if strings.HasSuffix(digits, "5") {
		step *= 5
	}
	return step / 2
}

// wrongSums finds totals that are not what was measured, and rows that do not
// add up to them.
func (c mapCase) wrongSums() (found []string) {
	l, d := layoutOf(c.sheet), c.draft
	turf := d.measured.Covers[zones.Turf]
	net := d.figures.Area(turf.AreaM2, turf.CI95M2)
	for table, total := range map[string]string{"Turf and deductions": "Net turf", "Zone": "All zones"} {
		rows := l.sumRows(table)
		at := slices.IndexFunc(rows, func(r sumRow) bool { return r.label == total })
		if at < 0 {
			continue // on a sheet of another subject, or with one zone
		}
		if stated := strings.ReplaceAll(net, ",", ""); strconv.FormatFloat(rows[at].area, 'f', -1, 64) != stated {
			found = append(found, fmt.Sprintf("%s is %g, %s was measured", total, rows[at].area, net))
		}
		sum, rounding := addedUp(rows, total)
		if math.Abs(sum-rows[at].area) > rounding+rows[at].rounding {
			found = append(found, fmt.Sprintf("the rows of %q add up to %g, %s is %g", table, sum, total, rows[at].area))
		}
	}
	return found
}

// addedUp adds up the rows that lead to a total: of the ground that deductions
// come off only the last, since each is a part of the one before.
func addedUp(rows []sumRow, total string) (sum, rounding float64) {
	whole := []string{"Outline", "Traced turf"}
	traced := slices.ContainsFunc(rows, func(r sumRow) bool { return r.label == "Traced turf" })
	for _, r := range rows {
		if r.label == total || r.label == "To be treated" || r.indented || traced && r.label == whole[0] {
			continue
		}
		sum += r.area
		rounding += r.rounding
	}
	return sum, rounding
}
