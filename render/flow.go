package render

import (
	"slices"
	"sort"
)

// A divisible block may go on in another column. Parts of fewer than a number
// of rows are not made.
type divisible interface {
	Block
	divide(width, height float64, leastRows int) (first, rest Block, ok bool)
}

// worthACut is how many rows of a table are worth a column of their own.
const worthACut = 3

// flow sets blocks into columns, gap millimetres apart, and returns how much
// height each column has left. If tables may be split, one that is too long for
// the rest of a column goes on in the next one, with its heads. It reports
// whether there was room for all.
func flow(columns []Rect, gap float64, split bool, blocks []Block) (elements []Element, left []float64, ok bool) {
	leastRows := 0
	if split {
		leastRows = worthACut
	}
	elements, left, rest := pour(columns, gap, leastRows, blocks)
	if len(rest) > 0 {
		return nil, nil, false
	}
	return elements, left, true
}

// pour sets as many blocks into columns as there is room for, and returns the
// rest. Blocks are divided into parts of so many rows at least, or not at all
// if that is nothing.
func pour(columns []Rect, gap float64, leastRows int, blocks []Block) (elements []Element, left []float64, rest []Block) {
	column, down := 0, 0.0
	for _, c := range columns {
		left = append(left, c.Height())
	}
	queue := append([]Block(nil), blocks...)
	for len(queue) > 0 {
		if column == len(columns) {
			return elements, left, queue
		}
		c := columns[column]
		if down > 0 {
			down += gap
		}
		corner := Point{c.Min.X, c.Max.Y - down}
		set, h := queue[0].Set(corner, c.Width())
		if room := c.Height() - down; h > room {
			if first, rest, cut := cutBlock(queue[0], c.Width(), room, leastRows); cut {
				set, h = first.Set(corner, c.Width())
				elements = append(elements, Group{ID: "block", Title: titleOf(queue[0]), Elements: set})
				left[column] = room - h
				queue[0] = rest
			}
			column, down = column+1, 0
			continue
		}
		elements = append(elements, Group{ID: "block", Title: titleOf(queue[0]), Elements: set})
		down += h
		left[column] = c.Height() - down
		queue = queue[1:]
	}
	return elements, left, nil
}

// evenFlow sets blocks into columns as flow does, but no deeper than they need,
// and with tables whole if they fit so.
func evenFlow(columns []Rect, gap float64, blocks []Block) (elements []Element, left []float64) {
	_, _, whole := flow(columns, gap, false, blocks)
	cut := func(height int) []Rect {
		low := slices.Clone(columns)
		for i, c := range columns {
			low[i].Min.Y = max(c.Min.Y, c.Max.Y-float64(height))
		}
		return low
	}
	height := sort.Search(int(columns[0].Height())+1, func(mm int) bool {
		_, _, ok := flow(cut(mm), gap, !whole, blocks)
		return ok
	})
	even := cut(height)
	elements, left, _ = flow(even, gap, !whole, blocks)
	for i := range left {
		left[i] += columns[i].Height() - even[i].Height()
	}
	return elements, left
}

// titleOf is what a block is called, if anything.
func titleOf(b Block) string {
	switch b := b.(type) {
	case Table:
		return b.Columns[0].Head
	case legend:
		return "Key"
	}
	return ""
}

// cutBlock cuts a block so that its first part takes a height at most, if it can
// be cut.
func cutBlock(b Block, width, height float64, leastRows int) (first, rest Block, ok bool) {
	d, can := b.(divisible)
	if !can || leastRows == 0 {
		return nil, nil, false
	}
	return d.divide(width, height, leastRows)
}

// divide implements [divisible].
func (t Table) divide(width, height float64, leastRows int) (Block, Block, bool) {
	if len(t.Rows) < 2*leastRows {
		return nil, nil, false
	}
	first, rest := t, t
	first.Totals = nil
	fitting := sort.Search(len(t.Rows), func(n int) bool {
		first.Rows = t.Rows[:n+1]
		_, h := first.Set(Point{}, width)
		return h > height
	})
	fitting = min(fitting, len(t.Rows)-leastRows)
	if fitting < leastRows {
		return nil, nil, false
	}
	first.Rows, rest.Rows = t.Rows[:fitting], t.Rows[fitting:]
	return first, rest, true
}
