package sun

import (
	"cmp"
	"slices"

	"example.org/turfplat/geo"
)

// A corner is a corner of a body, with its height above the sample.
type corner struct {
	geo.XY
	height float64
}

// A solid is the convex body of its corners. Its shadow is the hull of theirs.
type solid []corner

func (s solid) cast(r *raster, reach geo.XY) {
	r.points = r.points[:0]
	for _, c := range s {
		r.points = append(r.points, shadowOf(c.XY, c.height, reach))
	}
	r.hull = appendHull(r.hull[:0], r.points)
	r.convex(r.hull)
}

// appendHull appends the convex hull of points, counter-clockwise (Andrew
// 1979, Inf. Process. Lett. 9:216-219). It sorts the points.
func appendHull(hull, points []geo.XY) []geo.XY {
	slices.SortFunc(points, func(a, b geo.XY) int { return cmp.Or(cmp.Compare(a.X, b.X), cmp.Compare(a.Y, b.Y)) })
	for _, p := range points {
		hull = appendTurn(hull, 0, p)
	}
	start := len(hull) - 1
	for _, p := range slices.Backward(points) {
		hull = appendTurn(hull, start, p)
	}
	return hull[:max(1, len(hull)-1)]
}

// appendTurn appends a point to a chain that turns left from start on.
func appendTurn(chain []geo.XY, start int, p geo.XY) []geo.XY {
	for len(chain) >= start+2 && cross(chain[len(chain)-2], chain[len(chain)-1], p) <= 0 {
		chain = chain[:len(chain)-1]
	}
	return append(chain, p)
}

// cross is twice the area of the triangle a, b, c; positive to the left.
func cross(a, b, c geo.XY) float64 {
	return (b.X-a.X)*(c.Y-a.Y) - (b.Y-a.Y)*(c.X-a.X)
}
