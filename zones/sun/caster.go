package sun

import (
	"slices"

	"example.org/turfplat/geo"
)

// A caster is an obstacle ready to cast shadows.
type caster struct {
	pass    Pass
	bodies  []body
	several bool // shadows may overlap each other
}

func (s Scene) casters() []caster {
	casters := make([]caster, len(s.Obstacles))
	for i, o := range s.Obstacles {
		bodies := o.Shape.bodies()
		several := len(bodies) > 1 || slices.ContainsFunc(bodies, func(b body) bool { _, ok := b.(hall); return ok })
		casters[i] = caster{o.Pass, bodies, several}
	}
	return casters
}

// cast shades what lies in the obstacle's shadow, once however many of its
// parts shade it.
func (c caster) cast(r *raster, reach geo.XY, inLeaf float64) {
	r.pass = c.pass.when(inLeaf)
	joined := c.several && r.pass > 0 // under opaque ones it makes no difference
	if joined {
		r.mark()
	}
	for _, body := range c.bodies {
		body.cast(r, reach)
	}
	if joined {
		r.unite()
	}
}
