package render

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"example.org/turfplat/geo"
)

// A lie is how ground lies on a sheet: how far it is turned, and the extent it
// then has.
type lie struct {
	turn     float64 // of north, degrees counter-clockwise from the top of the sheet
	sin, cos float64
	extent   geo.Bounds // metres to the right and up the sheet, about the centre of the frame
}

// lieOf turns ground, of which the places of a hull are enough.
func lieOf(hull geo.Ring, turn float64) lie {
	l := lie{turn: turn, cos: 1}
	if turn != 0 {
		l.sin, l.cos = math.Sincos(turn * math.Pi / 180)
	}
	for i, p := range hull {
		q := l.onSheet(p)
		if i == 0 {
			l.extent = geo.Bounds{Min: q, Max: q}
		}
		l.extent = l.extent.With(q)
	}
	return l
}

// onSheet returns the way from the centre of the frame to a position, to the
// right and up the sheet.
func (l lie) onSheet(p geo.XY) geo.XY {
	return geo.XY{X: p.X*l.cos - p.Y*l.sin, Y: p.X*l.sin + p.Y*l.cos}
}

// onGround returns the position at a way to the right and up the sheet.
func (l lie) onGround(p geo.XY) geo.XY {
	return geo.XY{X: p.X*l.cos + p.Y*l.sin, Y: p.Y*l.cos - p.X*l.sin}
}

// northInWords tells where north is on the sheet.
func (l lie) northInWords() string {
	switch {
	case l.turn > 0:
		return fmt.Sprintf("north %.0f° to the left of the top", l.turn)
	case l.turn < 0:
		return fmt.Sprintf("north %.0f° to the right of the top", -l.turn)
	}
	return "north up"
}

// turnedLies lays a long thin site along the sheet and up it, the one first
// that turns it less; there are none for others, which gain little by it. North
// never points down.
func turnedLies(hull geo.Ring) []lie {
	const long = 2.0             // times the width, from which on a site is long
	const step, least = 0.1, 1.0 // degrees: finer is not seen, and less is taken for north up
	along, found := longWay(hull, long)
	if !found {
		return nil
	}
	turn := math.Round(math.Remainder(-along, 180)/step) * step
	var lies []lie
	for _, turn := range []float64{turn, turn - math.Copysign(90, turn)} {
		if math.Abs(turn) >= least {
			lies = append(lies, lieOf(hull, turn))
		}
	}
	slices.SortFunc(lies, func(a, b lie) int { return cmp.Compare(math.Abs(a.turn), math.Abs(b.turn)) })
	return lies
}

// longWay is the direction of the long side of the least rectangle round a
// hull, in degrees counter-clockwise from the east, if it is so many times as
// long as the short one. A side of that rectangle runs along one of the hull
// (Freeman and Shapira 1975).
func longWay(hull geo.Ring, times float64) (direction float64, long bool) {
	least := math.Inf(1)
	for i, a := range hull {
		way := hull[(i+1)%len(hull)].Minus(a)
		side := math.Atan2(way.Y, way.X) * 180 / math.Pi
		box := lieOf(hull, -side).extent
		length, width := box.Width(), box.Height()
		if length*width >= least {
			continue
		}
		least, direction = length*width, side
		if width > length {
			length, width, direction = width, length, side+90
		}
		long = length >= times*width
	}
	return direction, long
}
