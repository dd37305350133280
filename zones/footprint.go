package zones

import (
	"slices"

	"github.com/paulmach/orb"

	"example.org/turfplat/geo"
)

// Lines and points are given a breadth to be compared by.
const (
	// lineBreadth, in metres: two lines 3 m broad have half of their ground in
	// common where they run 1 m apart, as two tracings of one fence on two aerial
	// pictures may (common practice, no source).
	lineBreadth = 3
	// pointRadius, in metres: two discs have half of their ground in common if
	// they lie 0.53 radii apart, here 1 m.
	pointRadius = 1.9
)

// footprints compare objects by the ground under them. The first overlay that
// fails is kept in err; what is found after it means nothing.
type footprints struct {
	frame  geo.Frame
	plain  map[*Object]geo.Region
	grown  map[*Object]geo.Region
	bounds map[*Object]geo.Bounds
	err    error
}

func newFootprints(f geo.Frame) *footprints {
	return &footprints{f, make(map[*Object]geo.Region), make(map[*Object]geo.Region), make(map[*Object]geo.Bounds), nil}
}

// of returns the ground of an area, the strip along a line, and the disc round
// a point.
func (p *footprints) of(o *Object) geo.Region {
	return p.remembered(p.plain, o, func() (geo.Region, error) { return outspread(o) })
}

// grownOf is that ground with as much around an area as its edge may be off,
// so that narrow strips and small beds that were walked twice still meet.
func (p *footprints) grownOf(o *Object) geo.Region {
	return p.remembered(p.grown, o, func() (geo.Region, error) {
		if plain := p.of(o); len(o.Lines)+len(o.Points) > 0 || o.Error.Sigma == 0 {
			return plain, nil
		}
		return p.of(o).Buffer(float64(o.Error.Sigma))
	})
}

func (p *footprints) remembered(known map[*Object]geo.Region, o *Object, lay func() (geo.Region, error)) geo.Region {
	if r, ok := known[o]; ok {
		return r
	}
	r, err := lay()
	p.fail(err)
	known[o] = r
	return r
}

func (p *footprints) fail(err error) {
	if p.err == nil {
		p.err = err
	}
}

func outspread(o *Object) (geo.Region, error) {
	var parts []geo.Region
	for _, l := range o.Lines {
		strip, err := l.Stroke(max(o.Width, lineBreadth))
		if err != nil {
			return geo.Region{}, err
		}
		parts = append(parts, strip)
	}
	for _, at := range o.Points {
		parts = append(parts, geo.Disc(at, pointRadius))
	}
	if len(parts) == 0 {
		return o.Ground, nil
	}
	return geo.Union(parts...)
}

// apart reports whether two objects lie so far apart that their footprints
// need not be laid.
func (p *footprints) apart(a, b *Object) bool { return !p.reach(a).Meets(p.reach(b)) }

func (p *footprints) reach(o *Object) geo.Bounds {
	b, ok := p.bounds[o]
	if !ok {
		b = o.bounds().Grown(lineBreadth + 2*float64(o.Error.Sigma))
		p.bounds[o] = b
	}
	return b
}

// shared returns the area that two regions have in common.
func (p *footprints) shared(a, b geo.Region) geo.Area {
	both, err := geo.Intersection(a, b)
	p.fail(err)
	return p.frame.Area(both)
}

// likeness returns the area that two regions have in common as a share of what
// they cover together: 1 if they are the same, 0 if they lie apart.
func (p *footprints) likeness(a, b geo.Region) float64 {
	shared := p.shared(a, b)
	if shared == 0 {
		return 0
	}
	return float64(shared / (p.frame.Area(a) + p.frame.Area(b) - shared))
}

// shift returns how far the edges of two objects lie apart, in metres: the
// ground that only one of them has, spread along the mean of their edges.
func (p *footprints) shift(a, b *Object) float64 {
	f, g := p.of(a), p.of(b)
	edge := float64(p.frame.Perimeter(f)+p.frame.Perimeter(g)) / 2
	if edge == 0 {
		return 0
	}
	return float64(max(0, p.frame.Area(f)+p.frame.Area(g)-2*p.shared(f, g))) / edge
}

// sameTracing reports whether two objects have the very same positions and
// width.
func sameTracing(a, b *Object) bool {
	return a.Width == b.Width && orb.Equal(a.Feature.Geometry, b.Feature.Geometry)
}

// compareTracings orders objects by what they are and where they lie, so that
// the order of a file does not matter.
func compareTracings(a, b *Object) int {
	if c := slices.Compare([]string{string(a.Kind), a.Feature.ID}, []string{string(b.Kind), b.Feature.ID}); c != 0 {
		return c
	}
	p, q := slices.Collect(positions(a.Feature.Geometry)), slices.Collect(positions(b.Feature.Geometry))
	if c := slices.CompareFunc(p, q, func(a, b orb.Point) int { return slices.Compare(a[:], b[:]) }); c != 0 {
		return c
	}
	return slices.Compare(said(a), said(b))
}

// said lists what is said of an object.
func said(o *Object) []string {
	var all []string
	for _, key := range o.Feature.Properties.Keys() {
		raw, _ := o.Feature.Properties.Raw(key)
		all = append(all, key, string(raw))
	}
	return all
}
