package lanes

import (
	"cmp"
	"math"
	"slices"

	"example.org/turfplat/geo"
)

// A tour puts tasks in order and picks a course for each, so that the ways
// between them are short.
type tour struct {
	tasks    []task
	courses  [][]course
	walker   *walker
	from, to []geo.XY // where it may start and end; none = anywhere
	places   map[geo.XY]int
	ways     [][]float64 // between places, NaN until asked for
}

// A leg is a task in a tour and the number of its course.
type leg struct{ task, course int }

// mostExact is the number of tasks up to which every order is weighed.
const mostExact = 10

func newTour(tasks []task, w *walker, shield Side, from, to []geo.XY) *tour {
	t := &tour{tasks: tasks, walker: w, from: from, to: to, places: make(map[geo.XY]int)}
	for _, task := range tasks {
		t.courses = append(t.courses, task.courses(w, shield))
	}
	return t
}

// best returns the order found: the best of all for up to ten tasks, else one
// that neither moves of a few tasks, nor turning of a stretch, nor any task put
// elsewhere with all courses chosen anew make shorter.
func (t *tour) best() []leg {
	if len(t.tasks) <= mostExact {
		return t.exact()
	}
	return t.search()
}

// search goes from task to nearest task, from each of several first ones, and
// makes moves for as long as any shortens the tour. It takes the shortest of
// these tours on to where no task is better put elsewhere.
func (t *tour) search() []leg {
	var best []leg
	least := math.Inf(1)
	for _, first := range t.firsts() {
		legs := t.shortened(t.nearest(first))
		if length := t.length(legs); length < least-gain {
			best, least = legs, length
		}
	}
	for t.reinsert(best) {
		best = t.shortened(best)
	}
	return best
}

// shortened makes moves, and chooses courses, until neither shortens the tour.
func (t *tour) shortened(legs []leg) []leg {
	for range 20 {
		before := t.length(legs)
		for t.improve(legs) {
		}
		legs = t.polished(legs)
		if t.length(legs) > before-gain {
			break
		}
	}
	return legs
}

// firsts are the tasks to start with: those nearest to the start that wait for
// none, a few of them.
func (t *tour) firsts() []int {
	const few = 6
	var firsts []int
	away := make(map[int]float64)
	done := make([]bool, len(t.tasks))
	for k := range t.tasks {
		if t.waits(k, done) {
			continue
		}
		away[k] = math.Inf(1)
		for c := range t.courses[k] {
			away[k] = min(away[k], t.link(nowhere, leg{k, c}))
		}
		firsts = append(firsts, k)
	}
	slices.SortStableFunc(firsts, func(a, b int) int { return cmp.Compare(away[a], away[b]) })
	return firsts[:min(few, len(firsts))]
}

// way is the length of the walk between two places.
func (t *tour) way(a, b geo.XY) float64 {
	i, j := t.place(a), t.place(b)
	if i == j {
		return 0
	}
	if i < j {
		i, j, a, b = j, i, b, a
	}
	if math.IsNaN(t.ways[i][j]) {
		t.ways[i][j] = t.walker.way(a, b)
	}
	return t.ways[i][j]
}

func (t *tour) place(p geo.XY) int {
	if i, ok := t.places[p]; ok {
		return i
	}
	i := len(t.ways)
	row := make([]float64, i)
	for j := range row {
		row[j] = math.NaN()
	}
	t.places[p], t.ways = i, append(t.ways, row)
	return i
}

func (t *tour) course(l leg) course { return t.courses[l.task][l.course] }

// link is the way from one leg to the next; before the first and after the
// last it leads from the start and to the end.
func (t *tour) link(a, b leg) float64 {
	switch {
	case a.task < 0 && b.task < 0:
		return 0
	case a.task < 0:
		_, d := t.nearestOf(t.from, t.course(b).entry())
		return d
	case b.task < 0:
		_, d := t.nearestOf(t.to, t.course(a).exit())
		return d
	}
	return t.way(t.course(a).exit(), t.course(b).entry())
}

// nearestOf returns the one of some places that is nearest to another, and the
// way there; 0 if there are none.
func (t *tour) nearestOf(places []geo.XY, p geo.XY) (best []geo.XY, least float64) {
	for i, q := range places {
		if d := t.way(q, p); i == 0 || d < least {
			best, least = places[i:i+1], d
		}
	}
	return best, least
}

// nowhere stands before the first leg and after the last.
var nowhere = leg{-1, 0}

func at(legs []leg, i int) leg {
	if i < 0 || i >= len(legs) {
		return nowhere
	}
	return legs[i]
}

func (t *tour) length(legs []leg) float64 {
	sum := 0.0
	for i := 0; i <= len(legs); i++ {
		sum += t.link(at(legs, i-1), at(legs, i))
		if i < len(legs) {
			sum += t.course(legs[i]).inner
		}
	}
	return sum
}

// nearest starts with a task and goes on to the nearest, again and again.
func (t *tour) nearest(first int) []leg {
	var legs []leg
	done := make([]bool, len(t.tasks))
	last := nowhere
	for range t.tasks {
		best, least := nowhere, math.Inf(1)
		for k := range t.tasks {
			if done[k] || t.waits(k, done) || last == nowhere && k != first {
				continue
			}
			for c := range t.courses[k] {
				if d := t.link(last, leg{k, c}); d < least {
					best, least = leg{k, c}, d
				}
			}
		}
		legs, last = append(legs, best), best
		done[best.task] = true
	}
	return legs
}

// waits reports whether a task must come after one that is not done.
func (t *tour) waits(k int, done []bool) bool {
	for o := range t.tasks {
		if !done[o] && t.tasks[o].before(t.tasks[k]) {
			return true
		}
	}
	return false
}
