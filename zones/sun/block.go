package sun

import "example.org/turfplat/geo"

// A block has upright sides over a convex ring, counter-clockwise, from a base
// to a level top, both above the sample.
type block struct {
	ring      geo.Ring
	base, top float64
}

// cast walks round the shadow: along that of the top where the sides face away
// from the sun, along that of the base where they face it.
func (b block) cast(r *raster, reach geo.XY) {
	r.hull = r.hull[:0]
	n := len(b.ring)
	before := b.rim(b.ring[n-1], b.ring[0], reach)
	for i, p := range b.ring {
		after := b.rim(p, b.ring[(i+1)%n], reach)
		r.hull = append(r.hull, shadowOf(p, before, reach))
		if after != before {
			r.hull = append(r.hull, shadowOf(p, after, reach))
		}
		before = after
	}
	r.convex(r.hull)
}

func (b block) rim(from, to, reach geo.XY) float64 {
	if facesAway(from, to, reach) {
		return b.top
	}
	return b.base
}

// facesAway reports whether the side of a body that stands to the left of it
// faces away from the sun.
func facesAway(from, to, reach geo.XY) bool {
	return (to.Y-from.Y)*reach.X-(to.X-from.X)*reach.Y > 0
}

// A hall has upright sides over rings of any form, the ground on their left:
// shells counter-clockwise, courtyards clockwise.
type hall struct {
	rings     []geo.Ring
	base, top float64 // above the sample
}

// cast shades the base's shadow and what the sides that face away from the sun
// sweep from there: a ray that misses these, and the base, misses all.
func (h hall) cast(r *raster, reach geo.XY) {
	r.plan(h.rings, geo.XY{X: h.base * reach.X, Y: h.base * reach.Y})
	for _, ring := range h.rings {
		from := ring[len(ring)-1]
		for _, to := range ring {
			if facesAway(from, to, reach) {
				r.hull = append(r.hull[:0], shadowOf(from, h.base, reach), shadowOf(to, h.base, reach), shadowOf(to, h.top, reach), shadowOf(from, h.top, reach))
				r.convex(r.hull)
			}
			from = to
		}
	}
}
