package geo

import (
	"cmp"
	"math"
	"slices"
)

const (
	// steepest is by how much a metre ground widens that is a corner and not
	// narrow: a corner has a border up to its tip. Towards it the width that is
	// narrow goes down to nothing, lest rounding decide about a metre of border.
	steepest = 0.1
	// mostFacings bounds, by the edge, how many are looked at together: were
	// teeth of a comb finer than the width, each would face all others.
	mostFacings = 8
)

// NewBroadBorder is NewBorder, but where edges face each other, less than
// `narrow` metres apart, neither counts: what lies between them, be it ground of
// the region or a gap in it, is one edge drawn twice.
func NewBroadBorder(r Region, narrow float64) *Border {
	b := newBorder(r, narrow*math.Hypot(1, steepest)+grain)
	b.strikeNarrow(narrow)
	return b
}

// strikeNarrow takes edges that face each other out of what counts, the nearest
// first: between edges farther apart may lie others, which those edges are then
// none of, as where a crack runs along the rim of a lawn.
func (b *Border) strikeNarrow(narrow float64) {
	facings, all := b.facings(narrow)
	if !all && narrow > grain {
		b.strikeNarrow(narrow / 4)
		facings, _ = b.facings(narrow)
	}
	if len(facings) == 0 {
		return
	}
	if len(b.counting) == 0 {
		b.counting = blank(b.counting, len(b.edges))
	}
	slices.SortFunc(facings, b.byNearness)
	for _, f := range facings {
		b.strike(f)
	}
}

// A facing is a part of an edge along which another edge of the border runs the
// other way.
type facing struct {
	edge, other int32
	part        span
	apart       float64 // m, at the middle of the part
}

// byNearness puts the nearest first, and of those as near the western ones, so
// that the order hangs on the ground alone.
func (b *Border) byNearness(f, g facing) int {
	if f.apart != g.apart {
		return cmp.Compare(f.apart, g.apart)
	}
	return cmp.Or(compareXY(b.edges[f.edge].a, b.edges[g.edge].a), compareXY(b.edges[f.other].a, b.edges[g.other].a))
}

// facings finds those of edges that count less than a distance apart, and
// reports whether it found all before they became too many.
func (b *Border) facings(narrow float64) (found []facing, all bool) {
	s := facingSearch{b, narrow, mostFacings * len(b.edges), nil}
	if len(b.list) == 0 {
		s.comparing()
	} else {
		s.byRows()
	}
	return s.found, len(s.found) <= s.most
}

// A facingSearch finds facings; it may end when it has found more than the most.
type facingSearch struct {
	*Border
	narrow float64
	most   int
	found  []facing
}

func (s *facingSearch) comparing() {
	for i := range s.edges {
		for j := range i {
			s.look(int32(j), int32(i))
		}
	}
}

// byRows looks at pairs of edges of one row, and at those of which one begins
// in a row above that in which the other ends.
func (s *facingSearch) byRows() {
	search := s.narrow * math.Hypot(1, steepest)
	rows, above := int32(len(s.first)-1), 1+int32(search/s.tall)
	for row := range rows {
		in := s.list[s.first[row]:s.first[row+1]]
		for k := range in {
			if s.counts(in[k].edge) {
				s.lookAlong(&in[k], in[:k], search, row)
			}
			if len(s.found) > s.most {
				return
			}
		}
		for next := row + 1; next <= min(row+above, rows-1); next++ {
			up := s.list[s.first[next]:s.first[next+1]]
			for k := range up {
				if l := &up[k]; l.lowest == next {
					s.lookBelow(l, in, search, row)
				}
				if len(s.found) > s.most {
					return
				}
			}
		}
	}
}

// lookAlong looks at an edge and others of a row, unless they came as near to
// each other in the row below.
func (s *facingSearch) lookAlong(l *listed, others []listed, search float64, row int32) {
	west, east := l.west-search, l.east+search
	for k := range others {
		o := &others[k]
		if apart(west, o.east, o.west, east) {
			continue
		}
		if row == max(l.lowest, o.lowest) || !s.meetIn(row-1, l.edge, o.edge, search) {
			s.look(l.edge, o.edge)
		}
	}
}

// meetIn reports whether two edges come near each other in a row that both reach.
func (s *facingSearch) meetIn(row, i, j int32, search float64) bool {
	south, north := s.parallels(row, s.pad)
	one, other := s.edges[i].climb(), s.edges[j].climb()
	west, east := one.between(south, north)
	from, to := other.between(south, north)
	return !apart(west-search, to, from, east+search)
}

// lookBelow looks at an edge and those that end in a row below its lowest.
func (s *facingSearch) lookBelow(l *listed, others []listed, search float64, row int32) {
	west, east := l.west, l.east
	if search > s.tall { // what comes near may lie in rows farther off
		west, east = s.edges[l.edge].stretch()
	}
	for k := range others {
		o := &others[k]
		from, to := o.west, o.east
		if search > s.tall {
			from, to = s.edges[o.edge].stretch()
		}
		if apart(west-search, to, from, east+search) {
			continue
		}
		if _, highest := s.rowsOf(s.edges[o.edge]); highest == row {
			s.look(l.edge, o.edge)
		}
	}
}

// stretch is how far west and east an edge goes.
func (e *edge) stretch() (west, east float64) { return min(e.a.X, e.b.X), max(e.a.X, e.b.X) }

// look notes what faces each other of two edges that count.
func (s *facingSearch) look(i, j int32) {
	e, o := &s.edges[i], &s.edges[j]
	width := s.narrow * e.narrowness(o)
	if width <= 0 || !s.counts(i) || !s.counts(j) {
		return
	}
	if compareXY(e.a, o.a) > 0 {
		i, j, e, o = j, i, o, e
	}
	if part, ok := e.alongside(*o, width); ok {
		s.found = append(s.found, facing{i, j, part, o.apart(e.at((part.from + part.to) / 2))})
	}
}

// counts reports whether any of an edge counts.
func (b *Border) counts(edge int32) bool {
	return len(b.counting) == 0 || !b.counting[edge].touched || len(b.counting[edge].parts) > 0
}

// narrowness is 1 for edges that run straight against each other, less where
// the ground between them widens, and not above 0 if they are a corner's or run
// the same way.
func (e *edge) narrowness(o *edge) float64 {
	u, v := e.b.Minus(e.a), o.b.Minus(o.a)
	dot := u.Dot(v)
	if dot >= 0 {
		return 0
	}
	return 1 + math.Abs(u.Cross(v))/(steepest*dot)
}

// apart is how far a position is from the line of an edge.
func (e *edge) apart(p XY) float64 {
	way := e.b.Minus(e.a)
	return math.Abs(way.Cross(p.Minus(e.a))) / way.Norm()
}

// strike takes what lies opposite each other of two edges out of what counts,
// where both still do.
func (b *Border) strike(f facing) {
	e, o := b.edges[f.edge], b.edges[f.other]
	way := e.b.Minus(e.a)
	along := func(p XY) float64 { return p.Minus(e.a).Dot(way) / way.Dot(way) }
	from, to := along(o.a), along(o.b) // of the other edge, as shares of this one
	one, other := &b.counting[f.edge], &b.counting[f.other]
	for _, s := range common(one.spans(), []span{f.part}, nil) {
		opposite := span{(s.to - from) / (to - from), (s.from - from) / (to - from)}
		for _, t := range common(other.spans(), []span{opposite}, nil) {
			other.take(t)
			one.take(span{from + t.to*(to-from), from + t.from*(to-from)})
		}
	}
}
