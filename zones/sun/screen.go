package sun

import (
	"math"

	"example.org/turfplat/geo"
)

// A Screen stands along a line: a fence, a wall, a hedge. A width of 0 is a
// thin one.
type Screen struct {
	Line          geo.Line
	Height, Width float64 // m
}

func (s Screen) bodies() []body {
	top := aboveSample(s.Height)
	if top == 0 {
		return nil
	}
	var bodies []body
	for i := 1; i < len(s.Line); i++ {
		if s.Line[i-1] == s.Line[i] {
			continue
		}
		ring := s.panel(i)
		bodies = append(bodies, block{ring, 0, top})
	}
	return bodies
}

// panel is the ground of one stretch of the line, counter-clockwise. At bends
// both stretches run on by half the width, which closes the outer corner.
func (s Screen) panel(i int) geo.Ring {
	from, to := s.Line[i-1], s.Line[i]
	half := max(0, s.Width) / 2 / math.Hypot(to.X-from.X, to.Y-from.Y)
	along := geo.XY{X: (to.X - from.X) * half, Y: (to.Y - from.Y) * half}
	closed := s.Line[0] == s.Line[len(s.Line)-1]
	if i > 1 || closed {
		from = geo.XY{X: from.X - along.X, Y: from.Y - along.Y}
	}
	if i < len(s.Line)-1 || closed {
		to = moved(to, along)
	}
	if half == 0 {
		return geo.Ring{from, to}
	}
	return geo.Ring{
		{X: from.X + along.Y, Y: from.Y - along.X}, {X: to.X + along.Y, Y: to.Y - along.X},
		{X: to.X - along.Y, Y: to.Y + along.X}, {X: from.X - along.Y, Y: from.Y + along.X},
	}
}
