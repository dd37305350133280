package sun

import (
	"errors"
	"math"
	"slices"

	"example.org/turfplat/geo"
)

// A mark is a position on the outline of a class: on the line between two
// cells, or a knot, where more than two lines meet.
type mark struct {
	at     geo.XY
	middle geo.XY // of the edge that the two cells share
	knot   bool
}

// slack is how far, in metres, a mark may lie from the middle of its edge, and
// tolerance how far an outline may pass by a mark; together they make the
// least outline error of the trade.
const tolerance = 0.1

func slack() float64 { return figures["outline_error"] - tolerance }

// outlines returns the rings round each class there is, carried on around the
// turf: shells counter-clockwise, holes clockwise. Classes that meet share
// their outline to the last digit.
func (c *classing) outlines() map[int8][]geo.Ring {
	followed := make([]bool, 4*len(c.class))
	rings := make(map[int8][]geo.Ring)
	for cell, k := range c.class {
		for s := side(0); s < 4; s++ {
			if k != none && !followed[4*cell+int(s)] && c.classOf(c.beside(cell, s)) != k {
				rings[k] = append(rings[k], c.fair(c.follow(cell, s, followed)))
			}
		}
	}
	return rings
}

// follow goes round a class with its cells to the left, and turns left where
// two of its cells meet at a corner only.
func (c *classing) follow(cell int, s side, followed []bool) []mark {
	var marks []mark
	for k := c.class[cell]; !followed[4*cell+int(s)]; {
		followed[4*cell+int(s)] = true
		marks = append(marks, c.markOn(cell, s))
		if corner := c.corner(cell, s); c.knotAt(cell, s) {
			marks = append(marks, mark{corner, corner, true})
		}
		ahead := c.beside(cell, s+1)
		across := c.beside(ahead, s)
		switch {
		case c.classOf(ahead) != k:
			s = (s + 1) % 4
		case c.classOf(across) != k:
			cell = ahead
		default:
			cell, s = across, (s+3)%4
		}
	}
	return marks
}

// corner is the position at the end of a side.
func (c *classing) corner(cell int, s side) geo.XY {
	p := c.Center(cell)
	ends := [4][2]float64{{1, -1}, {1, 1}, {-1, 1}, {-1, -1}}
	return geo.XY{X: p.X + ends[s][0]*c.Step/2, Y: p.Y + ends[s][1]*c.Step/2}
}

// knotAt reports whether more than two lines meet at the end of a side.
func (c *classing) knotAt(cell int, s side) bool {
	ahead, beside := c.beside(cell, s+1), c.beside(cell, s)
	round := [4]int8{c.class[cell], c.classOf(ahead), c.classOf(c.offset(cell, steps[s][0]+steps[(s+1)%4][0], steps[s][1]+steps[(s+1)%4][1])), c.classOf(beside)}
	lines := 0
	for i, k := range round {
		if k != round[(i+1)%4] {
			lines++
		}
	}
	return lines > 2
}

// markOn returns the mark between a cell and the one on a side of it: where
// the hours pass the limit, if they do between the two, else halfway.
func (c *classing) markOn(cell int, s side) mark {
	p := c.Center(cell)
	towards := steps[s]
	middle := geo.XY{X: p.X + float64(towards[0])*c.Step/2, Y: p.Y + float64(towards[1])*c.Step/2}
	m := mark{at: middle, middle: middle}
	if other := c.beside(cell, s); c.classOf(other) != none {
		shift := max(-slack(), min(slack(), (c.share(cell, other)-0.5)*c.Step))
		m.at.X += float64(towards[0]) * shift
		m.at.Y += float64(towards[1]) * shift
	}
	return m
}

// share is the share of the way from a cell to the next at which the hours
// pass from one class to the other.
func (c *classing) share(a, b int) float64 {
	if c.class[a] > c.class[b] {
		return 1 - c.share(b, a)
	}
	upper, lower := c.limits[c.class[a]], c.limits[c.class[b]-1]
	limit := (upper + lower) / 2 // of neighbouring classes it is one and the same
	if !(c.Values[a] >= limit && limit > c.Values[b]) {
		return 0.5
	}
	return (c.Values[a] - limit) / (c.Values[a] - c.Values[b])
}

// assembled makes a region of rings with their ground to the left: shells run
// counter-clockwise, holes clockwise.
func assembled(rings []geo.Ring) (geo.Region, error) {
	type polygon struct {
		shell geo.Region
		rings []geo.Ring
	}
	slices.SortStableFunc(rings, func(a, b geo.Ring) int { return compareFloats(enclosed(b), enclosed(a)) })
	var polygons []polygon
	var errs []error
	for _, r := range rings {
		if enclosed(r) <= 0 {
			continue
		}
		shell, err := geo.NonZeroRegionOf([]geo.Ring{r})
		polygons, errs = append(polygons, polygon{shell, []geo.Ring{r}}), append(errs, err)
	}
	for _, r := range rings {
		if enclosed(r) >= 0 {
			continue
		}
		for i := len(polygons) - 1; i >= 0; i-- { // the smallest that holds it
			if polygons[i].shell.Contains(r[0]) {
				polygons[i].rings = append(polygons[i].rings, r)
				break
			}
		}
	}
	var parts []geo.Region
	for _, p := range polygons {
		part, err := geo.NonZeroRegionOf(p.rings)
		parts, errs = append(parts, part), append(errs, err)
	}
	all, err := geo.Union(parts...)
	return all, errors.Join(append(errs, err)...)
}

// enclosed is the area of a ring, negative if it runs clockwise.
func enclosed(r geo.Ring) float64 {
	double := 0.0
	for i, p := range r {
		q := r[(i+1)%len(r)]
		double += (p.X-r[0].X)*(q.Y-r[0].Y) - (p.Y-r[0].Y)*(q.X-r[0].X)
	}
	return double / 2
}

func compareFloats(a, b float64) int {
	switch {
	case math.Abs(a-b) == 0:
		return 0
	case a < b:
		return -1
	}
	return 1
}
