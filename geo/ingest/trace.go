package ingest

import (
	"math"
	"slices"

	"github.com/paulmach/orb"
)

// A trace is a row of positions and, if it was read, the text of each, so
// that what is repaired keeps its heights and the spelling of its numbers.
type trace struct {
	points []orb.Point
	texts  [][]byte // nil, or one a point
}

func (t *trace) add(p orb.Point, text []byte) {
	t.points = append(t.points, p)
	if text != nil {
		t.texts = append(t.texts, text)
	}
}

func (t *trace) clear() { t.points, t.texts = t.points[:0], t.texts[:0] }

// dropRepeats drops positions equal to the one before, and returns how many
// and the first of them.
func (t *trace) dropRepeats() (dropped int, first orb.Point) {
	kept := 0
	for i, p := range t.points {
		if i > 0 && p == t.points[kept-1] {
			if dropped == 0 {
				first = p
			}
			dropped++
			continue
		}
		t.points[kept] = p
		if t.texts != nil {
			t.texts[kept] = t.texts[i]
		}
		kept++
	}
	t.points = t.points[:kept]
	if t.texts != nil {
		t.texts = t.texts[:kept]
	}
	return dropped, first
}

// close repeats the first position at the end, unless it stands there.
func (t *trace) close() (changed bool) {
	last := len(t.points) - 1
	if last > 0 && t.points[0] == t.points[last] {
		return false
	}
	t.points = append(t.points, t.points[0])
	if t.texts != nil {
		t.texts = append(t.texts, t.texts[0])
	}
	return true
}

// wind turns a closed ring that runs the wrong way round; its first position
// stays. A ring whose area is too small to tell, like an even figure of
// eight, stays as it is.
func (t *trace) wind(counterClockwise bool) (changed bool) {
	area, doubt := t.area()
	if math.Abs(area) <= doubt || (area > 0) == counterClockwise {
		return false
	}
	slices.Reverse(t.points)
	slices.Reverse(t.texts)
	return true
}

// area is twice the signed area in square degrees, positive for a
// counter-clockwise ring, and the size below which its sign means nothing.
func (t *trace) area() (area, doubt float64) {
	var width, swept float64
	o := t.points[0]
	a := offset(o, t.points[1])
	for _, p := range t.points[2:] {
		b := offset(o, p)
		area += cross(a, b)
		swept += math.Abs(cross(a, b))
		width = max(width, math.Abs(b[0]), math.Abs(b[1]))
		a = b
	}
	const rounding = 0x1p-51 // of a product or a sum
	return area, width*thin + swept*float64(len(t.points))*rounding
}

// thin is a width in degrees below which a ring encloses nothing: a tenth of
// a micrometre, ten times finer than positions are written.
const thin = 1e-12

// vain says why a closed ring has no inside; both are empty if it has one.
func (t *trace) vain() (code, why string) {
	switch n := t.distinct(); {
	case n == 1:
		return "ring_short", "ring has only one point"
	case n == 2:
		return "ring_short", "ring has only two different points"
	case t.flat():
		return "ring_flat", "ring encloses nothing, its points are all on one line"
	}
	return "", ""
}

// distinct counts the different positions of a closed ring, up to three.
func (t *trace) distinct() int {
	seen := make([]orb.Point, 0, 3)
	for _, p := range t.points {
		if !slices.Contains(seen, p) {
			if seen = append(seen, p); len(seen) == cap(seen) {
				break
			}
		}
	}
	return len(seen)
}

// flat reports whether all positions lie on one line, to within thin.
func (t *trace) flat() bool {
	o := t.points[0]
	var far orb.Point
	var length float64
	for _, p := range t.points {
		d := offset(o, p)
		if l := math.Hypot(d[0], d[1]); l > length {
			far, length = d, l
		}
	}
	for _, p := range t.points {
		if math.Abs(cross(far, offset(o, p))) > thin*length {
			return false
		}
	}
	return true
}

// offset is the way from o to p in degrees, the short way round the earth.
func offset(o, p orb.Point) orb.Point {
	east := p.Lon() - o.Lon()
	switch {
	case east > 180:
		east -= 360
	case east < -180:
		east += 360
	}
	return orb.Point{east, p.Lat() - o.Lat()}
}

// cross has the same bits on every machine: the conversions keep the products
// from being fused into the difference.
func cross(a, b orb.Point) float64 { return float64(a[0]*b[1]) - float64(a[1]*b[0]) }
