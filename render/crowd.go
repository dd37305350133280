package render

import (
	"cmp"
	"iter"
	"math"
	"slices"
)

// A crowd is the labels of cramped zones that are seated together: each has
// one of its seats, and they change seats until none is in the way of another.
// This is the search for the least conflicts with weights that grow where it is
// stuck (Morris 1993, "The breakout method", AAAI-93).
type crowd struct {
	seats  [][]crowdSeat
	chosen []int
	weight [][]float64 // of a conflict between two labels
	mesh   mesh        // with the seats that are chosen
}

// A crowdSeat is a seat made ready to be compared with others.
type crowdSeat struct {
	seat
	boxes [3]rect // round its plates
	cells []int32 // of the mesh, into which it comes
}

const (
	farthestSeat = 120.0 // mm
	mostSeats    = 600
	settleRounds = 80
)

// A settledCrowd is what came of seating some labels while some plates were taken.
type settledCrowd struct {
	cramped []zoneLabel
	taken   []takenPlate
	crowd   *crowd
	well    bool
}

// settledCrowd seats labels, and reports whether all are well seated. What it
// did last it knows: labels that say less seat their letters all the same.
func (g seating) settledCrowd(cramped []zoneLabel) (c *crowd, well bool) {
	if s := g.last; s.crowd != nil && slices.Equal(s.taken, g.board.taken) && slices.EqualFunc(s.cramped, cramped, zoneLabel.seatsAlike) {
		return s.crowd, s.well
	}
	c = newCrowd(cramped, g)
	free := !slices.ContainsFunc(c.seats, func(s []crowdSeat) bool { return len(s) == 0 })
	well = c.settle() && free
	*g.last = settledCrowd{cramped, slices.Clone(g.board.taken), c, well}
	return c, well
}

// seatsAlike reports whether the letters of two labels have the same seats.
func (l zoneLabel) seatsAlike(o zoneLabel) bool {
	return l.letter == o.letter && l.dot() == o.dot() && slices.Equal(l.ends, o.ends)
}

func newCrowd(cramped []zoneLabel, g seating) *crowd {
	c := &crowd{chosen: make([]int, len(cramped)), mesh: newMesh(g.window)}
	var places []place
	for i, l := range cramped {
		places = g.placesOf(l, places[:0])
		c.seats = append(c.seats, c.mesh.seatsOf(l, places))
		c.weight = append(c.weight, make([]float64, len(cramped)))
		for j := range c.weight[i] {
			c.weight[i][j] = 1
		}
	}
	return c
}

// A place is where a letter may sit, told in short: there are tens of thousands
// for each.
type place struct {
	at   Point
	end  int // which of those that a leader may have
	cost float64
}

// placesOf adds the free places for the letter of a zone to some, those of the
// least cost first.
func (g seating) placesOf(l zoneLabel, places []place) []place {
	letter := stacked(l.letter)
	for k, end := range l.ends {
		for out := nearestRing; out < farthestSeat; out += ringStep {
			g.ring(letter, end, out, func(at Point, cost float64) { places = append(places, place{at, k, cost}) })
		}
	}
	slices.SortStableFunc(places, func(a, b place) int { return cmp.Compare(a.cost, b.cost) })
	return thinned(places, mostSeats)
}

// seatsOf are the seats of the letter of a zone at some places.
func (m *mesh) seatsOf(l zoneLabel, places []place) []crowdSeat {
	letter := stacked(l.letter)
	seats := make([]crowdSeat, len(places))
	for i, p := range places {
		end, s := l.ends[p.end], &seats[i]
		s.seat = seat{p.at, end, l.dot(), letter.platesLed(p.at, end, l.dot()), p.cost}
		for k, plate := range s.plates {
			s.boxes[k] = plate.box()
			s.cells = m.cells(plate, s.cells)
		}
	}
	return seats
}

// thinned keeps most places: the better half of them the best, the others from
// among all the rest.
func thinned(places []place, most int) []place {
	if len(places) <= most {
		return places
	}
	half := most / 2
	rest := places[half:]
	for i := range half {
		places[half+i] = rest[i*len(rest)/half]
	}
	return places[:2*half]
}

// settle moves labels until no two are in each other's way, or it has tried
// long enough. It reports whether all that have seats are well seated.
func (c *crowd) settle() bool {
	for i, seats := range c.seats {
		if len(seats) > 0 {
			c.take(i, c.best(i))
		}
	}
	for range settleRounds {
		calm := true
		for i, seats := range c.seats {
			if len(seats) == 0 || !c.disturbed(i) {
				continue
			}
			calm = false
			if next := c.best(i); next != c.chosen[i] {
				c.mesh.remove(i, c.sit(i).cells)
				c.take(i, next)
			} else {
				c.press(i)
			}
		}
		if calm {
			return true
		}
	}
	return false
}

// take seats a label that has no seat.
func (c *crowd) take(i, seat int) {
	c.chosen[i] = seat
	c.mesh.put(i, c.sit(i).cells)
}

// best is the seat of a label that is least in the way of those that sit; of
// equal ones that of the least cost.
func (c *crowd) best(i int) int {
	const perConflict = 1000.0 // mm
	best, least := 0, math.Inf(1)
	for k := range c.seats[i] {
		s := &c.seats[i][k]
		cost := s.cost
		if cost >= least {
			break // those to come cost more
		}
		for j := range c.disturbing(i, s) {
			if cost += perConflict * c.weight[i][j]; cost >= least {
				break
			}
		}
		if cost < least {
			best, least = k, cost
		}
	}
	return best
}

// disturbing are the other labels in whose way a label is in one of its seats.
func (c *crowd) disturbing(i int, s *crowdSeat) iter.Seq[int] {
	return func(yield func(int) bool) {
		near := c.mesh.near(s.cells)
		for j := range near.numbers {
			if j != i && s.disturbs(c.sit(j)) && !yield(j) {
				return
			}
		}
	}
}

func (c *crowd) disturbed(i int) bool {
	for range c.disturbing(i, c.sit(i)) {
		return true
	}
	return false
}

func (c *crowd) sit(i int) *crowdSeat { return &c.seats[i][c.chosen[i]] }

// press makes the conflicts of a label that cannot do better weigh more.
func (c *crowd) press(i int) {
	for j := range c.disturbing(i, c.sit(i)) {
		c.weight[i][j]++
		c.weight[j][i]++
	}
}

// undisturbed are the labels that are well seated, or are once others are gone.
func (c *crowd) undisturbed() []int {
	var seated []int
	for i := range c.seats {
		if len(c.seats[i]) > 0 && !slices.ContainsFunc(seated, func(j int) bool { return c.sit(i).disturbs(c.sit(j)) }) {
			seated = append(seated, i)
		}
	}
	return seated
}

// disturbs reports whether two labels, their leaders or the ends of these lie
// on each other.
func (s *crowdSeat) disturbs(t *crowdSeat) bool {
	for i := range s.plates {
		for j := range t.plates {
			if s.boxes[i].meets(t.boxes[j]) && !s.plates[i].parts(t.plates[j]) && !t.plates[j].parts(s.plates[i]) {
				return true
			}
		}
	}
	return false
}
