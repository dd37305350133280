package geo

import "slices"

// Inside returns the parts of a line that run inside the region, each an open
// line of its own.
func (r Region) Inside(l Line) []Line {
	var parts []Line
	for i := 1; i < len(l); i++ {
		a, b := l[i-1], l[i]
		stops := r.stops(a, b)
		for j := 1; j < len(stops); j++ {
			p, q := a.Toward(b, stops[j-1]), a.Toward(b, stops[j])
			if !r.holds(p.Toward(q, 0.5)) {
				continue
			}
			if n := len(parts); n > 0 && parts[n-1][len(parts[n-1])-1] == p {
				parts[n-1] = append(parts[n-1], q)
				continue
			}
			parts = append(parts, Line{p, q})
		}
	}
	return parts
}

// holds reports whether p lies in the region and not on its edge.
func (r Region) holds(p XY) bool {
	return r.Bounds().holds(p) && slices.ContainsFunc(r.polygons, func(g Polygon) bool { return g.locate(p) == inside })
}

// stops returns 0, 1 and the shares of the way from a to b at which it meets
// an edge of the region, in order.
func (r Region) stops(a, b XY) []float64 {
	stops := []float64{0, 1}
	box, way := edgeBounds(a, b), b.Minus(a)
	r.edges(func(c, d XY) {
		if !edgeBounds(c, d).Meets(box) || !edgesMeet(a, b, c, d) {
			return
		}
		edge := d.Minus(c)
		if turn := way.Cross(edge); turn != 0 {
			stops = append(stops, c.Minus(a).Cross(edge)/turn)
			return
		}
		for _, p := range []XY{c, d} { // runs along the edge
			stops = append(stops, p.Minus(a).Dot(way)/way.Dot(way))
		}
	})
	for i := range stops {
		stops[i] = min(1, max(0, stops[i]))
	}
	slices.Sort(stops)
	return slices.Compact(stops)
}
