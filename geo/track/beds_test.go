package track

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"example.org/turfplat/geo"
)

// from starts a ring at its corner k, comes back there and goes a little past
// it.
func from(ring []geo.XY, k int, past float64) []geo.XY {
	line := slices.Concat(ring[k:], ring[:k], ring[k:k+1])
	ahead := line[1].Minus(line[0])
	return append(line, line[0].Plus(ahead.Times(past/ahead.Norm())))
}

// TestBedsInLawns walks lawns, and then a bed somewhere in each, entered at its
// nearest corner: both rings come out with their areas, but for a few walks in
// a hundred where the way across the lawn closes a ring. Who stops at the very
// corner at which the bed was entered loses no bed either.
func TestBedsInLawns(t *testing.T) {
	for _, tt := range []struct {
		past         float64 // m, beyond the corner at which the bed was entered
		lost, missed int     // of 120 walks, at most
	}{{2, 1, 4}, {0, 1, 6}} {
		lost, missed := walkBeds(120, tt.past)
		if lost > tt.lost || missed > tt.missed {
			t.Errorf("%g m past the corner: %d of 120 walks of a lawn and a bed lose one of them, %d come out as something else", tt.past, lost, missed)
		}
	}
}

// walkBeds returns how many walks do not come out as two rings, and how many
// not as the two that were walked.
func walkBeds(walks int, past float64) (lost, missed int) {
	rng := rand.New(rand.NewPCG(1, 1))
	for seed := range uint64(walks) {
		lawn, bed := rectangle(18+rng.Float64()*20, 14+rng.Float64()*12), rectangle(5+rng.Float64()*6, 4+rng.Float64()*4)
		corner := geo.XY{X: 1.5 + rng.Float64()*(lawn[2].X-bed[2].X-3), Y: 1.5 + rng.Float64()*(lawn[2].Y-bed[2].Y-3)}
		bed = shifted(bed, corner)[:4]
		k := rng.IntN(4)
		nearest := 0
		for i := range bed {
			if bed[i].Distance(lawn[k]) < bed[nearest].Distance(lawn[k]) {
				nearest = i
			}
		}
		w, _ := Rings(tracksOf(alongLine(seed, 0.3, slices.Concat(from(lawn, k, 3), from(bed, nearest, past))...)), Options{Side: OnEdge})
		right := len(w.Rings) == 2
		if len(w.Rings) < 2 {
			lost++
		}
		for i, ring := range [][]geo.XY{lawn, bed} {
			area := signedArea(ring)
			right = right && math.Abs(float64(w.Rings[i].Area)-area) <= max(0.1*area, 1.2*float64(w.Rings[i].CI95))
		}
		if !right {
			missed++
		}
	}
	return lost, missed
}
