package geo

import (
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// drawStrand draws a strand between spots that are few enough to lie on each
// other, or a mesh beside, now and then far apart.
func drawStrand(t *rapid.T, set int) strand {
	spot1 := func(label string) spot {
		scale := rapid.SampledFrom([]int64{1, 1, 3, 1 << 33, 1 << 50}).Draw(t, label+" scale")
		at := func(axis string) int64 {
			return scale*rapid.Int64Range(-4, 4).Draw(t, label+axis) + rapid.Int64Range(-1, 1).Draw(t, label+axis+" beside")
		}
		return spot{at(" x"), at(" y")}
	}
	a, b := spot1("a"), spot1("b")
	if a == b {
		b.x++
	}
	return strandOf(set, a, b)
}

// Strands that are passed over as clear of each other have nothing to do with
// each other.
func TestClearStrandsDoNotMeet(t *testing.T) {
	check(t, 20000, func(t *rapid.T) {
		s, o := drawStrand(t, 0), drawStrand(t, 1)
		if !s.clearOf(&o) {
			return
		}
		stops := func(s, o strand) bool {
			return !s.ends(o.a) && s.passes(o.a) || !s.ends(o.b) && s.passes(o.b)
		}
		apart := !o.ends(s.a) && !o.ends(s.b)
		if stops(s, o) || stops(o, s) || apart && s.crosses(o) {
			t.Errorf("%v and %v are not clear of each other", s, o)
		}
	})
}

func strandOrder(s, o strand) int { return compareStrands(&s, &o) }

func TestFreshStrandsAreMergedInOrder(t *testing.T) {
	check(t, 500, func(t *rapid.T) {
		n := newNoder(mostCrossings)
		defer n.release()
		for i := range rapid.IntRange(0, 12).Draw(t, "known") {
			n.strands = append(n.strands, drawStrand(t, i))
			n.strands[i].fresh = false
		}
		slices.SortFunc(n.strands, strandOrder)
		for i := range rapid.IntRange(0, 12).Draw(t, "fresh") {
			n.strands = slices.Insert(n.strands, rapid.IntRange(0, len(n.strands)).Draw(t, "at"), drawStrand(t, 100+i))
		}
		want := slices.Clone(n.strands)
		slices.SortFunc(want, strandOrder)
		if n.sort(); !slices.Equal(n.strands, want) {
			t.Errorf("in order %v, want %v", n.strands, want)
		}
	})
}
