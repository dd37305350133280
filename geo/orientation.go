package geo

import (
	"math"
	"math/big"
)

// orientation is +1 if c lies left of the line from a to b, -1 if right, and
// 0 if exactly on it. Doubles decide where their rounding cannot matter
// (Shewchuk 1997, "Adaptive precision floating-point arithmetic", first
// filter), exact arithmetic elsewhere.
func orientation(a, b, c XY) int {
	l := (a.X - c.X) * (b.Y - c.Y)
	r := (a.Y - c.Y) * (b.X - c.X)
	det := l - r
	const bound = 3.3306690738754716e-16 // (3 + 16 eps) eps
	if size := math.Abs(l) + math.Abs(r); size == 0 || math.Abs(det) > bound*size {
		return sign(det)
	}
	return exactCross(c, a, c, b).Sign()
}

// exactCross returns the cross product of the ways from a to b and from c to d.
func exactCross(a, b, c, d XY) *big.Float {
	diff := func(p, q float64) *big.Float {
		return new(big.Float).SetPrec(0).Sub(exact(p), exact(q))
	}
	l := new(big.Float).Mul(diff(b.X, a.X), diff(d.Y, c.Y))
	r := new(big.Float).Mul(diff(b.Y, a.Y), diff(d.X, c.X))
	return l.Sub(l, r)
}

// exact holds any double of a frame with room for differences and products.
func exact(v float64) *big.Float { return new(big.Float).SetPrec(1024).SetFloat64(v) }

func sign(v float64) int {
	switch {
	case v > 0:
		return 1
	case v < 0:
		return -1
	}
	return 0
}
