package lanes

import (
	"math"
	"slices"
)

// reinsert takes out the first task for which it pays, and puts it where the
// tour is shortest if the courses of all are chosen anew: so it gets to orders
// that moves of tasks as they are walked do not. It reports whether there was
// such a task.
func (t *tour) reinsert(legs []leg) bool {
	for i, l := range legs {
		rest := slices.Concat(legs[:i], legs[i+1:])
		if to, length := t.bestPlace(rest, i, l.task); length < t.length(legs)-gain {
			copy(legs, t.polished(slices.Insert(rest, to, l)))
			return true
		}
	}
	return false
}

// bestPlace returns where among the rest a task taken from i is best put, and
// how long the tour is then.
func (t *tour) bestPlace(rest []leg, i, task int) (to int, least float64) {
	fromStart, toEnd := t.fromStart(rest), t.toEnd(rest)
	first, last := t.leeway(rest, i, leg{task, 0})
	to, least = i, math.Inf(1)
	for j := first; j <= last; j++ {
		for c, course := range t.courses[task] {
			l := leg{task, c}
			d := t.least(fromStart[j], at(rest, j-1), l) + course.inner + t.leastOn(l, at(rest, j), toEnd[j])
			if d < least-gain {
				to, least = j, d
			}
		}
	}
	return to, least
}

// leeway returns the first and the last place among the rest that a leg taken
// from i may have.
func (t *tour) leeway(rest []leg, i int, l leg) (first, last int) {
	first, last = i, i
	for first > 0 && t.free([]leg{l}, rest[first-1:first], false) {
		first--
	}
	for last < len(rest) && t.free([]leg{l}, rest[last:last+1], true) {
		last++
	}
	return first, last
}
