package geo

import "math"

// skirt is how far, in metres, a band goes beyond the edges that it follows, so
// that rounding leaves nothing beside it.
const skirt = 2 * grain

// Strips parts a region into the ground that lies between two edges less than
// narrow metres apart, and all other ground. A corner is no strip: ground that
// widens by more than 1 in 10 is not narrow. Strips no wider than rounding are
// in neither.
func (r Region) Strips(narrow float64) (strips, rest Region, err error) {
	b := newBorder(r, narrow*math.Hypot(1, steepest)+grain)
	defer b.Release()
	facings, _ := b.facings(narrow)
	laid := []Region{r}
	for _, f := range facings {
		if band, ok := b.between(f); ok {
			laid = append(laid, band)
		}
	}
	if len(laid) == 1 {
		return Region{}, r, nil
	}
	o, err := Lay(laid...)
	if err != nil {
		return Region{}, r, err
	}
	defer o.Release()
	parts := o.Partition(2, func(holders []int) int {
		switch {
		case holders[0] != 0:
			return -1
		case len(holders) > 1:
			return 0
		}
		return 1
	})
	return parts[0], parts[1], nil
}

// between returns the band between two edges that face each other, if there is
// ground of the region between them and not a gap in it.
func (b *Border) between(f facing) (Region, bool) {
	e, o := b.edges[f.edge], b.edges[f.other]
	from, to := e.at(f.part.from), e.at(f.part.to)
	left := e.left()
	across := func(p XY) float64 { return o.a.Minus(p).Cross(o.b.Minus(o.a)) / left.Cross(o.b.Minus(o.a)) }
	near, far := across(from), across(to)
	if near+far < -2*grain { // ground lies to the left of each edge
		return Region{}, false
	}
	return band(from, to, left, skirt, near+skirt, far+skirt), true
}

// Flank returns the ground within d metres of the edges of r that run along
// edges of o, as in Contact; no farther than these.
func (r Region) Flank(o Region, d float64) (Region, error) {
	of, along := NewBorder(r), NewBorder(o)
	defer of.Release()
	defer along.Release()
	s := frontSearches.Get().(*frontSearch)
	s.of, s.along, s.distance = of, along, d
	defer s.release()
	var bands []Region
	for i, e := range of.edges {
		if s.share(i, e) == 0 {
			continue
		}
		for _, part := range s.spans {
			bands = append(bands, band(e.at(part.from), e.at(part.to), e.left(), d, d, d))
		}
	}
	return Union(bands...)
}

// left is the direction square to an edge, to the left of its way.
func (e edge) left() XY {
	way := e.b.Minus(e.a)
	return XY{-way.Y, way.X}.Times(1 / way.Norm())
}

// band returns the ground beside the way from a to b: so far to its right, and
// to its left as far as is told for either end.
func band(a, b, left XY, right, leftA, leftB float64) Region {
	return regionOf([]Polygon{{Shell: Ring{
		a.Minus(left.Times(right)), b.Minus(left.Times(right)), b.Plus(left.Times(leftB)), a.Plus(left.Times(leftA)),
	}}})
}
