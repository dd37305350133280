package lanes

import "math"

// exact weighs all orders and courses (Held & Karp 1962).
func (t *tour) exact() []leg {
	n := len(t.tasks)
	if n == 0 {
		return nil
	}
	type state struct {
		cost float64
		from leg
	}
	best := make([]map[leg]state, 1<<n) // by the set of tasks done, then the last leg
	best[0] = map[leg]state{nowhere: {0, nowhere}}
	for done := range best {
		for _, last := range t.legsIn(done) {
			s, reached := best[done][last]
			if !reached {
				continue
			}
			for k := range n {
				if done&(1<<k) != 0 || t.waitsFor(k, done) {
					continue
				}
				with := done | 1<<k
				if best[with] == nil {
					best[with] = make(map[leg]state)
				}
				for c := range t.courses[k] {
					next := leg{k, c}
					cost := s.cost + t.link(last, next) + t.courses[k][c].inner
					if old, ok := best[with][next]; !ok || cost < old.cost {
						best[with][next] = state{cost, last}
					}
				}
			}
		}
	}
	all := 1<<n - 1
	end, least := nowhere, math.Inf(1)
	for _, last := range t.legsIn(all) {
		if s, ok := best[all][last]; ok && s.cost+t.link(last, nowhere) < least {
			end, least = last, s.cost+t.link(last, nowhere)
		}
	}
	legs := make([]leg, n)
	for i, done := n-1, all; i >= 0; i-- {
		legs[i] = end
		from := best[done][end].from
		done &^= 1 << end.task
		end = from
	}
	return legs
}

// legsIn lists the legs of a set of tasks, in order; nowhere for none.
func (t *tour) legsIn(done int) []leg {
	if done == 0 {
		return []leg{nowhere}
	}
	var legs []leg
	for k := range t.tasks {
		if done&(1<<k) != 0 {
			for c := range t.courses[k] {
				legs = append(legs, leg{k, c})
			}
		}
	}
	return legs
}

func (t *tour) waitsFor(k, done int) bool {
	for o := range t.tasks {
		if done&(1<<o) == 0 && t.tasks[o].before(t.tasks[k]) {
			return true
		}
	}
	return false
}
