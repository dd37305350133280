package lanes

import (
	"math"
	"slices"
)

// polished returns the legs in the same order with the best course for each
// (Viterbi 1967).
func (t *tour) polished(legs []leg) []leg {
	toEnd := t.toEnd(legs)
	polished := slices.Clone(legs)
	for i := range polished {
		least := math.Inf(1)
		for c, d := range toEnd[i] {
			if d += t.link(at(polished, i-1), leg{legs[i].task, c}); d < least {
				polished[i].course, least = c, d
			}
		}
	}
	return polished
}

// fromStart returns the least length, by the course of the last leg, of each
// number of the first legs.
func (t *tour) fromStart(legs []leg) [][]float64 {
	costs := [][]float64{{0}}
	for i, l := range legs {
		next := make([]float64, len(t.courses[l.task]))
		for c := range next {
			next[c] = t.least(costs[i], at(legs, i-1), leg{l.task, c}) + t.courses[l.task][c].inner
		}
		costs = append(costs, next)
	}
	return costs
}

// toEnd returns the least length, by its course, of each leg and all after it.
func (t *tour) toEnd(legs []leg) [][]float64 {
	costs := make([][]float64, len(legs)+1)
	costs[len(legs)] = []float64{0}
	for i := len(legs) - 1; i >= 0; i-- {
		l := legs[i]
		costs[i] = make([]float64, len(t.courses[l.task]))
		for c := range costs[i] {
			costs[i][c] = t.courses[l.task][c].inner + t.leastOn(leg{l.task, c}, at(legs, i+1), costs[i+1])
		}
	}
	return costs
}

// least returns the least length up to a leg, of the lengths up to each course
// of the one before it.
func (t *tour) least(costs []float64, before, l leg) float64 {
	least := math.Inf(1)
	for c, d := range costs {
		before.course = c
		least = min(least, d+t.link(before, l))
	}
	return least
}

// leastOn returns the least length on from a leg, of the lengths from each
// course of the one after it.
func (t *tour) leastOn(l, after leg, costs []float64) float64 {
	least := math.Inf(1)
	for c, d := range costs {
		after.course = c
		least = min(least, t.link(l, after)+d)
	}
	return least
}
