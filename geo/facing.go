package geo

import "math"

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
