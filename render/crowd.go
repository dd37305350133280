package render

import (
	"cmp"
	"math"
	"slices"
)

// A crowd is the labels of cramped zones that are seated together: each has
// one of its seats, and they change seats until none is in the way of another.
// This is the search for the least conflicts with weights that grow where it is
// stuck (Morris 1993, "The breakout method", AAAI-93).
type crowd struct {
	seats  [][]seat
	chosen []int
	weight [][]float64 // of a conflict between two labels
}

const (
	farthestSeat = 120.0 // mm
	mostSeats    = 600
	settleRounds = 80
)

// settledCrowd seats labels, and reports whether all are well seated.
func settledCrowd(cramped []zoneLabel, g seating) (*crowd, bool) {
	c := newCrowd(cramped, g)
	free := !slices.ContainsFunc(c.seats, func(s []seat) bool { return len(s) == 0 })
	return c, c.settle() && free
}

func newCrowd(cramped []zoneLabel, g seating) *crowd {
	c := &crowd{chosen: make([]int, len(cramped))}
	for i, l := range cramped {
		c.seats = append(c.seats, g.seatsOf(l))
		c.weight = append(c.weight, make([]float64, len(cramped)))
		for j := range c.weight[i] {
			c.weight[i][j] = 1
		}
	}
	return c
}

// seatsOf are the free seats of the letter of a zone, those of the least cost
// first.
func (g seating) seatsOf(l zoneLabel) []seat {
	letter := stacked(l.letter)
	var seats []seat
	for _, end := range l.ends {
		for out := nearestRing; out < farthestSeat; out += ringStep {
			for _, s := range g.ring(letter, end, l.dot(), out) {
				s.cost = out + g.extra(s.plates[0])
				seats = append(seats, s)
			}
		}
	}
	slices.SortStableFunc(seats, func(a, b seat) int { return cmp.Compare(a.cost, b.cost) })
	seats = thinned(seats, mostSeats)
	for i := range seats {
		seats[i].measure()
	}
	return seats
}

// thinned keeps most seats: the better half of them the best, the others from
// among all the rest.
func thinned(seats []seat, most int) []seat {
	if len(seats) <= most {
		return seats
	}
	half := most / 2
	rest := seats[half:]
	for i := range half {
		seats[half+i] = rest[i*len(rest)/half]
	}
	return seats[:2*half]
}

// settle moves labels until no two are in each other's way, or it has tried
// long enough. It reports whether all that have seats are well seated.
func (c *crowd) settle() bool {
	for i := range c.seats {
		c.chosen[i] = c.best(i, i)
	}
	for range settleRounds {
		calm := true
		for i := range c.seats {
			if len(c.seats[i]) == 0 || !c.disturbed(i) {
				continue
			}
			calm = false
			if next := c.best(i, len(c.seats)); next != c.chosen[i] {
				c.chosen[i] = next
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

// best is the seat of a label that is least in the way of the first others; of
// equal ones that of the least cost.
func (c *crowd) best(i, others int) int {
	const perConflict = 1000.0 // mm
	best, least := 0, math.Inf(1)
	for k := range c.seats[i] {
		s := &c.seats[i][k]
		cost := s.cost
		if cost >= least {
			break // those to come cost more
		}
		for j := 0; j < others && cost < least; j++ {
			if j != i && len(c.seats[j]) > 0 && s.disturbs(c.sit(j)) {
				cost += perConflict * c.weight[i][j]
			}
		}
		if cost < least {
			best, least = k, cost
		}
	}
	return best
}

func (c *crowd) disturbed(i int) bool {
	for j := range c.seats {
		if j != i && len(c.seats[j]) > 0 && c.sit(i).disturbs(c.sit(j)) {
			return true
		}
	}
	return false
}

func (c *crowd) sit(i int) *seat { return &c.seats[i][c.chosen[i]] }

// press makes the conflicts of a label that cannot do better weigh more.
func (c *crowd) press(i int) {
	for j := range c.seats {
		if j != i && len(c.seats[j]) > 0 && c.sit(i).disturbs(c.sit(j)) {
			c.weight[i][j]++
			c.weight[j][i]++
		}
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

// measure finds the boxes round what a seat takes.
func (s *seat) measure() {
	for i, p := range s.plates {
		s.bounds[i] = Polygon{p[:]}.Bounds()
	}
	s.around = s.bounds[0].with(s.bounds[1]).with(s.bounds[2])
}

// with returns the rectangle round two.
func (r Rect) with(s Rect) Rect {
	return Rect{Point{min(r.Min.X, s.Min.X), min(r.Min.Y, s.Min.Y)}, Point{max(r.Max.X, s.Max.X), max(r.Max.Y, s.Max.Y)}}
}

// apart reports whether two rectangles share no ground.
func (r *Rect) apart(s *Rect) bool {
	return r.Max.X < s.Min.X || s.Max.X < r.Min.X || r.Max.Y < s.Min.Y || s.Max.Y < r.Min.Y
}

// disturbs reports whether two labels, their leaders or the ends of these lie
// on each other.
func (s *seat) disturbs(t *seat) bool {
	if s.around.apart(&t.around) {
		return false
	}
	for i := range s.plates {
		for j := range t.plates {
			if !s.bounds[i].apart(&t.bounds[j]) && s.plates[i].meets(t.plates[j]) {
				return true
			}
		}
	}
	return false
}
