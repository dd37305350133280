package geo

import (
	"slices"
)

// A Polygon is a connected piece of ground: a counter-clockwise shell and
// clockwise holes inside it, none of which cross themselves or each other.
type Polygon struct {
	Shell Ring
	Holes []Ring
}

// Rings returns the shell, then the holes.
func (p Polygon) Rings() []Ring { return append([]Ring{p.Shell}, p.Holes...) }

func (p Polygon) area() float64 {
	sum := p.Shell.signedArea()
	for _, h := range p.Holes {
		sum += h.signedArea()
	}
	return sum
}

func (p Polygon) locate(q XY) side {
	at := p.Shell.locate(q)
	for _, h := range p.Holes {
		if at != inside {
			break
		}
		switch h.locate(q) {
		case inside:
			at = outside
		case onEdge:
			at = onEdge
		}
	}
	return at
}

// A Region is a part of a frame: any number of polygons whose insides do not
// overlap. The zero value is empty. A region never changes.
type Region struct {
	polygons []Polygon
	bounds   Bounds
	clear    bool // its edges are known to keep clear of each other, so that an overlay need not compare them
}

// regionOf returns the region of polygons that are known to be apart, in an
// order that depends on the ground alone.
func regionOf(polygons []Polygon) Region {
	wound := make([]Polygon, len(polygons))
	for i, p := range polygons {
		wound[i].Shell = p.Shell.wound(true)
		if len(p.Holes) > 0 {
			wound[i].Holes = make([]Ring, len(p.Holes))
		}
		for j, h := range p.Holes {
			wound[i].Holes[j] = h.wound(false)
		}
	}
	return regionOfWound(wound)
}

// regionOfWound is regionOf for polygons whose rings are wound already; they
// become the region's.
func regionOfWound(polygons []Polygon) Region {
	if len(polygons) == 0 {
		return Region{}
	}
	bounds := noBounds
	for _, p := range polygons {
		slices.SortFunc(p.Holes, compareRings)
		bounds = bounds.Union(p.Shell.bounds())
	}
	slices.SortFunc(polygons, func(a, b Polygon) int { return compareRings(a.Shell, b.Shell) })
	return Region{polygons: polygons, bounds: bounds}
}

func compareRings(a, b Ring) int { return slices.CompareFunc(a, b, compareXY) }

// Polygons returns the pieces of the region; do not change them.
func (r Region) Polygons() []Polygon { return r.polygons }

// Empty reports whether the region holds nothing.
func (r Region) Empty() bool { return len(r.polygons) == 0 }

// Bounds returns the rectangle round the region.
func (r Region) Bounds() Bounds {
	if r.Empty() {
		return noBounds
	}
	return r.bounds
}

// Pieces returns each connected piece as a region of its own.
func (r Region) Pieces() []Region {
	if len(r.polygons) == 1 {
		return []Region{r}
	}
	pieces := make([]Region, len(r.polygons))
	for i, p := range r.polygons {
		pieces[i] = Region{polygons: []Polygon{p}, bounds: p.Shell.bounds(), clear: r.clear}
	}
	return pieces
}

// Contains reports whether p lies in the region or on its edge.
func (r Region) Contains(p XY) bool {
	return r.Bounds().holds(p) && slices.ContainsFunc(r.polygons, func(g Polygon) bool { return g.locate(p) != outside })
}

// PlanarArea is the area in the plane of the frame, m2: that on the ellipsoid of
// what edges straight in the frame bound, however wide it is.
func (r Region) PlanarArea() float64 {
	var sum float64
	for _, p := range r.polygons {
		sum += p.area()
	}
	return sum
}

// Centroid returns the centre of gravity; it may lie outside the region. The
// region must not be empty.
func (r Region) Centroid() XY {
	origin := r.bounds.Min
	var sum XY
	var double float64
	for _, p := range r.polygons {
		for _, ring := range p.Rings() {
			for i, a := range ring {
				a, b := a.Minus(origin), ring.next(i).Minus(origin)
				c := a.Cross(b)
				sum = sum.Plus(a.Plus(b).Times(c))
				double += c
			}
		}
	}
	return origin.Plus(sum.Times(1 / (3 * double)))
}

// edges calls visit for each edge of the region; the region lies to the left.
func (r Region) edges(visit func(a, b XY)) {
	for _, p := range r.polygons {
		p.Shell.edges(visit)
		for _, hole := range p.Holes {
			hole.edges(visit)
		}
	}
}

func (r Ring) edges(visit func(a, b XY)) {
	for i, a := range r {
		visit(a, r.next(i))
	}
}

// appendEdges adds the edges of the region, in order, to others.
func (r Region) appendEdges(list []edge) []edge {
	count := 0
	for _, p := range r.polygons {
		count += len(p.Shell)
		for _, hole := range p.Holes {
			count += len(hole)
		}
	}
	list = slices.Grow(list, count)
	r.edges(func(a, b XY) { list = append(list, edge{a, b}) })
	return list
}
