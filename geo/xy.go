package geo

import "math"

// XY is a position in a frame: metres east and north of its centre; or a way
// from one to another.
type XY struct{ X, Y float64 }

// Minus is the way from q to p.
func (p XY) Minus(q XY) XY { return XY{p.X - q.X, p.Y - q.Y} }

// Plus is p moved by a way.
func (p XY) Plus(q XY) XY { return XY{p.X + q.X, p.Y + q.Y} }

// Times is a way k times as long.
func (p XY) Times(k float64) XY { return XY{p.X * k, p.Y * k} }

// Dot is the product of the lengths of two ways and the cosine between them.
func (p XY) Dot(q XY) float64 { return p.X*q.X + p.Y*q.Y }

// Cross is the product of the lengths of two ways and the sine of the turn
// from p to q: positive to the left.
func (p XY) Cross(q XY) float64 { return p.X*q.Y - p.Y*q.X }

// Norm is the length of a way, in the frame, whose positions are far from
// where squares overflow.
func (p XY) Norm() float64 { return math.Sqrt(p.X*p.X + p.Y*p.Y) }

// Distance is the length of the way from p to q, in the frame.
func (p XY) Distance(q XY) float64 { return q.Minus(p).Norm() }

// DistanceToEdge is the length of the shortest way from p to the edge from a to
// b, in the frame.
func (p XY) DistanceToEdge(a, b XY) float64 {
	way := b.Minus(a)
	t := 0.0
	if d := way.Dot(way); d > 0 {
		t = min(1, max(0, p.Minus(a).Dot(way)/d))
	}
	return p.Distance(a.Toward(b, t))
}

// Toward returns the position a share t of the way to q, which is q for 1.
func (p XY) Toward(q XY, t float64) XY {
	if t == 1 {
		return q
	}
	return p.Plus(q.Minus(p).Times(t))
}

func (p XY) snapped() XY {
	return XY{math.Round(p.X/grain) * grain, math.Round(p.Y/grain) * grain}
}

// compareXY orders positions from west to east, and those of one meridian from
// south to north.
func compareXY(p, q XY) int {
	switch {
	case p.X < q.X:
		return -1
	case p.X > q.X:
		return 1
	case p.Y < q.Y:
		return -1
	case p.Y > q.Y:
		return 1
	}
	return 0
}
