package render

import (
	"slices"
	"sort"
)

// A divisible block may go on in another column. Parts of fewer than a number
// of rows are not made.
type divisible interface {
	block
	divide(width, height float64, leastRows int) (first, rest block, ok bool)
}

// worthACut is how many rows of a table are worth a column of their own.
const worthACut = 3

// flow sets blocks into columns, gap millimetres apart, and returns how much
// height each column has left. If tables may be split, one that is too long for
// the rest of a column goes on in the next one, with its heads. It reports
// whether there was room for all.
func flow(columns []rect, gap float64, split bool, blocks []block) (elements []Element, left []float64, ok bool) {
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
func pour(columns []rect, gap float64, leastRows int, blocks []block) (elements []Element, left []float64, rest []block) {
	column, down := 0, 0.0
	for _, c := range columns {
		left = append(left, c.height())
	}
	queue := append([]block(nil), blocks...)
	for len(queue) > 0 {
		if column == len(columns) {
			return elements, left, queue
		}
		c := columns[column]
		if down > 0 {
			down += gap
		}
		corner := Point{c.min.X, c.max.Y - down}
		set, h := queue[0].set(corner, c.width())
		if room := c.height() - down; h > room {
			if first, rest, cut := cutBlock(queue[0], c.width(), room, leastRows); cut {
				set, h = first.set(corner, c.width())
				elements = append(elements, Group{ID: "block", Title: titleOf(queue[0]), Elements: set})
				left[column] = room - h
				queue[0] = rest
			}
			column, down = column+1, 0
			continue
		}
		elements = append(elements, Group{ID: "block", Title: titleOf(queue[0]), Elements: set})
		down += h
		left[column] = c.height() - down
		queue = queue[1:]
	}
	return elements, left, nil
}

// evenFlow sets blocks into columns as flow does, but no deeper than they need,
// and with tables whole if they fit so.
func evenFlow(columns []rect, gap float64, blocks []block) (elements []Element, left []float64) {
	_, _, whole := flow(columns, gap, false, blocks)
	cut := func(height int) []rect {
		low := slices.Clone(columns)
		for i, c := range columns {
			low[i].min.Y = max(c.min.Y, c.max.Y-float64(height))
		}
		return low
	}
	height := sort.Search(int(columns[0].height())+1, func(mm int) bool {
		_, _, ok := flow(cut(mm), gap, !whole, blocks)
		return ok
	})
	even := cut(height)
	elements, left, _ = flow(even, gap, !whole, blocks)
	for i := range left {
		left[i] += columns[i].height() - even[i].height()
	}
	return elements, left
}

// titleOf is what a block is called, if anything.
func titleOf(b block) string {
	switch b := b.(type) {
	case table:
		return b.columns[0].head
	case legend:
		return "Key"
	}
	return ""
}

// cutBlock cuts a block so that its first part takes a height at most, if it can
// be cut.
func cutBlock(b block, width, height float64, leastRows int) (first, rest block, ok bool) {
	d, can := b.(divisible)
	if !can || leastRows == 0 {
		return nil, nil, false
	}
	return d.divide(width, height, leastRows)
}

// divide implements [divisible].
func (t table) divide(width, height float64, leastRows int) (block, block, bool) {
	if len(t.rows) < 2*leastRows {
		return nil, nil, false
	}
	first, rest := t, t
	first.totals = nil
	fitting := sort.Search(len(t.rows), func(n int) bool {
		first.rows = t.rows[:n+1]
		_, h := first.set(Point{}, width)
		return h > height
	})
	fitting = min(fitting, len(t.rows)-leastRows)
	if fitting < leastRows {
		return nil, nil, false
	}
	first.rows, rest.rows = t.rows[:fitting], t.rows[fitting:]
	return first, rest, true
}
