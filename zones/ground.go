package zones

import (
	"cmp"
	"slices"

	"example.org/turfplat/geo"
)

// Ground is the partition of a property's ground into covers.
type Ground struct {
	Outline geo.Region // empty if the site has none
	Covers  []Cover    // in the order of CoverKinds, those there are
	Unknown geo.Region // inside the outline and under no cover

	Traced  TracedTurf
	Parcels []Parcel // each object's own part of the ground, highest first

	traces []geo.Trace // the edges of all objects, highest cover first, outlines last
}

// A Cover is all ground of one kind, after higher ones are taken out.
type Cover struct {
	Kind   Kind
	Region geo.Region
}

// TracedTurf is the turf as drawn, before anything is taken off it.
type TracedTurf struct {
	From    Kind // Turf or Outline
	All     geo.Region
	Inside  geo.Region // inside the outline
	Outside geo.Region
}

// A Parcel is what one object covers after higher ones are taken out, and
// what of that it takes off the traced turf.
type Parcel struct {
	Object  *Object
	Region  geo.Region
	OffTurf geo.Region
}

// Cover returns the ground of a kind.
func (g *Ground) Cover(k Kind) geo.Region {
	for _, c := range g.Covers {
		if c.Kind == k {
			return c.Region
		}
	}
	return geo.Region{}
}

// layGround resolves all overlaps, once.
func (s *Site) layGround() (*Ground, error) {
	g := new(Ground)
	var err error
	if g.Outline, err = union(s.Of(Outline)); err != nil {
		return nil, err
	}
	covering := s.covering()
	if err := g.layTracedTurf(covering); err != nil {
		return nil, err
	}
	if err := g.layParcels(covering); err != nil {
		return nil, err
	}
	if err := g.layCovers(); err != nil {
		return nil, err
	}
	g.traces = traces(covering, s.Of(Outline))
	return g, nil
}

// covering returns the objects that cover ground, the one that wins an
// overlap first: by kind, then the smaller, then by id.
func (s *Site) covering() []*Object {
	var covering []*Object
	for _, o := range s.Objects {
		if o.Cover != "" && !o.Ground.Empty() {
			covering = append(covering, o)
		}
	}
	sortObjects(s.Frame, covering)
	return covering
}

// sortObjects brings objects into the order in which they win overlaps,
// whatever the order they were read in.
func sortObjects(f geo.Frame, objects []*Object) {
	areas := make(map[*Object]geo.Area, len(objects))
	for _, o := range objects {
		areas[o] = f.Area(o.Ground)
	}
	slices.SortStableFunc(objects, func(a, b *Object) int {
		return cmp.Or(cmp.Compare(a.Cover.rank(), b.Cover.rank()), cmp.Compare(areas[a], areas[b]), cmp.Compare(a.ID, b.ID))
	})
}

func union(objects []*Object) (geo.Region, error) {
	regions := make([]geo.Region, len(objects))
	for i, o := range objects {
		regions[i] = o.Ground
	}
	return geo.Union(regions...)
}

func (g *Ground) layTracedTurf(covering []*Object) error {
	var turf []*Object
	for _, o := range covering {
		if o.Cover == Turf {
			turf = append(turf, o)
		}
	}
	if len(turf) == 0 {
		g.Traced = TracedTurf{From: Outline, All: g.Outline, Inside: g.Outline}
		return nil
	}
	all, err := union(turf)
	if err != nil {
		return err
	}
	g.Traced = TracedTurf{From: Turf, All: all, Inside: all}
	if g.Outline.Empty() {
		return nil
	}
	if g.Traced.Inside, err = geo.Intersection(all, g.Outline); err != nil {
		return err
	}
	g.Traced.Outside, err = geo.Difference(all, g.Outline)
	return err
}

// layParcels gives each object but turf the ground that no higher one holds.
func (g *Ground) layParcels(covering []*Object) error {
	var clipped []geo.Region
	for _, o := range covering {
		if o.Cover == Turf {
			continue
		}
		own := o.Ground
		var err error
		if !g.Outline.Empty() {
			if own, err = geo.Intersection(own, g.Outline); err != nil {
				return err
			}
		}
		left, err := less(own, clipped)
		if err != nil {
			return err
		}
		off, err := geo.Intersection(left, g.Traced.Inside)
		if err != nil {
			return err
		}
		clipped = append(clipped, own)
		g.Parcels = append(g.Parcels, Parcel{o, left, off})
	}
	return nil
}

// less takes from a region all others that meet it.
func less(r geo.Region, others []geo.Region) (geo.Region, error) {
	var meeting []geo.Region
	for _, o := range others {
		if o.Bounds().Meets(r.Bounds()) {
			meeting = append(meeting, o)
		}
	}
	taken, err := geo.Union(meeting...)
	if err != nil {
		return geo.Region{}, err
	}
	return geo.Difference(r, taken)
}

// layCovers joins the parcels of each kind, and finds the turf and the
// unknown ground that is left.
func (g *Ground) layCovers() error {
	var taken []geo.Region
	for _, k := range CoverKinds {
		var own []geo.Region
		for _, p := range g.Parcels {
			if p.Object.Cover == k {
				own = append(own, p.Region)
			}
		}
		cover, err := geo.Union(own...)
		if err != nil {
			return err
		}
		if k == Turf {
			if cover, err = less(g.Traced.Inside, taken); err != nil {
				return err
			}
		}
		if !cover.Empty() || k == Turf {
			g.Covers = append(g.Covers, Cover{k, cover})
			taken = append(taken, cover)
		}
	}
	if g.Outline.Empty() || g.Traced.From == Outline {
		return nil
	}
	var err error
	g.Unknown, err = less(g.Outline, taken)
	return err
}

// traces lists the edges of objects in the order in which they count.
func traces(covering, outlines []*Object) []geo.Trace {
	var all []geo.Trace
	for _, o := range slices.Concat(covering, outlines) {
		all = append(all, geo.Trace{Rings: o.traced, Error: o.Error})
	}
	return all
}
