package geo

import (
	"slices"
)

// A Ring is a closed line; the first position is not repeated at the end.
type Ring []XY

// next returns the end of the edge that starts at i.
func (r Ring) next(i int) XY {
	if i++; i == len(r) {
		i = 0
	}
	return r[i]
}

// signedArea is positive for a counter-clockwise ring. It is summed from the
// first position, so that far-off coordinates cost no digits.
func (r Ring) signedArea() float64 {
	var sum float64
	for i := 1; i+1 < len(r); i++ {
		sum += r[i].Minus(r[0]).Cross(r[i+1].Minus(r[0]))
	}
	return sum / 2
}

func (r Ring) length() float64 {
	var sum float64
	for i := range r {
		sum += r.next(i).Minus(r[i]).Norm()
	}
	return sum
}

func (r Ring) bounds() Bounds {
	b := noBounds
	for _, p := range r {
		b = b.With(p)
	}
	return b
}

// wound returns the ring counter-clockwise, or clockwise, starting at its
// least position, so that equal rings are equal slices.
func (r Ring) wound(counterClockwise bool) Ring {
	least := 0
	for i := range r {
		if compareXY(r[i], r[least]) < 0 {
			least = i
		}
	}
	w := make(Ring, 0, len(r))
	if (r.signedArea() > 0) == counterClockwise {
		return append(append(w, r[least:]...), r[:least]...)
	}
	for i := range r {
		w = append(w, r[(least+len(r)-i)%len(r)])
	}
	return w
}

func (r Ring) snapped() Ring {
	w := make(Ring, len(r))
	for i, p := range r {
		w[i] = p.snapped()
	}
	return w
}

// withoutRepeats returns the ring less positions equal to the one before; the
// ring itself if there are none.
func (r Ring) withoutRepeats() Ring {
	w := r
	for i, p := range r {
		if i > 0 && p == r[i-1] {
			w = slices.Compact(slices.Clone(r))
			break
		}
	}
	for len(w) > 1 && w[0] == w[len(w)-1] {
		w = w[:len(w)-1]
	}
	return w
}

// side tells where a position lies.
type side int

const (
	outside side = iota
	onEdge
	inside
)

// locate says where p lies, by counting edges to the east of it.
func (r Ring) locate(p XY) side {
	in := false
	for i, a := range r {
		crosses, on := eastward(a, r.next(i), p)
		if on {
			return onEdge
		}
		in = in != crosses
	}
	if in {
		return inside
	}
	return outside
}

// eastward reports whether the way from p to the east crosses the edge from a
// to b, and whether p lies on the edge.
func eastward(a, b, p XY) (crosses, on bool) {
	if a.Y < p.Y && b.Y < p.Y || a.Y > p.Y && b.Y > p.Y || a.X < p.X && b.X < p.X {
		return false, false
	}
	if a.X > p.X && b.X > p.X {
		return (a.Y > p.Y) != (b.Y > p.Y), false
	}
	turn := orientation(a, b, p)
	if turn == 0 && between(a, b, p) {
		return false, true
	}
	return (a.Y > p.Y) != (b.Y > p.Y) && (turn > 0) == (b.Y > a.Y), false
}

// between reports whether p, on the line through a and b, lies on the edge.
func between(a, b, p XY) bool {
	return min(a.X, b.X) <= p.X && p.X <= max(a.X, b.X) && min(a.Y, b.Y) <= p.Y && p.Y <= max(a.Y, b.Y)
}
