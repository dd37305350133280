package sun

import (
	"math"
	"slices"

	"example.org/turfplat/geo"
)

// fair smooths a closed outline and leaves out the marks it does not need. It
// is done stretch by stretch, from knot to knot, each begun at the end that
// lies first, so that the two classes on a stretch get the same line.
func (c *classing) fair(marks []mark) geo.Ring {
	first := slices.IndexFunc(marks, func(m mark) bool { return m.knot })
	if first < 0 {
		return c.fairLoop(marks)
	}
	marks = append(slices.Clone(marks[first:]), marks[:first+1]...) // from a knot round to itself
	var ring geo.Ring
	for start := 0; start < len(marks)-1; {
		end := start + 1
		for !marks[end].knot {
			end++
		}
		stretch := c.fairStretch(marks[start : end+1])
		ring = append(ring, stretch[:len(stretch)-1]...)
		start = end
	}
	return ring
}

// fairLoop fairs an outline without knots.
func (c *classing) fairLoop(marks []mark) geo.Ring {
	n := len(marks)
	least := 0
	for i, m := range marks {
		if before(m.middle, marks[least].middle) {
			least = i
		}
	}
	loop := append(slices.Clone(marks[least:]), marks[:least]...)
	turned := before(loop[n-1].middle, loop[1].middle)
	if turned {
		slices.Reverse(loop[1:])
	}
	c.smooth(loop, true)
	far := farthest(loop)
	loop = append(loop, loop[0])
	ring := append(simplified(loop[:far+1])[:], simplified(loop[far:])[1:]...)
	ring = ring[:len(ring)-1]
	if turned {
		slices.Reverse(ring)
	}
	return ring
}

// fairStretch fairs an outline between two knots.
func (c *classing) fairStretch(marks []mark) geo.Ring {
	s := slices.Clone(marks)
	n := len(s)
	turned := before(s[n-1].middle, s[0].middle) || s[0].middle == s[n-1].middle && before(s[n-2].middle, s[1].middle)
	if turned {
		slices.Reverse(s)
	}
	c.smooth(s, false)
	ring := simplified(s)
	if turned {
		slices.Reverse(ring)
	}
	return ring
}

// before orders positions from west to east, then from south to north.
func before(a, b geo.XY) bool { return a.X < b.X || a.X == b.X && a.Y < b.Y }

// smooth moves marks onto a smooth line through them, but none farther from
// the middle of its edge than the slack. Means over neighbours, many times over,
// take out the steps of cells; adding the means of what they took away gives
// bends back (Tukey's twicing), so that patches do not shrink.
func (c *classing) smooth(marks []mark, closed bool) {
	drawn := make([]geo.XY, len(marks))
	for i, m := range marks {
		drawn[i] = m.at
	}
	rounds := int(math.Ceil(4 / (c.Step * c.Step)))
	means := averaged(drawn, closed, rounds)
	lost := make([]geo.XY, len(marks))
	for i, p := range drawn {
		lost[i] = geo.XY{X: p.X - means[i].X, Y: p.Y - means[i].Y}
	}
	for i, back := range averaged(lost, closed, rounds) {
		marks[i].at = marks[i].reined(geo.XY{X: means[i].X + back.X, Y: means[i].Y + back.Y})
	}
}

// averaged moves each of a line's positions to the mean of itself and those
// beside it, several times over; the ends of an open line stay.
func averaged(line []geo.XY, closed bool, rounds int) []geo.XY {
	n := len(line)
	line, next := slices.Clone(line), slices.Clone(line)
	for range rounds {
		for i, m := range line {
			if closed || i > 0 && i < n-1 {
				p, q := line[(i+n-1)%n], line[(i+1)%n]
				next[i] = geo.XY{X: (p.X + q.X + 2*m.X) / 4, Y: (p.Y + q.Y + 2*m.Y) / 4}
			}
		}
		line, next = next, line
	}
	return line
}

// reined returns the position nearest to p that lies within the slack of the
// middle.
func (m mark) reined(p geo.XY) geo.XY {
	east, north := p.X-m.middle.X, p.Y-m.middle.Y
	d := math.Hypot(east, north)
	if d <= slack() {
		return p
	}
	return geo.XY{X: m.middle.X + east*slack()/d, Y: m.middle.Y + north*slack()/d}
}

// farthest returns the mark that lies farthest from the first.
func farthest(marks []mark) int {
	best, most := 0, -1.0
	for i, m := range marks {
		if d := math.Hypot(m.at.X-marks[0].at.X, m.at.Y-marks[0].at.Y); d > most {
			best, most = i, d
		}
	}
	return best
}

// simplified leaves out the marks of an open outline that lie within the
// tolerance of it (Douglas & Peucker 1973, "Algorithms for the reduction of
// the number of points required to represent a digitized line").
func simplified(marks []mark) geo.Ring {
	a, b := marks[0].at, marks[len(marks)-1].at
	best, most := 0, tolerance
	for i := 1; i < len(marks)-1; i++ {
		if d := marks[i].at.DistanceToEdge(a, b); d > most {
			best, most = i, d
		}
	}
	if best == 0 {
		return geo.Ring{a, b}
	}
	return append(simplified(marks[:best+1]), simplified(marks[best:])[1:]...)
}
