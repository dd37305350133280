package lanes

import "slices"

// gain is the least shortening, in metres, worth a move.
const gain = 1e-6

// improve makes each move of up to three tasks, and each turning of a stretch,
// that shortens the tour and leaves headers before their fill (Or 1976; Croes
// 1958). It reports whether there was any.
func (t *tour) improve(legs []leg) bool {
	moved := false
	for i := range legs {
		for size := 1; size <= 3 && i+size <= len(legs); size++ {
			moved = t.move(legs, i, size) || moved
		}
		moved = t.turn(legs, i) || moved
	}
	return moved
}

// move takes size legs from i on to the best other place, as they are or
// turned.
func (t *tour) move(legs []leg, i, size int) bool {
	first, last := legs[i], legs[i+size-1]
	out := t.link(at(legs, i-1), first) + t.link(last, at(legs, i+size)) - t.link(at(legs, i-1), at(legs, i+size))
	best, to, back := gain, -1, false
	try := func(j int, a, b leg) { // between a and b, before index j
		joint := t.link(a, b)
		if d := out + joint - t.link(a, first) - t.link(last, b); d > best {
			best, to, back = d, j, false
		}
		if f, l, ok := t.endsTurned(legs[i : i+size]); ok {
			if d := out + joint - t.link(a, f) - t.link(l, b); d > best {
				best, to, back = d, j, true
			}
		}
	}
	for j := i - 1; j >= 0 && t.free(legs[i:i+size], legs[j:j+1], false); j-- {
		try(j, at(legs, j-1), legs[j])
	}
	for j := i + size; j < len(legs) && t.free(legs[i:i+size], legs[j:j+1], true); j++ {
		try(j+1, legs[j], at(legs, j+1))
	}
	if to < 0 {
		return false
	}
	taken := slices.Clone(legs[i : i+size])
	if back {
		if !t.turnable(taken) {
			return false
		}
		t.reverse(taken)
	}
	rest := slices.Concat(legs[:i], legs[i+size:])
	if to > i {
		to -= size
	}
	copy(legs, slices.Insert(rest, to, taken...))
	return true
}

// free reports whether moved legs may pass others: onwards, that is, to behind
// them.
func (t *tour) free(moved, passed []leg, onwards bool) bool {
	for _, m := range moved {
		for _, p := range passed {
			a, b := t.tasks[m.task], t.tasks[p.task]
			if onwards && a.before(b) || !onwards && b.before(a) {
				return false
			}
		}
	}
	return true
}

// turn walks the stretch from i to the best other leg the other way round.
func (t *tour) turn(legs []leg, i int) bool {
	best, to := gain, -1
	var inside float64 // links within the stretch, less those of the turned one
	for j := i; j < len(legs) && t.turnable(legs[i:j+1]); j++ {
		if j > i {
			inside += t.link(legs[j-1], legs[j]) - t.link(t.turned(legs[j]), t.turned(legs[j-1]))
		}
		d := inside + t.link(at(legs, i-1), legs[i]) + t.link(legs[j], at(legs, j+1)) -
			t.link(at(legs, i-1), t.turned(legs[j])) - t.link(t.turned(legs[i]), at(legs, j+1))
		if d > best {
			best, to = d, j
		}
	}
	if to < 0 {
		return false
	}
	t.reverse(legs[i : to+1])
	return true
}

// turnable reports whether a stretch may be walked the other way round, as far
// as its last leg is concerned.
func (t *tour) turnable(legs []leg) bool {
	last := legs[len(legs)-1]
	return t.free(legs[:len(legs)-1], []leg{last}, true)
}

func (t *tour) turned(l leg) leg {
	if !t.tasks[l.task].lap {
		l.course ^= 1
	}
	return l
}

func (t *tour) endsTurned(legs []leg) (first, last leg, ok bool) {
	return t.turned(legs[len(legs)-1]), t.turned(legs[0]), len(legs) == 1
}

func (t *tour) reverse(legs []leg) {
	slices.Reverse(legs)
	for i := range legs {
		legs[i] = t.turned(legs[i])
	}
}
