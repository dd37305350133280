package lanes

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"example.org/turfplat/geo"
)

// drawTour draws tasks of one or two rows, some of which must come before
// others, on open ground.
func drawTour(t *rapid.T, most int) *tour {
	var tasks []task
	place := func() geo.XY {
		return geo.XY{X: rapid.Float64Range(0, 50).Draw(t, "x"), Y: rapid.Float64Range(0, 50).Draw(t, "y")}
	}
	for range rapid.IntRange(1, most).Draw(t, "tasks") {
		k := task{group: rapid.IntRange(0, 1).Draw(t, "group"), pass: rapid.SampledFrom([]Pass{Header, Fill}).Draw(t, "pass")}
		for range rapid.IntRange(1, 2).Draw(t, "rows") {
			k.rows = append(k.rows, geo.Line{place(), place()})
		}
		tasks = append(tasks, k)
	}
	return newTour(tasks, newWalker(nil, nil), Right, []geo.XY{place()}, []geo.XY{place(), place()})
}

// tried weighs every order and every course by itself.
func (t *tour) tried(legs []leg, done []bool) float64 {
	if len(legs) == len(t.tasks) {
		return t.length(legs)
	}
	best := math.Inf(1)
	for k := range t.tasks {
		if done[k] || t.waits(k, done) {
			continue
		}
		done[k] = true
		for c := range t.courses[k] {
			best = min(best, t.tried(append(legs[:len(legs):len(legs)], leg{k, c}), done))
		}
		done[k] = false
	}
	return best
}

func (t *tour) inOrder(legs []leg) bool {
	done := make([]bool, len(t.tasks))
	for _, l := range legs {
		if done[l.task] || t.waits(l.task, done) {
			return false
		}
		done[l.task] = true
	}
	return len(legs) == len(t.tasks)
}

func TestExactTour(t *testing.T) {
	check(t, 60, func(t *rapid.T) {
		tour := drawTour(t, 4)
		legs := tour.exact()
		if !tour.inOrder(legs) {
			t.Fatalf("out of order: %v", legs)
		}
		near(t, "length", tour.length(legs), tour.tried(nil, make([]bool, len(tour.tasks))), 1e-9, 0)
	})
}

// The search by moves keeps the order that must be kept, is never shorter than
// the best, and seldom much longer.
func TestImprovedTour(t *testing.T) {
	var sum, n float64
	check(t, 60, func(t *rapid.T) {
		tour := drawTour(t, 8)
		legs := tour.search()
		if !tour.inOrder(legs) {
			t.Fatalf("out of order: %v", legs)
		}
		best := tour.length(tour.exact())
		over := tour.length(legs) / best
		if over < 1-1e-9 {
			t.Errorf("%v m, the best of all is %v", tour.length(legs), best)
		}
		sum, n = sum+over, n+1
	})
	if sum/n > 1.05 {
		t.Errorf("%.3f of the best on the mean, want 1.05", sum/n)
	}
}
