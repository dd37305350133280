package geo

import (
	"cmp"
	"math"
	"slices"
)

const mostAskew = 30 * degree

// Contact returns the length, on the ellipsoid, of the edge of r that runs
// along an edge of o: within d metres of it and less than 30 degrees askew.
func (f Frame) Contact(r, o Region, d float64) Length { return f.Frontage(r, o, d, 0) }

// Frontage is Contact, but for the edge of ground only that is at least depth
// metres deep: a hairline of r between two other things, which tracings that
// do not quite meet leave, fronts on nothing.
func (f Frame) Frontage(r, o Region, d, depth float64) Length {
	if !r.Bounds().Grown(d).Meets(o.Bounds()) {
		return 0
	}
	grid := newEdgeGrid(o.edgeList())
	var sum float64
	r.edges(func(a, b XY) {
		e := edge{a, b}
		var spans []span
		grid.near(e, d/math.Cos(mostAskew), func(i int) {
			if s, ok := e.alongside(grid.edges[i], d); ok {
				spans = append(spans, s)
			}
		})
		if depth > 0 && len(spans) > 0 {
			spans = common(spans, r.deep(e, depth))
		}
		sum += covered(spans) * f.trueLength(a, b)
	})
	return Length(sum)
}

// deep returns the parts of an edge of the region, which lies to its left,
// behind which the region is at least depth metres deep.
func (r Region) deep(e edge, depth float64) []span {
	way := e.b.Minus(e.a)
	inward := XY{-way.Y, way.X}.Times(depth / way.Norm())
	inner := edge{e.a.Plus(inward), e.b.Plus(inward)}
	stops := r.stops(inner.a, inner.b)
	var parts []span
	for i := 1; i < len(stops); i++ {
		if s := (span{stops[i-1], stops[i]}); r.holds(inner.at((s.from + s.to) / 2)) {
			parts = append(parts, s)
		}
	}
	return parts
}

// common returns what each of some spans shares with each of others.
func common(some, others []span) []span {
	var both []span
	for _, s := range some {
		for _, o := range others {
			if c := (span{max(s.from, o.from), min(s.to, o.to)}); c.from < c.to {
				both = append(both, c)
			}
		}
	}
	return both
}

func (r Region) edgeList() []edge {
	var list []edge
	r.edges(func(a, b XY) { list = append(list, edge{a, b}) })
	return list
}

// A span is a part of an edge, as shares of its length.
type span struct{ from, to float64 }

// alongside returns the part of e that lies within d of the line of o,
// opposite o and less than 30 degrees askew.
func (e edge) alongside(o edge, d float64) (span, bool) {
	u, v := e.b.Minus(e.a), o.b.Minus(o.a)
	if math.Abs(u.Cross(v)) >= math.Sin(mostAskew)*u.Norm()*v.Norm() {
		return span{}, false
	}
	along := func(p XY) float64 { return p.Minus(e.a).Dot(u) / u.Dot(u) }
	s := span{along(o.a), along(o.b)}
	if s.from > s.to {
		s.from, s.to = s.to, s.from
	}
	s = span{max(0, s.from), min(1, s.to)}
	offset := func(t float64) float64 { return v.Cross(e.at(t).Minus(o.a)) / v.Norm() }
	s = s.narrowed(offset(s.from), offset(s.to), d)
	return s, s.from < s.to
}

// narrowed keeps of a span, over which a value runs straight from `from` to
// `to`, the part where it is within -d..d.
func (s span) narrowed(from, to, d float64) span {
	if from == to {
		if math.Abs(from) > d {
			return span{}
		}
		return s
	}
	at := func(v float64) float64 { return s.from + (s.to-s.from)*(v-from)/(to-from) }
	enter, leave := at(-d), at(d)
	if enter > leave {
		enter, leave = leave, enter
	}
	return span{max(s.from, enter), min(s.to, leave)}
}

// covered returns the share of an edge that spans cover together.
func covered(spans []span) float64 {
	slices.SortFunc(spans, func(a, b span) int { return cmp.Compare(a.from, b.from) })
	var sum, reached float64
	for _, s := range spans {
		sum += max(0, s.to-max(s.from, reached))
		reached = max(reached, s.to)
	}
	return sum
}

// without returns what is left of spans when s is taken out.
func without(spans []span, s span) []span {
	var left []span
	for _, o := range spans {
		if o.from < s.from {
			left = append(left, span{o.from, min(o.to, s.from)})
		}
		if o.to > s.to {
			left = append(left, span{max(o.from, s.to), o.to})
		}
	}
	return left
}
