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
	OffTurf []OffTurf // what each object but turf takes off the traced turf, highest first

	traces geo.Traces // the edges of all objects, highest cover first, outlines last
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

// OffTurf is how much an object takes off the traced turf.
type OffTurf struct {
	Object *Object
	Area   geo.Area
}

// A Parcel is ground that one object has after higher ones are taken out.
type Parcel struct {
	Object *Object
	Region geo.Region
}

// Parcels returns what each object but turf has to itself, highest first.
func (s *Site) Parcels() ([]Parcel, error) {
	l, err := s.layObjects()
	if err != nil {
		return nil, err
	}
	defer l.overlay.Release()
	return l.parcels(func([]int) bool { return true }), nil
}

// ParcelsOffTurf returns what each object but turf takes off the traced turf,
// highest first.
func (s *Site) ParcelsOffTurf() ([]Parcel, error) {
	l, err := s.layObjects()
	if err != nil {
		return nil, err
	}
	defer l.overlay.Release()
	return l.parcels(l.traced), nil
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

// layGround resolves all overlaps, once: it lays all objects on each other.
func (s *Site) layGround() (*Ground, error) {
	l, err := s.layObjects()
	if err != nil {
		return nil, err
	}
	defer l.overlay.Release()
	g := &Ground{Outline: l.outline(), Traced: l.tracedTurf(), traces: traces(l.objects)}
	g.Covers, g.Unknown = l.covers(g.Traced.From)
	g.OffTurf = l.offTurf(s.Frame)
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
		if c := cmp.Or(cmp.Compare(a.Cover.rank(), b.Cover.rank()), cmp.Compare(areas[a], areas[b])); c != 0 {
			return c
		}
		return compareStanding(a, b)
	})
}

// squareCentimetres rounds an area, so that rounding of coordinates does not
// decide which of two is the larger.
func squareCentimetres(a geo.Area) float64 { return math.Round(float64(a) * 1e4) }

// compareStanding orders objects by id, and those without one by where they
// lie, so that the order of the file does not matter.
func compareStanding(a, b *Object) int {
	if c := cmp.Compare(a.Feature.ID, b.Feature.ID); c != 0 {
		return c
	}
	p, q := a.Feature.Geometry.Bound(), b.Feature.Geometry.Bound()
	return cmp.Or(slices.Compare(p.Min[:], q.Min[:]), slices.Compare(p.Max[:], q.Max[:]))
}

func union(objects []*Object) (geo.Region, error) {
	regions := make([]geo.Region, len(objects))
	for i, o := range objects {
		regions[i] = o.Ground
	}
	return geo.Union(regions...)
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
func traces(objects []*Object) geo.Traces {
	all := make([]geo.Trace, len(objects))
	for i, o := range objects {
		all[i] = geo.Trace{Rings: o.traced, Error: o.Error}
	}
	return geo.NewTraces(all)
}
