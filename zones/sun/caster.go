package sun

import "example.org/turfplat/geo"

// A caster is an obstacle ready to cast shadows.
type caster struct {
	pass   Pass
	bodies []body
}

func (s Scene) casters() []caster {
	casters := make([]caster, len(s.Obstacles))
	for i, o := range s.Obstacles {
		casters[i] = caster{o.Pass, o.Shape.bodies()}
	}
	return casters
}

// cast shades what lies in the obstacle's shadow.
func (c caster) cast(r *raster, reach geo.XY, inLeaf float64) {
	r.pass = c.pass.when(inLeaf)
	parts := len(c.bodies) > 1 && r.pass > 0
	if parts {
		r.mark()
	}
	for _, body := range c.bodies {
		body.cast(r, reach)
	}
	if parts {
		r.unite()
	}
}
