package lanes

import (
	"math"

	"example.org/turfplat/geo"
)

// A Post is a round thing in the turf that lanes are bent around: a trunk or a
// hazard.
type Post struct {
	At     geo.XY
	Radius float64 // m
}

// holds reports whether a place lies within a post's ring, and not on it.
func (p Post) holds(q geo.XY) bool { return p.At.Distance(q) < p.Radius-1e-9 }

// bent returns a line led round posts, on the shorter side if all of that is
// free. What starts or ends within a post's ring is cut off there.
func bent(l geo.Line, posts []Post, free func(geo.XY) bool) geo.Line {
	for _, p := range posts {
		if distanceToLine(p.At, l) < p.Radius {
			l = p.bend(l, free)
		}
	}
	return l
}

func (p Post) bend(l geo.Line, free func(geo.XY) bool) geo.Line {
	var led geo.Line
	if !p.holds(l[0]) {
		led = geo.Line{l[0]}
	}
	for i := 1; i < len(l); i++ {
		a, b := l[i-1], l[i]
		in, out, ok := p.passage(a, b)
		if !ok {
			led = append(led, b)
			continue
		}
		if !p.holds(a) {
			led = append(led, a.Toward(b, max(in, 0)))
		}
		if !p.holds(b) {
			if gate := a.Toward(b, min(out, 1)); len(led) > 0 {
				led = append(append(led, p.round(led[len(led)-1], gate, free)...), gate)
			} else {
				led = append(led, gate)
			}
			led = append(led, b)
		}
	}
	return led
}

// passage returns between which shares of the way from a to b it runs within
// the post's ring, less than 0 or more than 1 if it starts or ends there. False
// if it does not, but for rounding.
func (p Post) passage(a, b geo.XY) (in, out float64, ok bool) {
	const hair = 1e-9 // m
	way, from := b.Minus(a), a.Minus(p.At)
	q, half, rest := way.Dot(way), way.Dot(from), from.Dot(from)-p.Radius*p.Radius
	root := half*half - q*rest
	if root <= 0 || q == 0 {
		return 0, 0, false
	}
	in, out = (-half-math.Sqrt(root))/q, (-half+math.Sqrt(root))/q
	return in, out, (min(out, 1)-max(in, 0))*math.Sqrt(q) > hair
}

// round returns the stations between two places on the post's ring.
func (p Post) round(a, b geo.XY, free func(geo.XY) bool) geo.Line {
	u, v := a.Minus(p.At), b.Minus(p.At)
	turn := math.Atan2(u.Cross(v), u.Dot(v))
	shorter, ok := p.arc(u, turn, free)
	if ok {
		return shorter
	}
	if longer, ok := p.arc(u, turn-math.Copysign(2*math.Pi, turn), free); ok {
		return longer
	}
	return shorter
}

// arc returns stations a hair off the ring, and whether all lie in the ground.
func (p Post) arc(from geo.XY, turn float64, free func(geo.XY) bool) (geo.Line, bool) {
	const step = math.Pi / 9
	n := int(math.Ceil(math.Abs(turn) / step))
	reach := 1 / math.Cos(turn/float64(n)/2) // chords stay outside
	var l geo.Line
	ok := true
	for k := range n {
		sin, cos := math.Sincos(turn * (float64(k) + 0.5) / float64(n))
		q := p.At.Plus(geo.XY{X: from.X*cos - from.Y*sin, Y: from.X*sin + from.Y*cos}.Times(reach))
		l, ok = append(l, q), ok && free(q)
	}
	return l, ok
}
