package geo

import (
	"slices"
	"sync"
)

// An exposure is a part of a traced edge that bounds the region. Outward is
// +1 if the region grows when the edge moves to its right, else -1.
type exposure struct {
	edge    int
	part    span
	outward float64
}

// Claims tell which parts of the border of a region come from which trace: the
// first that lies along them.
type claims struct {
	border *Border
	free   []freedom // of the border's edges
	left   int       // how many of them are not yet claimed whole

	inReach  []int32 // reused: edges that a ring may come near, in order, unless the border has rows
	near     []int32 // those that an edge may come near
	found    []exposure
	gradient []XY
	share    []float64
}

// A freedom is what of an edge is not yet taken.
type freedom struct {
	touched bool // else all of it is free
	parts   []span
}

// spans are those that are free.
func (f *freedom) spans() []span {
	if f.touched {
		return f.parts
	}
	return []span{{0, 1}}
}

// take makes a part no longer free.
func (f *freedom) take(part span) {
	f.parts, f.touched = without(f.spans(), part), true
}

// claimsNotInUse have room to be used again.
var claimsNotInUse = sync.Pool{New: func() any { return new(claims) }}

// newClaims returns claims to a border. They should be released when all that
// was claimed was looked at.
func newClaims(b *Border) *claims {
	c := claimsNotInUse.Get().(*claims)
	c.border, c.free, c.left = b, blank(c.free, len(b.edges)), len(b.edges)
	return c
}

func (c *claims) release() {
	c.border = nil
	claimsNotInUse.Put(c)
}

// claim finds the parts of a ring's edges that bound the region. They are good
// until the next claim.
func (c *claims) claim(ring Ring, bounds Bounds) []exposure {
	const same = 1e-5 // m: overlay rounds to 1e-9, a vertex put on an edge is snapped to 1e-7
	c.found = c.found[:0]
	search := c.border.region.Bounds()
	if c.left == 0 || !bounds.Grown(same).Meets(search) {
		return nil
	}
	c.reach(bounds.Grown(same))
	for i, a := range ring {
		e := edge{a, ring.next(i)}
		if box := e.bounds().Grown(same); box.Meets(search) {
			c.claimEdge(i, e, box, same)
		}
	}
	return c.found
}

// reach lists the edges of a border without rows that are not yet claimed whole
// and come into a box.
func (c *claims) reach(box Bounds) {
	c.inReach = c.inReach[:0]
	if len(c.border.list) > 0 {
		return
	}
	for j := range c.border.boxes {
		if f := &c.free[j]; c.border.boxes[j].near(&box) && (!f.touched || len(f.parts) > 0) {
			c.inReach = append(c.inReach, int32(j))
		}
	}
}

// claimEdge finds what edge i of a ring bounds: the border's edge with the same
// ends, or else all that run along it within a distance.
func (c *claims) claimEdge(i int, e edge, box Bounds, distance float64) {
	if j := c.border.same(e); j >= 0 {
		c.takeWhole(i, e, c.border.edges[j], &c.free[j])
		return
	}
	near := c.inReach
	if len(c.border.list) > 0 {
		c.near = c.border.near(e, distance, c.near[:0])
		slices.Sort(c.near) // so that sums do not depend on rows
		c.near = slices.Compact(c.near)
		near = c.near
	}
	for _, j := range near {
		if !c.border.boxes[j].near(&box) {
			continue
		}
		o := c.border.edges[j]
		if part, ok := o.alongside(e, distance); ok {
			c.take(i, e, o, part, &c.free[j])
		}
	}
}

// takeWhole claims all that is free of the border's edge o, which has the same
// ends as edge i of a ring.
func (c *claims) takeWhole(i int, e, o edge, free *freedom) {
	if free.touched {
		c.take(i, e, o, span{0, 1}, free)
		return
	}
	free.touched = true
	c.left--
	x := exposure{edge: i, part: span{0, 1}, outward: 1}
	if e != o {
		x.outward = -1
	}
	c.found = append(c.found, x)
}

// take claims a part of the border's edge o for edge i of a ring.
func (c *claims) take(i int, e, o edge, part span, free *freedom) {
	if !free.touched {
		free.touched = true
		if part.from > 0 {
			free.parts = append(free.parts, span{0, part.from})
		}
		if part.to < 1 {
			free.parts = append(free.parts, span{part.to, 1})
		}
		c.found = append(c.found, exposed(i, e, o, part))
		c.claimed(free)
		return
	}
	if len(free.parts) == 0 {
		return
	}
	for _, s := range free.parts {
		taken := span{max(s.from, part.from), min(s.to, part.to)}
		if taken.from < taken.to {
			c.found = append(c.found, exposed(i, e, o, taken))
		}
	}
	free.parts = without(free.parts, part)
	c.claimed(free)
}

// claimed counts an edge of which a part was claimed if that was the last.
func (c *claims) claimed(free *freedom) {
	if len(free.parts) == 0 {
		c.left--
	}
}

// exposed turns a part of the region's edge o into one of the traced edge e.
func exposed(i int, e, o edge, part span) exposure {
	u := e.b.Minus(e.a)
	along := func(p XY) float64 { return min(1, max(0, p.Minus(e.a).Dot(u)/u.Dot(u))) }
	x := exposure{edge: i, part: span{along(o.at(part.from)), along(o.at(part.to))}, outward: 1}
	if x.part.from > x.part.to {
		x.part.from, x.part.to = x.part.to, x.part.from
		x.outward = -1
	}
	return x
}
