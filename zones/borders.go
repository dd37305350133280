package zones

import (
	"slices"

	"example.org/turfplat/geo"
)

// Borders are those of the parts of a plat, made ready once for all that is
// measured along them.
type borders struct {
	frame   geo.Frame
	plat    *Plat
	outline []*geo.Border // one, or none
	covers  []*geo.Border // in the order of the ground's
	zones   []*geo.Border // in order, unless there is only one, which is the turf
}

func (p *Plat) borders() borders {
	b := borders{frame: p.Site.Frame, plat: p, covers: make([]*geo.Border, 0, len(p.Ground.Covers))}
	if !p.Ground.Outline.Empty() {
		b.outline = append(b.outline, geo.NewBroadBorder(p.Ground.Outline, touching))
	}
	for _, c := range p.Ground.Covers {
		b.covers = append(b.covers, geo.NewBroadBorder(c.Region, touching))
	}
	if len(p.Zones) > 1 {
		for _, z := range p.Zones {
			b.zones = append(b.zones, geo.NewBroadBorder(z.Region, touching))
		}
	}
	return b
}

// all are the borders of the outline, the covers and the zones, in this order.
func (b borders) all() []*geo.Border { return slices.Concat(b.outline, b.covers, b.zones) }

func (b borders) release() {
	for _, border := range b.all() {
		border.Release()
	}
}

// none is the border of no ground.
var none = geo.NewBorder(geo.Region{})

// of is the border of a cover, which may be none.
func (b borders) of(k Kind) *geo.Border {
	for i, c := range b.plat.Ground.Covers {
		if c.Kind == k {
			return b.covers[i]
		}
	}
	return none
}
