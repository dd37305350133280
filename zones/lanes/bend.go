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

// holds reports whether a place lies within a post's ring.
func (p Post) holds(q geo.XY) bool { return distance(p.At, q) < p.Radius }

// region is the ground that is not walked on: an octagon in the ring.
func (p Post) region() geo.Region {
	const sides = 8
	ring := make(geo.Ring, sides)
	for i := range ring {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / sides)
		ring[i] = plus(p.At, times(geo.XY{X: cos, Y: sin}, p.Radius))
	}
	r, err := geo.RegionOf([]geo.Ring{ring})
	if err != nil {
		return geo.Region{} // a ring too small to be one is no hindrance
	}
	return r
}

// bent returns a line led round posts, on the shorter side if that lies in the
// ground. What starts or ends within a post's ring is cut off there.
func bent(l geo.Line, posts []Post, ground geo.Region) geo.Line {
	for _, p := range posts {
		l = p.bend(l, ground)
	}
	return l
}

func (p Post) bend(l geo.Line, ground geo.Region) geo.Line {
	var led geo.Line
	within := len(l) > 0 && p.holds(l[0])
	if !within && len(l) > 0 {
		led = geo.Line{l[0]}
	}
	for i := 1; i < len(l); i++ {
		for _, t := range p.gates(l[i-1], l[i]) {
			gate := toward(l[i-1], l[i], t)
			if within = !within; !within && len(led) > 0 {
				led = append(led, p.round(led[len(led)-1], gate, ground)...)
			}
			led = append(led, gate)
		}
		if !within {
			led = append(led, l[i])
		}
	}
	return led
}

// gates returns the shares of the way from a to b at which it enters or leaves
// the post's ring.
func (p Post) gates(a, b geo.XY) []float64 {
	way, from := minus(b, a), minus(a, p.At)
	q, half, rest := dot(way, way), dot(way, from), dot(from, from)-p.Radius*p.Radius
	root := half*half - q*rest
	if root <= 0 || q == 0 {
		return nil
	}
	var gates []float64
	for _, t := range []float64{(-half - math.Sqrt(root)) / q, (-half + math.Sqrt(root)) / q} {
		if t > 0 && t <= 1 {
			gates = append(gates, t)
		}
	}
	return gates
}

// round returns the stations between two places on the post's ring.
func (p Post) round(a, b geo.XY, ground geo.Region) geo.Line {
	u, v := minus(a, p.At), minus(b, p.At)
	turn := math.Atan2(cross(u, v), dot(u, v))
	shorter, ok := p.arc(u, turn, ground)
	if ok {
		return shorter
	}
	if longer, ok := p.arc(u, turn-math.Copysign(2*math.Pi, turn), ground); ok {
		return longer
	}
	return shorter
}

// arc returns stations a hair off the ring, and whether all lie in the ground.
func (p Post) arc(from geo.XY, turn float64, ground geo.Region) (geo.Line, bool) {
	const step = math.Pi / 9
	n := int(math.Ceil(math.Abs(turn) / step))
	reach := 1 / math.Cos(turn/float64(n)/2) // chords stay outside
	var l geo.Line
	ok := true
	for k := range n {
		sin, cos := math.Sincos(turn * (float64(k) + 0.5) / float64(n))
		q := plus(p.At, times(geo.XY{X: from.X*cos - from.Y*sin, Y: from.X*sin + from.Y*cos}, reach))
		l, ok = append(l, q), ok && ground.Contains(q)
	}
	return l, ok
}
