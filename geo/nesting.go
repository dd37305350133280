package geo

import "slices"

// Overlays are exact and take their time. Most objects on a property lie clear
// of each other or wholly inside one another; what is here serves those.

// within reports whether a lies strictly inside b: no edge touches another.
// False may also mean that it takes an overlay to find out.
func within(a, b Region) bool {
	for _, p := range a.polygons {
		if !slices.ContainsFunc(b.polygons, func(q Polygon) bool { return p.strictlyInside(q) }) {
			return false
		}
	}
	return true
}

// pierced returns a less b where each polygon of b lies strictly inside one
// of a. It leaves to an overlay a b of several polygons with holes, as one may
// lie in a hole of another.
func pierced(a, b Region) (Region, bool) {
	polygons := slices.Clone(a.polygons)
	var islands []Polygon
	for _, q := range b.polygons {
		host := slices.IndexFunc(a.polygons, func(p Polygon) bool { return q.strictlyInside(p) })
		if host < 0 || len(q.Holes) > 0 && len(b.polygons) > 1 {
			return Region{}, false
		}
		p := &polygons[host]
		p.Holes = append(slices.Clone(p.Holes), q.Shell)
		for _, h := range q.Holes {
			islands = append(islands, Polygon{Shell: h})
		}
	}
	return regionOf(append(polygons, islands...)), true
}

// strictlyInside reports whether p lies in q with no edge of the two touching
// and no hole of q in it.
func (p Polygon) strictlyInside(q Polygon) bool {
	b := p.Shell.bounds()
	if qb := q.Shell.bounds(); !qb.holds(b.Min) || !qb.holds(b.Max) || q.locate(p.Shell[0]) != inside {
		return false
	}
	for _, ring := range q.Rings() {
		if p.Shell.touches(ring, b) {
			return false
		}
	}
	return !slices.ContainsFunc(q.Holes, func(h Ring) bool { return p.Shell.locate(h[0]) != outside })
}

// touches reports whether any edge of r, whose bounds are given, shares a
// point with any edge of o.
func (r Ring) touches(o Ring, bounds Bounds) bool {
	for i, c := range o {
		d := o.next(i)
		e := edgeBounds(c, d)
		if !e.Meets(bounds) {
			continue
		}
		for j, a := range r {
			if b := r.next(j); edgeBounds(a, b).Meets(e) && edgesMeet(a, b, c, d) {
				return true
			}
		}
	}
	return false
}

// edgesMeet reports whether two closed edges share a point.
func edgesMeet(a, b, c, d XY) bool {
	abc, abd := orientation(a, b, c), orientation(a, b, d)
	cda, cdb := orientation(c, d, a), orientation(c, d, b)
	if abc*abd < 0 && cda*cdb < 0 {
		return true
	}
	return abc == 0 && between(a, b, c) || abd == 0 && between(a, b, d) ||
		cda == 0 && between(c, d, a) || cdb == 0 && between(c, d, b)
}
