package render

import (
	"cmp"
	"container/heap"
	"math"
)

// pole returns the point of an area that is farthest from its edge, the pole
// of inaccessibility (Garcia-Castellanos and Lombardo 2007, Scottish
// Geographical Journal 123:227), and its distance from the edge, both within
// tolerance millimetres. An area of no extent has none: the distance is zero.
//
// The area is searched by quarters: squares that cannot hold a better point
// than the best one known are set aside.
func pole(area polygon, tolerance float64) (at Point, clearance float64) {
	bounds := area.bounds()
	narrow, wide := min(bounds.width(), bounds.height()), max(bounds.width(), bounds.height())
	if !(narrow > 0) || !bounds.min.finite() || !bounds.max.finite() {
		return bounds.min, 0
	}
	const most = 64 // squares to begin with, so that a needle is not cut to crumbs
	side := max(narrow, wide/most)
	tolerance = max(tolerance, side/10_000)
	search := poleSearch{area: area, inside: bandsOf(area)}
	for x := bounds.min.X; x < bounds.max.X; x += side {
		for y := bounds.min.Y; y < bounds.max.Y; y += side {
			search.try(Point{x + side/2, y + side/2}, side/2, tolerance)
		}
	}
	for len(search.open) > 0 {
		square := heap.Pop(&search.open).(square)
		if square.reach-search.best.clearance <= tolerance {
			break
		}
		h := square.half / 2
		for _, d := range [...]Point{{-h, -h}, {h, -h}, {-h, h}, {h, h}} {
			search.try(square.center.plus(d.X, d.Y), h, tolerance)
		}
	}
	return search.best.center, max(0, search.best.clearance)
}

type poleSearch struct {
	area   polygon
	inside bands
	open   squares
	best   square
}

// square is a part of the area still to be searched.
type square struct {
	center    Point
	half      float64 // half its side
	clearance float64 // of the centre; negative outside the area
	reach     float64 // no point of the square has a larger clearance
}

func (s *poleSearch) try(center Point, half, tolerance float64) {
	q := square{center: center, half: half, clearance: s.clearance(center)}
	q.reach = q.clearance + half*math.Sqrt2
	if q.clearance > s.best.clearance || s.best.half == 0 {
		s.best = q
	}
	if q.reach-s.best.clearance > tolerance {
		heap.Push(&s.open, q)
	}
}

func (s *poleSearch) clearance(q Point) float64 {
	nearest := math.Inf(1)
	s.area.edges(func(a, b Point) { nearest = min(nearest, squaredDistance(q, a, b)) })
	if s.inside.holds(q) {
		return math.Sqrt(nearest)
	}
	return -math.Sqrt(nearest)
}

// squaredDistance is the square of the distance of q from the edge a, b.
func squaredDistance(q, a, b Point) float64 {
	dx, dy := b.X-a.X, b.Y-a.Y
	if length := dx*dx + dy*dy; length > 0 {
		t := ((q.X-a.X)*dx + (q.Y-a.Y)*dy) / length
		t = max(0, min(1, t))
		a.X, a.Y = a.X+t*dx, a.Y+t*dy
	}
	return (q.X-a.X)*(q.X-a.X) + (q.Y-a.Y)*(q.Y-a.Y)
}

// squares is a heap, the farthest reach on top; ties go by place, so that the
// search is the same every time.
type squares []square

func (s squares) Len() int      { return len(s) }
func (s squares) Swap(i, j int) { s[i], s[j] = s[j], s[i] }
func (s squares) Less(i, j int) bool {
	return cmp.Or(cmp.Compare(s[j].reach, s[i].reach),
		cmp.Compare(s[i].center.Y, s[j].center.Y), cmp.Compare(s[i].center.X, s[j].center.X)) < 0
}
func (s *squares) Push(x any) { *s = append(*s, x.(square)) }
func (s *squares) Pop() any {
	old := *s
	last := old[len(old)-1]
	*s = old[:len(old)-1]
	return last
}
