package render

import (
	"slices"
)

// tableSetter sets a table row by row.
type tableSetter struct {
	table    table
	corner   Point
	width    float64
	columns  []float64
	bands    []int
	down     float64 // height set so far
	elements []Element
}

func (s *tableSetter) rule(weight float64) {
	s.elements = append(s.elements, Path{Lines: []Line{s.level()}, Stroke: black, Weight: weight})
}

func (s *tableSetter) hairline() {
	s.elements = append(s.elements, Path{Lines: []Line{s.level()}, Stroke: grey.tint(0.5), Weight: hairLine})
}

func (s *tableSetter) level() Line {
	from := s.corner.plus(0, -s.down)
	return Line{Points: []Point{from, from.plus(s.width, 0)}}
}

// heads sets a row in which all columns wrap.
func (s *tableSetter) heads(cells []string) {
	columns := s.table.columns
	s.table.columns = slices.Clone(columns)
	for i := range columns {
		s.table.columns[i].wrap = true
	}
	s.row(cells, Bold)
	s.table.columns = columns
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
	size, lines := s.table.size, 0
	if from == 0 {
		lines = 1
	}
	x := s.corner.X + s.width - total(s.columns[from:to])
	for i, c := range s.table.columns[from:to] {
		column := from + i
		content, in := indented(cell(cells, column))
		room := s.columns[column] - 2*cellMargin - in
		text := s.table.fitted(content, c, face, room)
		for n, line := range text {
			s.elements = append(s.elements, Text{
				At:     Point{x + cellMargin + in + room*c.anchor.share(), baseLine(s.corner.Y-s.down-rowMargin, n, face, size)},
				String: line, Face: face, Size: size, Ink: black, Anchor: c.anchor,
			})
		}
		if content != "" {
			lines = max(lines, len(text))
		}
		x += s.columns[column]
	}
	s.down += float64(lines) * lineHeight(size)
}
