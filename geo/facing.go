package geo

import (
	"cmp"
	"math"
	"slices"
)

// mostFacings bounds, by the edge, how many are looked at together: were teeth
// of a comb finer than a width, each would face all others.
const mostFacings = 8

// A facing is a part of an edge along which another edge of the border runs the
// other way.
type facing struct {
	edge, other int32
	part        span
	apart       float64 // m, at the middle of the part
}

// facings finds those of edges that count less than a distance apart, and
// reports whether it found all before they became too many.
func (b *Border) facings(narrow float64) (found []facing, all bool) {
	s := facingSearch{Border: b, narrow: narrow, most: mostFacings * len(b.edges)}
	switch {
	case len(b.list) > 0:
		s.byRows()
	case len(b.edges) > fewEdges:
		s.byCourse()
	default:
		s.comparing()
	}
	return s.found, len(s.found) <= s.most
}

// A facingSearch finds facings; it may end when it has found more than the most.
type facingSearch struct {
	*Border
	narrow float64
	most   int
	found  []facing

	begins [sectors + 1]int32 // place in courses of the first edge of a sector

	order, reaching []listed // reused: those of a row from west to east, and what of them reaches so far
}

func (s *facingSearch) comparing() {
	for i := range s.edges {
		for j := range i {
			s.look(int32(j), int32(i))
		}
	}
}

// sectors are those of the compass in which courses lie. Edges face each other
// that are less askew than a sector is wide.
const sectors = 32

// course returns the sector of the compass that an edge points into, by the
// share of its way that it goes north.
func (e *edge) course() int {
	east, north := e.b.X-e.a.X, e.b.Y-e.a.Y
	turn := north / (math.Abs(east) + math.Abs(north)) // -1..1
	if east < 0 {
		turn = 2 - turn
	}
	return int(math.Floor(turn*(sectors/4))) & (sectors - 1)
}

// byCourse looks at pairs of edges that come near each other and point into
// opposite sectors, or nearly so.
func (s *facingSearch) byCourse() {
	s.layCourses()
	search := s.narrow * math.Hypot(1, steepest)
	for k := range sectors {
		for _, i := range s.courses[s.begins[k]:s.begins[k+1]] {
			box := s.boxes[i].Grown(search)
			s.lookInto((k+sectors/2-1)%sectors, i, &box)
			if k < sectors/2 { // else they are found from there
				s.lookInto(k+sectors/2, i, &box)
			}
		}
	}
}

// lookInto looks at an edge and those of a sector.
func (s *facingSearch) lookInto(sector int, i int32, box *Bounds) {
	for _, j := range s.courses[s.begins[sector]:s.begins[sector+1]] {
		if s.boxes[j].near(box) {
			s.look(i, j)
		}
	}
}

// layCourses puts the edges, which are not many, in the order of their courses.
func (s *facingSearch) layCourses() {
	var sector [manyEdges]int32
	for i := range s.edges {
		k := s.edges[i].course()
		sector[i] = int32(k)
		s.begins[k+1]++
	}
	sum(s.begins[:])
	s.courses = sized(s.courses, len(s.edges))
	fill(s.begins[:], sector[:len(s.edges)], s.courses)
}

// byRows looks at pairs of edges of one row, and at those of which one begins
// in the row above that in which the other ends. Rows are taller than what is narrow.
func (s *facingSearch) byRows() {
	const fewListed = 40 // are compared faster one by one than in order
	search := s.narrow * math.Hypot(1, steepest)
	for row := range int32(len(s.first) - 1) {
		in, up := s.listedIn(row), s.listedIn(row+1)
		if len(in)+len(up) > fewListed {
			s.sweep(in, up, search, row)
		} else {
			s.compare(in, up, search, row)
		}
		if len(s.found) > s.most {
			return
		}
	}
}

// listedIn is what is listed of a row; above the uppermost there is nothing.
func (b *Border) listedIn(row int32) []listed {
	if int(row) >= len(b.first)-1 {
		return nil
	}
	return b.list[b.first[row]:b.first[row+1]]
}

// compare looks at all pairs of the edges in a row and of these with those that
// begin in the row above.
func (s *facingSearch) compare(in, up []listed, search float64, row int32) {
	for k := range in {
		if s.counts(in[k].edge) {
			s.lookAmong(&in[k], in[:k], search, row)
		}
	}
	for k := range up {
		if up[k].lowest > row {
			s.lookAmong(&up[k], in, search, row)
		}
	}
}

// sweep is compare for many edges: it goes from west to east and compares each
// with those that reach as far.
func (s *facingSearch) sweep(in, up []listed, search float64, row int32) {
	s.order, s.reaching = append(s.order[:0], in...), s.reaching[:0]
	for _, l := range up {
		if l.lowest > row {
			s.order = append(s.order, l)
		}
	}
	slices.SortFunc(s.order, func(l, o listed) int { return cmp.Or(cmp.Compare(l.west, o.west), cmp.Compare(l.edge, o.edge)) })
	for k := range s.order {
		l := &s.order[k]
		if !s.counts(l.edge) {
			continue
		}
		s.reaching = slices.DeleteFunc(s.reaching, func(o listed) bool { return o.east < l.west-search })
		if s.lookAmong(l, s.reaching, search, row); len(s.found) > s.most {
			return
		}
		s.reaching = append(s.reaching, *l)
	}
}

// lookAmong looks at an edge and those of some others that come near it, of
// which one at least is in a row and the other is too or begins in the row above.
func (s *facingSearch) lookAmong(l *listed, others []listed, search float64, row int32) {
	west, east := l.west-search, l.east+search
	for k := range others {
		if o := &others[k]; !apart(west, o.east, o.west, east) && s.firstIn(row, l, o, search) {
			s.look(l.edge, o.edge)
		}
	}
}

// firstIn reports whether two edges that come near each other in a row, or in
// that and the one above it, did not do so in a row below.
func (s *facingSearch) firstIn(row int32, l, o *listed, search float64) bool {
	switch lowest := max(l.lowest, o.lowest); {
	case lowest < row:
		return !s.meetIn(row-1, l.edge, o.edge, search)
	case lowest == row:
		return true
	case l.lowest == o.lowest: // both begin above
		return false
	case l.lowest < o.lowest:
		return s.endsIn(row, l.edge)
	default:
		return s.endsIn(row, o.edge)
	}
}

// endsIn reports whether a row is the highest of an edge.
func (s *facingSearch) endsIn(row, edge int32) bool {
	_, highest := s.rowsOf(s.edges[edge])
	return highest == row
}

// meetIn reports whether two edges come near each other in a row that both reach.
func (s *facingSearch) meetIn(row, i, j int32, search float64) bool {
	south, north := s.parallels(row, s.pad)
	one, other := s.edges[i].climb(), s.edges[j].climb()
	west, east := one.between(south, north)
	from, to := other.between(south, north)
	return !apart(west-search, to, from, east+search)
}

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
