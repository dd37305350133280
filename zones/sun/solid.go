package sun

import (
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
	r.hull = geo.AppendHull(r.hull[:0], r.points)
	r.convex(r.hull)
}

// cross is twice the area of the triangle a, b, c; positive to the left.
func cross(a, b, c geo.XY) float64 {
	return (b.X-a.X)*(c.Y-a.Y) - (b.Y-a.Y)*(c.X-a.X)
}
