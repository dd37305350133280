package geo

import (
	"cmp"
	"math"
	"slices"
	"sync"
)

const (
	mostAskew = 30 * degree
	sin2Askew = 0.25 // square of its sine
)

// Contact returns the length, on the ellipsoid, of the edge of r that runs
// along an edge of o: within d metres of it and less than 30 degrees askew.
func (f Frame) Contact(r, o Region, d float64) Length {
	if !r.Bounds().Grown(d).Meets(o.Bounds()) {
		return 0
	}
	return f.Frontage(NewBorder(r), NewBorder(o), d)
}

// Frontage is Contact for borders that are ready; only what counts of that of
// r fronts.
func (f Frame) Frontage(r, o *Border, d float64) Length {
	search := o.region.Bounds().Grown(d / math.Cos(mostAskew))
	if !r.region.Bounds().Meets(search) {
		return 0
	}
	s := frontSearches.Get().(*frontSearch)
	s.of, s.along, s.distance = r, o, d
	defer s.release()
	var sum float64
	for i, e := range r.edges {
		if e.bounds().Meets(search) {
			if share := s.share(i, e); share > 0 {
				sum += share * f.trueLength(e.a, e.b)
			}
		}
	}
	return Length(sum)
}

// A frontSearch finds what of the edges of a border runs along another.
type frontSearch struct {
	of, along *Border
	distance  float64

	near        []int32 // reused
	spans, both []span
}

// frontSearches are those not in use.
var frontSearches = sync.Pool{New: func() any { return new(frontSearch) }}

func (s *frontSearch) release() {
	s.of, s.along = nil, nil
	frontSearches.Put(s)
}

// share returns the share of edge i that fronts.
func (s *frontSearch) share(i int, e edge) float64 {
	s.spans = s.spans[:0]
	if s.along.same(e) >= 0 {
		s.spans = append(s.spans, span{0, 1})
	} else {
		s.findAlong(e)
	}
	switch {
	case len(s.spans) == 0:
		return 0
	case len(s.of.counting) > 0 && s.of.counting[i].touched:
		s.both = common(s.spans, s.of.counting[i].parts, s.both[:0])
		return covered(s.both)
	}
	return covered(s.spans)
}

// findAlong finds the parts of an edge that run along others.
func (s *frontSearch) findAlong(e edge) {
	reach := s.distance / math.Cos(mostAskew)
	box := e.bounds().Grown(reach)
	s.near = s.along.near(e, reach, s.near[:0])
	for _, i := range s.near {
		o := &s.along.edges[i]
		if part, ok := e.alongside(*o, s.distance); ok && s.along.boxes[i].near(&box) {
			s.spans = append(s.spans, part)
		}
	}
}

// common adds to spans what each of some shares with each of others.
func common(some, others, both []span) []span {
	for _, s := range some {
		for _, o := range others {
			if c := (span{max(s.from, o.from), min(s.to, o.to)}); c.from < c.to {
				both = append(both, c)
			}
		}
	}
	return both
}

// A span is a part of an edge, as shares of its length.
type span struct{ from, to float64 }

// alongside returns the part of e that lies within d of the line of o,
// opposite o and less than 30 degrees askew.
func (e edge) alongside(o edge, d float64) (span, bool) {
	u, v := e.b.Minus(e.a), o.b.Minus(o.a)
	length2, cross := u.Dot(u), u.Cross(v)
	if cross*cross >= sin2Askew*length2*v.Dot(v) {
		return span{}, false
	}
	length := v.Norm()
	along := func(p XY) float64 { return p.Minus(e.a).Dot(u) / length2 }
	s := span{along(o.a), along(o.b)}
	if s.from > s.to {
		s.from, s.to = s.to, s.from
	}
	s = span{max(0, s.from), min(1, s.to)}
	offset := func(t float64) float64 { return v.Cross(e.at(t).Minus(o.a)) / length }
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
	if len(spans) > 1 {
		slices.SortFunc(spans, compareSpans)
	}
	var sum, reached float64
	for _, s := range spans {
		sum += max(0, s.to-max(s.from, reached))
		reached = max(reached, s.to)
	}
	return sum
}

// compareSpans orders spans by where they start, the longer first.
func compareSpans(a, b span) int {
	if a.from != b.from {
		return cmp.Compare(a.from, b.from)
	}
	return cmp.Compare(b.to, a.to)
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
