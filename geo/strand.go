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
}

// strandOf returns the edge of a set from p to q.
func strandOf(set int, p, q spot) strand {
	if q.before(p) {
		return strand{q, p, int32(set), -1, true}
	}
	return strand{p, q, int32(set), 1, true}
}

func compareStrands(s, o strand) int {
	return cmp.Or(s.a.compare(o.a), s.b.compare(o.b), cmp.Compare(s.set, o.set))
}

func (s strand) south() int64 { return min(s.a.y, s.b.y) }
func (s strand) north() int64 { return max(s.a.y, s.b.y) }

// ends reports whether p is an end of the strand.
func (s strand) ends(p spot) bool { return p == s.a || p == s.b }

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
