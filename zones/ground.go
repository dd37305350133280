package zones

import (
	"cmp"
	"math"
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

// Property returns the ground that the site is: its outline, else all that is
// covered.
func (g *Ground) Property() (geo.Region, error) {
	if !g.Outline.Empty() {
		return g.Outline, nil
	}
	var covers []geo.Region
	for _, c := range g.Covers {
		covers = append(covers, c.Region)
	}
	return geo.Union(covers...)
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
	if err := g.layCovers(covering); err != nil {
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
	areas := make(map[*Object]float64, len(objects))
	for _, o := range objects {
		areas[o] = squareCentimetres(f.Area(o.Ground))
	}
	slices.SortStableFunc(objects, func(a, b *Object) int {
		return cmp.Or(cmp.Compare(a.Cover.rank(), b.Cover.rank()), cmp.Compare(areas[a], areas[b]), compareStanding(a, b))
	})
}

// squareCentimetres rounds an area, so that rounding of coordinates does not
// decide which of two is the larger.
func squareCentimetres(a geo.Area) float64 { return math.Round(float64(a) * 1e4) }

// compareStanding orders objects by id, and those without one by where they
// lie, so that the order of the file does not matter.
func compareStanding(a, b *Object) int {
	p, q := a.Feature.Geometry.Bound(), b.Feature.Geometry.Bound()
	return cmp.Or(cmp.Compare(a.Feature.ID, b.Feature.ID), slices.Compare(p.Min[:], q.Min[:]), slices.Compare(p.Max[:], q.Max[:]))
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

// layCovers finds the ground of each kind and of each object, and what is left
// of the outline.
func (g *Ground) layCovers(covering []*Object) error {
	from := 0
	for _, k := range CoverKinds {
		to := from
		for to < len(covering) && covering[to].Cover == k {
			to++
		}
		if from == to {
			continue
		}
		cover, err := g.layCover(k, covering, from, to)
		if err != nil {
			return err
		}
		if !cover.Empty() || k == Turf {
			g.Covers = append(g.Covers, Cover{k, cover})
		}
		from = to
	}
	rest, err := g.left(g.Outline, covering)
	if g.Traced.From == Outline {
		g.Covers = append(g.Covers, Cover{Turf, rest})
	} else {
		g.Unknown = rest
	}
	return err
}

// layCover returns the ground of the objects of a kind, which are those in
// from..to, and lays the parcel of each.
func (g *Ground) layCover(k Kind, covering []*Object, from, to int) (geo.Region, error) {
	for i := from; i < to && k != Turf; i++ {
		own, err := g.left(covering[i].Ground, covering[:i])
		if err != nil {
			return geo.Region{}, err
		}
		off := own
		if g.Traced.From == Turf || g.Traced.All.Empty() {
			if off, err = geo.Intersection(own, g.Traced.All); err != nil {
				return geo.Region{}, err
			}
		}
		g.Parcels = append(g.Parcels, Parcel{covering[i], own, off})
	}
	if k != Turf && to-from == 1 {
		return g.Parcels[len(g.Parcels)-1].Region, nil
	}
	all, err := union(covering[from:to])
	if err != nil {
		return geo.Region{}, err
	}
	return g.left(all, covering[:from])
}

// left returns the part of a region that lies inside the outline and under
// none of the objects.
func (g *Ground) left(r geo.Region, above []*Object) (geo.Region, error) {
	left, err := less(r, above)
	if err != nil || g.Outline.Empty() {
		return left, err
	}
	return geo.Intersection(left, g.Outline)
}

// less takes the ground of objects off a region. It is best used on ground as
// it was traced: what overlay gave has rounded corners, and overlaid again
// meets edges that all but coincide.
func less(r geo.Region, objects []*Object) (geo.Region, error) {
	var meeting []*Object
	for _, o := range objects {
		if o.Ground.Bounds().Meets(r.Bounds()) {
			meeting = append(meeting, o)
		}
	}
	taken, err := union(meeting)
	if err != nil {
		return geo.Region{}, err
	}
	return geo.Difference(r, taken)
}

// traces lists the edges of objects in the order in which they count.
func traces(covering, outlines []*Object) []geo.Trace {
	var all []geo.Trace
	for _, o := range slices.Concat(covering, outlines) {
		all = append(all, geo.Trace{Rings: o.traced, Error: o.Error})
	}
	return all
}
