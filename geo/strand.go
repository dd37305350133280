package geo

import (
	"cmp"
	"math"
)

// A strand is an edge on its way into a subdivision: from the spot that comes
// before to the one that comes after. Runs is +1 if the ring runs that way, -1
// if it runs back.
type strand struct {
	a, b  spot
	set   int32 // whose edge it is
	runs  int32
	fresh bool // not yet compared with the others
	clear bool // of all others of its set that are
}

// strandOf returns the edge of a set from p to q.
func strandOf(set int, p, q spot) strand {
	if q.before(p) {
		return strand{q, p, int32(set), -1, true, false}
	}
	return strand{p, q, int32(set), 1, true, false}
}

func compareStrands(s, o *strand) int {
	switch {
	case s.a.x != o.a.x:
		return cmp.Compare(s.a.x, o.a.x)
	case s.a.y != o.a.y:
		return cmp.Compare(s.a.y, o.a.y)
	case s.b != o.b:
		return s.b.compare(o.b)
	}
	return cmp.Compare(s.set, o.set)
}

func (s *strand) south() int64 { return min(s.a.y, s.b.y) }
func (s *strand) north() int64 { return max(s.a.y, s.b.y) }

// reaches reports whether the strand comes between two parallels. Neither
// difference overflows, as frames end far below 2^62 meshes.
func (s *strand) reaches(south, north int64) bool {
	return (north-s.south())|(s.north()-south) >= 0
}

// ends reports whether p is an end of the strand.
func (s strand) ends(p spot) bool { return p == s.a || p == s.b }

// clearOf reports whether two strands neither cross nor pass through the square
// about an end of the other that is none of their own. False may also mean that
// it takes exact arithmetic to find out.
//
// If both ends of one lie to one side of the line of the other, farther off
// than the squares of side mesh about the spots of that line reach, so does all
// of it.
func (s *strand) clearOf(o *strand) bool {
	switch { // neighbours: what matters is their other ends
	case s.a == o.a:
		return s.sideOf(o.b) != 0 && o.sideOf(s.b) != 0
	case s.b == o.b:
		return s.sideOf(o.a) != 0 && o.sideOf(s.a) != 0
	case s.a == o.b:
		return s.sideOf(o.a) != 0 && o.sideOf(s.b) != 0
	case s.b == o.a:
		return s.sideOf(o.b) != 0 && o.sideOf(s.a) != 0
	}
	return s.sideOf(o.a)*s.sideOf(o.b) > 0 || o.sideOf(s.a)*o.sideOf(s.b) > 0
}

// sideOf is +1 if p lies to the left of the line of a strand, -1 if to the
// right, and 0 if it lies so near that the line may pass through the square of
// side mesh about it.
func (s *strand) sideOf(p spot) int {
	alongX, alongY := float64(s.b.x-s.a.x), float64(s.b.y-s.a.y)
	l, r := alongX*float64(p.y-s.a.y), alongY*float64(p.x-s.a.x)
	near := math.Abs(alongX) + math.Abs(alongY) + 4*roundingOfCross*(math.Abs(l)+math.Abs(r))
	switch det := 2 * (l - r); {
	case det > near:
		return 1
	case det < -near:
		return -1
	}
	return 0
}

// passes reports whether the strand passes through the square of side mesh
// about p, which is not one of its ends.
func (s strand) passes(p spot) bool {
	if p.x < s.a.x || p.x > s.b.x || p.y < s.south() || p.y > s.north() {
		return false
	}
	along, off := s.a.to(s.b), s.a.to(p)
	reach := math.Abs(float64(along.x)) + math.Abs(float64(along.y))
	l, r := float64(along.x)*float64(off.y), float64(along.y)*float64(off.x)
	if 2*math.Abs(l-r) > reach+4*roundingOfCross*(math.Abs(l)+math.Abs(r)) {
		return false
	}
	return 2*math.Abs(along.cross(off).float()) < reach
}

// crosses reports whether two strands pass through each other.
func (s strand) crosses(o strand) bool {
	along, other := s.a.to(s.b), o.a.to(o.b)
	return along.turn(s.a.to(o.a))*along.turn(s.a.to(o.b)) < 0 &&
		other.turn(o.a.to(s.a))*other.turn(o.a.to(s.b)) < 0
}

// crossing returns the spot nearest to where two strands cross.
func (s strand) crossing(o strand) spot {
	other := o.a.to(o.b)
	from, to := other.cross(o.a.to(s.a)).float(), other.cross(o.a.to(s.b)).float()
	share := from / (from - to)
	along := s.a.to(s.b)
	return spot{s.a.x + int64(math.Round(float64(along.x)*share)), s.a.y + int64(math.Round(float64(along.y)*share))}
}

// compareAlong orders two spots on the strand from its start to its end.
func (s strand) compareAlong(p, q spot) int {
	along := s.a.to(s.b)
	northward := cmp.Compare(p.y, q.y)
	if along.y < 0 {
		northward = -northward
	}
	eastward := cmp.Compare(p.x, q.x)
	if max(along.y, -along.y) > along.x {
		return cmp.Or(northward, eastward)
	}
	return cmp.Or(eastward, northward)
}
