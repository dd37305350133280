package lanes

import (
	"cmp"
	"fmt"
	"math"
	"slices"
)

// A Tray is a box of a tray test: where it stood across the lane, in metres
// from its centre line and negative to the left, and what it caught, in any
// unit.
type Tray struct{ Offset, Catch float64 }

// Measured returns the pattern of a tray test: straight between trays, falling
// to nothing one tray beyond the last. The effective swath is the width
// between the places, left and right, at which the catch is half of that at
// the centre (Landschoot, Penn State, 2016).
func Measured(trays []Tray) (Pattern, error) {
	row := slices.SortedFunc(slices.Values(trays), func(a, b Tray) int { return cmp.Compare(a.Offset, b.Offset) })
	if len(row) < 3 {
		return Pattern{}, fmt.Errorf("tray test has %d trays: it takes three at least, one of them on the centre line", len(row))
	}
	for i, t := range row {
		if !(t.Catch >= 0) || math.IsInf(t.Catch, 0) || math.IsNaN(t.Offset) || math.IsInf(t.Offset, 0) {
			return Pattern{}, fmt.Errorf("tray at %g m caught %g: write a number from 0 up", t.Offset, t.Catch)
		}
		if i > 0 && t.Offset == row[i-1].Offset {
			return Pattern{}, fmt.Errorf("two trays stand at %g m: join them", t.Offset)
		}
	}
	last := len(row) - 1
	row = slices.Concat(
		[]Tray{{Offset: 2*row[0].Offset - row[1].Offset}}, row, []Tray{{Offset: 2*row[last].Offset - row[last-1].Offset}})
	p := Pattern{name: "measured", catch: func(x float64) float64 { return between(row, x) }}
	return p, p.measure(row)
}

// measure finds the reach, the swath and the output of a row of trays.
func (p *Pattern) measure(row []Tray) error {
	first, last := row[0].Offset, row[len(row)-1].Offset
	half := between(row, 0) / 2
	if first >= 0 || last <= 0 || half == 0 {
		return fmt.Errorf("tray test caught nothing on the centre line: count offsets from the middle of the machine")
	}
	left, right := -first, last
	for i := 1; i < len(row); i++ {
		a, b := row[i-1], row[i]
		if (a.Catch < half) == (b.Catch < half) {
			continue
		}
		at := a.Offset + (b.Offset-a.Offset)*(half-a.Catch)/(b.Catch-a.Catch)
		if at < 0 {
			left = -at // the last to the left is the nearest
		} else {
			right = min(right, at)
		}
	}
	p.reach, p.swath = [2]float64{-first, last}, left+right
	under := func(from, to float64) float64 {
		var sum float64
		at := from
		for _, t := range append(row[:len(row):len(row)], Tray{Offset: to}) {
			if next := min(to, t.Offset); next > at {
				sum += (next - at) * (between(row, at) + between(row, next)) / 2
				at = next
			}
		}
		return sum
	}
	p.output = under(first, last)
	p.left = under(first, 0) / p.output
	return nil
}

// between reads a row of trays at an offset.
func between(row []Tray, x float64) float64 {
	i, _ := slices.BinarySearchFunc(row, x, func(t Tray, x float64) int { return cmp.Compare(t.Offset, x) })
	if i < len(row) && row[i].Offset == x {
		return row[i].Catch
	}
	if i == 0 || i == len(row) {
		return 0
	}
	a, b := row[i-1], row[i]
	return a.Catch + (b.Catch-a.Catch)*(x-a.Offset)/(b.Offset-a.Offset)
}
