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
	e, stops := edge{a, b}, []float64{0, 1}
	box := e.bounds()
	r.edges(func(c, d XY) {
		if edgeBounds(c, d).Meets(box) {
			stops = e.stopAt(edge{c, d}, stops)
		}
	})
	return inOrder(stops)
}

// stopAt adds to some stops on the way along an edge those at another one.
func (e edge) stopAt(o edge, stops []float64) []float64 {
	if !edgesMeet(e.a, e.b, o.a, o.b) {
		return stops
	}
	way, other := e.b.Minus(e.a), o.b.Minus(o.a)
	if turn := way.Cross(other); turn != 0 {
		return append(stops, o.a.Minus(e.a).Cross(other)/turn)
	}
	for _, p := range [...]XY{o.a, o.b} { // runs along the edge
		stops = append(stops, p.Minus(e.a).Dot(way)/way.Dot(way))
	}
	return stops
}

// inOrder sorts stops, each of them once.
func inOrder(stops []float64) []float64 {
	for i := range stops {
		stops[i] = min(1, max(0, stops[i]))
	}
	slices.Sort(stops)
	return slices.Compact(stops)
}
