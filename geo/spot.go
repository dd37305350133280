package geo

import (
	"math"
	"math/bits"
)

// mesh is the step, in metres, to which overlays snap positions: far below
// that of the frame, so that moving edges by half of it moves no area that
// counts. Doubles hold whole multiples of it as far as a frame reaches.
const mesh = 1.0 / (1 << 33)

// A spot is a position counted in meshes, so that what is left or right of
// what can be told exactly.
type spot struct{ x, y int64 }

func spotOf(p XY) spot { return spot{int64(math.Round(p.X / mesh)), int64(math.Round(p.Y / mesh))} }

func (s spot) xy() XY { return XY{float64(s.x) * mesh, float64(s.y) * mesh} }

// before orders spots from west to east, and those of one meridian from south
// to north.
func (s spot) before(o spot) bool { return s.x < o.x || s.x == o.x && s.y < o.y }

func (s spot) compare(o spot) int {
	switch {
	case s.before(o):
		return -1
	case s == o:
		return 0
	}
	return 1
}

// A way leads from one spot to another.
type way struct{ x, y int64 }

func (s spot) to(o spot) way { return way{o.x - s.x, o.y - s.y} }

// turn is +1 if o leads to the left of w, -1 if to the right, 0 if along it or
// straight back. Doubles decide where their rounding cannot matter (Shewchuk
// 1997, "Adaptive precision floating-point arithmetic"), whole numbers
// elsewhere.
func (w way) turn(o way) int {
	l, r := float64(w.x)*float64(o.y), float64(w.y)*float64(o.x)
	det := l - r
	if rounding := roundingOfCross * (math.Abs(l) + math.Abs(r)); det > rounding {
		return 1
	} else if det < -rounding {
		return -1
	}
	return w.cross(o).sign()
}

// roundingOfCross bounds the relative rounding of a product of two ways turned
// into doubles, and of their difference: four roundings, with room to spare.
const roundingOfCross = 8 * 1.1102230246251565e-16

// cross is the cross product of two ways.
func (w way) cross(o way) int128 { return product(w.x, o.y).minus(product(w.y, o.x)) }

// An int128 is a whole number of 128 bits, in two's complement.
type int128 struct{ hi, lo uint64 }

func product(a, b int64) int128 {
	hi, lo := bits.Mul64(uint64(a), uint64(b))
	if a < 0 {
		hi -= uint64(b)
	}
	if b < 0 {
		hi -= uint64(a)
	}
	return int128{hi, lo}
}

func (p int128) minus(q int128) int128 {
	lo, borrow := bits.Sub64(p.lo, q.lo, 0)
	hi, _ := bits.Sub64(p.hi, q.hi, borrow)
	return int128{hi, lo}
}

func (p int128) sign() int {
	switch {
	case int64(p.hi) < 0:
		return -1
	case p == int128{}:
		return 0
	}
	return 1
}

// float is the number as a double.
func (p int128) float() float64 {
	if p.sign() < 0 {
		return -int128{}.minus(p).float()
	}
	return float64(p.hi)*(1<<32)*(1<<32) + float64(p.lo)
}
