package zones

import "example.org/turfplat/geo"

// Borders are those of the covers of a plat, made ready once for all that is
// measured along them.
type borders struct {
	frame  geo.Frame
	covers map[Kind]*geo.Border
}

func (p *Plat) borders() borders {
	b := borders{p.Site.Frame, make(map[Kind]*geo.Border)}
	for _, c := range p.Ground.Covers {
		b.covers[c.Kind] = geo.NewBorder(c.Region)
	}
	return b
}

func (b borders) release() {
	for _, border := range b.covers {
		border.Release()
	}
}

// none is the border of no ground.
var none = geo.NewBorder(geo.Region{})

// of is the border of a cover, which may be none.
func (b borders) of(k Kind) *geo.Border {
	if border, there := b.covers[k]; there {
		return border
	}
	return none
}
