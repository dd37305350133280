package render

import (
	"math"
	"math/bits"
)

// A mesh knows of each cell of a window which labels of a crowd come into it, so
// that a seat is compared with those near it only.
type mesh struct {
	corner     Point
	across, up int // cells
	labels     []labelSet
}

// meshCell is the side of a cell, about that of a letter, in millimetres.
const meshCell = 4.0

func newMesh(window rect) mesh {
	m := mesh{corner: window.min, across: 1 + int(window.width()/meshCell), up: 1 + int(window.height()/meshCell)}
	m.labels = make([]labelSet, m.across*m.up)
	return m
}

// cells adds to some numbers those of all cells that a plate comes into. What is
// beyond the window comes into the cells along its edge.
func (m *mesh) cells(p plate, found []int32) []int32 {
	const hair = 1e-6 // mm, more than rounding does
	box := p.box()
	low, high := cellAt(box.min.Y-hair-m.corner.Y, m.up), cellAt(box.max.Y+hair-m.corner.Y, m.up)
	for row := low; row <= high; row++ {
		bottom, top := m.corner.Y+float64(row)*meshCell-hair, m.corner.Y+float64(row+1)*meshCell+hair
		if row == 0 {
			bottom = math.Inf(-1)
		}
		if row == m.up-1 {
			top = math.Inf(1)
		}
		left, right := p.between(bottom, top)
		for k := cellAt(left-hair-m.corner.X, m.across); k <= cellAt(right+hair-m.corner.X, m.across); k++ {
			found = append(found, int32(row*m.across+k))
		}
	}
	return found
}

// cellAt is the number of the cell at a way from the first, of a number of cells.
func cellAt(way float64, of int) int { return int(max(0, min(way/meshCell, float64(of-1)))) }

// between returns how far left and right a plate reaches between two heights.
func (p plate) between(bottom, top float64) (left, right float64) {
	left, right = math.Inf(1), math.Inf(-1)
	for i, a := range p {
		b := p[(i+1)%len(p)]
		if a.Y > b.Y {
			a, b = b, a
		}
		if b.Y < bottom || a.Y > top {
			continue
		}
		from, to, slope := a.X, b.X, (b.X-a.X)/(b.Y-a.Y)
		if a.Y < bottom {
			from += (bottom - a.Y) * slope
		}
		if b.Y > top {
			to -= (b.Y - top) * slope
		}
		left, right = min(left, from, to), max(right, from, to)
	}
	return left, right
}

// near are the labels that come into some cells.
func (m *mesh) near(cells []int32) (near labelSet) {
	for _, cell := range cells {
		for w, word := range m.labels[cell] {
			near[w] |= word
		}
	}
	return near
}

func (m *mesh) put(label int, cells []int32) {
	for _, cell := range cells {
		m.labels[cell][label/64] |= 1 << (label % 64)
	}
}

func (m *mesh) remove(label int, cells []int32) {
	for _, cell := range cells {
		m.labels[cell][label/64] &^= 1 << (label % 64)
	}
}

// A labelSet is a set of numbers of labels.
type labelSet [(mostLeaders + 63) / 64]uint64

// numbers are those of the labels in the set, in order.
func (s *labelSet) numbers(yield func(int) bool) {
	for w, word := range s {
		for ; word != 0; word &= word - 1 {
			if !yield(64*w + bits.TrailingZeros64(word)) {
				return
			}
		}
	}
}
