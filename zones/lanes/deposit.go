package lanes

import (
	"math"

	"example.org/turfplat/geo"
)

// stretch is the greatest length, in metres, of a part of a lane over which
// what lies beside it is taken as the same.
const (
	shieldedStretch = 0.5
	openStretch     = 10.0
)

// A stroke is a straight part of a lane and what it leaves to its sides.
type stroke struct {
	a, b       geo.XY
	dir        geo.XY
	length     float64
	begin, end geo.XY // normals of the lines that divide it from the parts before and after
	shield     shield
}

// strokes divides a lane into strokes. Around a bend each place belongs to the
// stroke on its side of the line that halves the bend.
func strokes(l Lane) []stroke {
	step := openStretch
	if l.Pass == Header {
		step = shieldedStretch
	}
	line := divided(l.Line, step)
	all := make([]stroke, len(line)-1)
	for i := range all {
		a, b := line[i], line[i+1]
		dir := unit(b.Minus(a))
		all[i] = stroke{a: a, b: b, dir: dir, length: a.Distance(b), begin: dir, end: dir, shield: shield{boundless, boundless}}
		if i > 0 {
			halve(&all[i-1], &all[i])
		}
	}
	if n := len(all); l.Line[0] == l.Line[len(l.Line)-1] && n > 1 {
		halve(&all[n-1], &all[0])
	}
	return all
}

// halve divides two strokes that meet, unless the walker turns round there.
func halve(s, o *stroke) {
	const about = 0.5 // |d+d'| at a bend of 151 degrees
	if both := s.dir.Plus(o.dir); both.Norm() > about {
		s.end, o.begin = both, both
	}
}

// divided returns a line with a position at least every step metres.
func divided(l geo.Line, step float64) geo.Line {
	parts := l[:1:1]
	for i := 1; i < len(l); i++ {
		n := math.Ceil(l[i-1].Distance(l[i]) / step)
		for k := 1.0; k < n; k++ {
			parts = append(parts, l[i-1].Toward(l[i], k/n))
		}
		if n > 0 {
			parts = append(parts, l[i])
		}
	}
	return parts
}

// offset is how far to the right of a stroke a place lies, m.
func (s stroke) offset(q geo.XY) float64 { return q.Minus(s.a).Cross(s.dir) }

// reaches reports whether a stroke may throw to a place.
func (s stroke) reaches(q geo.XY, p Pattern) bool {
	from := q.Minus(s.a)
	if from.Dot(s.begin) < 0 || q.Minus(s.b).Dot(s.end) >= 0 {
		return false
	}
	left, right := p.Reach()
	if u := from.Dot(s.dir); u < -max(left, right) || u > s.length+max(left, right) {
		return false
	}
	x := s.offset(q)
	return -left <= x && x <= right
}

// leaves returns what a stroke leaves at a place, in parts of the output of
// one metre to a square metre. A side that is shielded leaves all its output
// on the turf, evenly between the lane and the hard edge.
func (s stroke) leaves(q geo.XY, p Pattern, turf bool) float64 {
	if !s.reaches(q, p) {
		return 0
	}
	x := s.offset(q)
	side, throw := 1, s.shield.right
	if x < 0 {
		side, throw = -1, s.shield.left
	}
	switch {
	case !throw.hard():
		return p.catch(x) / p.output
	case math.Abs(x) > throw.at || !turf:
		return 0
	}
	return p.half(side) / throw.at
}

// half is the share of the output that falls to a side, -1 the left.
func (p Pattern) half(side int) float64 {
	if side < 0 {
		return p.left
	}
	return 1 - p.left
}

// bounds is the rectangle that a stroke may reach.
func (s stroke) bounds(p Pattern) geo.Bounds {
	left, right := p.Reach()
	reach := max(left, right) * math.Sqrt2
	return geo.Region{}.Bounds().With(s.a).With(s.b).Grown(reach)
}
