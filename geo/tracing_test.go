package geo

import (
	"errors"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// reversed returns a ring wound the other way.
func reversed(r Ring) Ring {
	r = slices.Clone(r)
	slices.Reverse(r)
	return r
}

func TestRingsThatMeetThemselves(t *testing.T) {
	square := rectangle(0, 0, 10, 10)
	for _, tt := range []struct {
		name   string
		rings  []Ring
		area   float64 // by the non-zero rule
		stake  float64 // 0: accepted as it is
		count  int
		at     XY
		pieces int
	}{
		{name: "square", rings: []Ring{square}, area: 100, pieces: 1},
		{name: "repeated vertices", rings: []Ring{{{0, 0}, {0, 0}, {10, 0}, {10, 10}, {10, 10}, {10, 10}, {0, 10}, {0, 0}}}, area: 100, pieces: 1},
		{name: "vertex on a straight edge", rings: []Ring{{{0, 0}, {5, 0}, {10, 0}, {10, 10}, {0, 10}}}, area: 100, pieces: 1},
		{name: "spike", rings: []Ring{{{0, 0}, {10, 0}, {10, 5}, {15, 5}, {10, 5}, {10, 10}, {0, 10}}}, area: 100, pieces: 1},
		{name: "spike inwards", rings: []Ring{{{0, 0}, {10, 0}, {10, 5}, {5, 5}, {10, 5}, {10, 10}, {0, 10}}}, area: 100, pieces: 1},
		{name: "edge walked back and forth", rings: []Ring{{{0, 0}, {10, 0}, {4, 0}, {7, 0}, {10, 0}, {10, 10}, {0, 10}}}, area: 100, pieces: 1},
		{name: "overshoot at a corner", rings: []Ring{{{0, 0}, {12, 0}, {10, 0}, {10, 10}, {0, 10}}}, area: 100, pieces: 1},
		{name: "nothing but back and forth", rings: []Ring{{{0, 0}, {10, 0}, {4, 0}, {7, 0}}}, area: 0},
		{name: "two positions", rings: []Ring{{{0, 0}, {10, 0}}}, area: 0},
		{name: "no rings", rings: nil, area: 0},
		{name: "empty ring", rings: []Ring{{}}, area: 0},
		{name: "keyhole", rings: []Ring{{{0, 0}, {10, 0}, {10, 10}, {0, 10}, {0, 4}, {4, 4}, {4, 6}, {6, 6}, {6, 4}, {4, 4}, {0, 4}}}, area: 96, pieces: 1},
		{name: "hole joined at a vertex", rings: []Ring{{{0, 0}, {10, 0}, {10, 10}, {0, 10}, {0, 0}, {2, 6}, {6, 2}}}, area: 84, pieces: 1},
		{name: "vertex that touches an edge", rings: []Ring{{{0, 0}, {10, 0}, {10, 10}, {5, 0}, {0, 10}}}, area: 50, pieces: 2},
		{name: "two squares joined at a vertex", rings: []Ring{{{0, 0}, {5, 0}, {5, 5}, {10, 5}, {10, 10}, {5, 10}, {5, 5}, {0, 5}}}, area: 50, pieces: 2},

		{name: "bow tie", rings: []Ring{{{0, 0}, {10, 10}, {10, 0}, {0, 10}}}, area: 50, stake: 50, count: 1, at: XY{5, 5}, pieces: 2},
		{name: "bow tie traced through its knot", rings: []Ring{{{0, 0}, {5, 5}, {10, 10}, {10, 0}, {5, 5}, {0, 10}}}, area: 50, stake: 50, at: XY{5, 5}, pieces: 2},
		{name: "lopsided bow tie", rings: []Ring{{{0, 0}, {9, 9}, {9, 3}, {0, 12}}}, area: 36 + 9, stake: 18, count: 1, at: XY{6, 6}, pieces: 2},
		{name: "round twice", rings: []Ring{slices.Concat(square, square)}, area: 100, stake: 100, pieces: 1, at: XY{0, 0}},
		{name: "round twice, the second time smaller", rings: []Ring{{{0, 0}, {10, 0}, {10, 10}, {0, 10}, {0, 2}, {6, 2}, {6, 8}, {0, 8}}}, area: 100, stake: 36, pieces: 1, at: XY{0, 8}},
		{name: "round and back", rings: []Ring{slices.Concat(square, Ring{{0, 0}}, reversed(square[1:]))}, area: 0, stake: 0},
		{name: "loop inside", rings: []Ring{{{0, 0}, {10, 0}, {10, 10}, {4, 10}, {4, 4}, {6, 4}, {6, 6}, {2, 6}, {2, 10}, {0, 10}}}, area: 92, stake: 4, count: 1, at: XY{4, 6}, pieces: 1},
		{name: "loop inside, the other way", rings: []Ring{{{0, 0}, {10, 0}, {10, 10}, {4, 10}, {4, 4}, {2, 4}, {2, 6}, {5, 6}, {5, 10}, {0, 10}}}, area: 96, stake: 4, count: 1, at: XY{4, 6}, pieces: 1},
		// Ground counted twice and ground cancelled make up for each other here.
		{name: "loops that balance", rings: []Ring{{{0, 0}, {10, 0}, {10, 2}, {10, 4}, {12, 4}, {12, 2}, {10, 2}, {10, 10}, {4, 10}, {4, 4}, {8, 4}, {8, 6}, {2, 6}, {2, 10}, {0, 10}}}, area: 96, stake: 16, count: 1, at: XY{4, 6}, pieces: 1},

		{name: "hole", rings: []Ring{square, rectangle(2, 2, 4, 4)}, area: 96, pieces: 1},
		{name: "hole outside the shell", rings: []Ring{square, rectangle(20, 0, 30, 10)}, area: 100, pieces: 1},
		{name: "hole over the edge", rings: []Ring{square, rectangle(8, 4, 12, 6)}, area: 96, pieces: 1},
		{name: "hole round the shell", rings: []Ring{square, rectangle(-1, -1, 11, 11)}, area: 0},
		{name: "hole that touches the shell with an edge", rings: []Ring{square, rectangle(0, 4, 2, 6)}, area: 96, pieces: 1},
		{name: "hole that touches the shell with a vertex", rings: []Ring{square, {{0, 5}, {2, 4}, {2, 6}}}, area: 98, pieces: 1},
		{name: "hole across the shell", rings: []Ring{square, rectangle(4, -1, 6, 11)}, area: 80, pieces: 2},
		{name: "holes that overlap", rings: []Ring{square, rectangle(2, 2, 5, 5), rectangle(4, 4, 7, 7)}, area: 100 - 17, pieces: 1},
		{name: "hole in a hole", rings: []Ring{square, rectangle(2, 2, 8, 8), rectangle(4, 4, 6, 6)}, area: 64, pieces: 1},
		{name: "hole that crosses itself", rings: []Ring{square, {{2, 2}, {8, 8}, {8, 2}, {2, 8}}}, area: 82, stake: 18, count: 1, at: XY{5, 5}, pieces: 1},
	} {
		t.Run(tt.name, func(t *testing.T) {
			checkReading(t, tt.rings, tt.area, tt.stake, tt.count, tt.at, tt.pieces)
			if len(tt.rings) > 0 {
				turned := slices.Clone(tt.rings)
				turned[0] = reversed(turned[0])
				if tt.count == 0 {
					tt.at = XY{-1, -1} // the first position come back to is another
				}
				checkReading(t, turned, tt.area, tt.stake, tt.count, tt.at, tt.pieces)
			}
		})
	}
}

func checkReading(t *testing.T, rings []Ring, area, stake float64, count int, at XY, pieces int) {
	t.Helper()
	r, err := NonZeroRegionOf(rings)
	if err != nil {
		t.Fatal(err)
	}
	checkValid(t, r)
	if math.Abs(r.PlanarArea()-area) > 1e-9 || len(r.polygons) != pieces {
		t.Errorf("non-zero reading: %.9f m2 in %d pieces, want %v in %d", r.PlanarArea(), len(r.polygons), area, pieces)
	}
	strict, err := RegionOf(rings)
	if stake == 0 {
		if err != nil || math.Abs(strict.PlanarArea()-area) > 1e-9 {
			t.Errorf("area %.9f m2, error %v; want %v m2", strict.PlanarArea(), err, area)
		}
		return
	}
	var crossing *CrossingError
	if !errors.As(err, &crossing) {
		t.Fatalf("error = %v, want a crossing", err)
	}
	if math.Abs(float64(crossing.AtStake)-stake) > 1e-9 || crossing.Count != count {
		t.Errorf("%d crossings, %.9f m2 at stake; want %d and %v", crossing.Count, float64(crossing.AtStake), count, stake)
	}
	if crossing.At != at && at != (XY{-1, -1}) {
		t.Errorf("crossing at %v, want %v", crossing.At, at)
	}
}

// The non-zero reading holds what a sum of angles says the ring goes round,
// however it crosses, overlaps and touches itself.
func TestNonZeroReadingAgreesWithWindingNumbers(t *testing.T) {
	check(t, 1000, func(t *rapid.T) {
		ring := drawScrawl(t)
		r := must[Region](t)(NonZeroRegionOf([]Ring{ring}))
		checkValid(t, r)
		random := rand.New(rand.NewPCG(4, 7))
		b := ring.bounds().Grown(0.5)
		for range 60 {
			p := XY{b.Min.X + b.Width()*random.Float64(), b.Min.Y + b.Height()*random.Float64()}
			if ring.clearOfEdges(p, 1e-3) && r.holds(p) != (ring.windingNumber(p) != 0) {
				t.Errorf("holds %v: %t, goes round it %d times", p, r.holds(p), ring.windingNumber(p))
			}
		}
	})
}

// A ring is accepted as it is if and only if each position is gone round once,
// or not at all, and always the same way.
func TestStrictReadingAgreesWithWindingNumbers(t *testing.T) {
	check(t, 1000, func(t *rapid.T) {
		ring := drawScrawl(t)
		r, err := RegionOf([]Ring{ring})
		most, least := 0, 0
		random := rand.New(rand.NewPCG(5, 9))
		b := ring.bounds()
		slight := negligible * ring.length()
		for range 300 {
			p := XY{b.Min.X + b.Width()*random.Float64(), b.Min.Y + b.Height()*random.Float64()}
			if ring.clearOfEdges(p, math.Sqrt(slight)) { // the ground about p is more than slight
				w := ring.windingNumber(p)
				most, least = max(most, w), min(least, w)
			}
		}
		if err == nil && most-least > 1 {
			t.Errorf("accepted, though wound %d to %d times", least, most)
		}
		if err == nil {
			if d := math.Abs(r.PlanarArea() - math.Abs(ring.signedArea())); d > slight+1e-9 {
				t.Errorf("accepted, though the readings are %g m2 apart", d)
			}
		}
		var crossing *CrossingError
		if err != nil && !errors.As(err, &crossing) {
			t.Errorf("error = %v", err)
		}
		if crossing != nil {
			nonZero := must[Region](t)(NonZeroRegionOf([]Ring{ring}))
			apart := math.Abs(nonZero.PlanarArea() - math.Abs(ring.signedArea()))
			if float64(crossing.AtStake) < apart-1e-5 {
				t.Errorf("%v m2 at stake, but the readings are %v apart", crossing.AtStake, apart)
			}
		}
	})
}

// The sweep must find what comparing all pairs of edges finds.
func TestSimple(t *testing.T) {
	check(t, 1000, func(t *rapid.T) {
		ring := drawScrawl(t)
		if rapid.Bool().Draw(t, "lawn") {
			ring = drawLawn(t, "lawn", 10)
		}
		want := true
		for i := range ring {
			if ring.next(i) == ring[i] {
				want = false
			}
			for j := range i {
				if ring.meet(j, i) {
					want = false
				}
			}
		}
		pairs, clear := ring.simpleByPairs()
		if sweep := ring.simpleBySweep(); pairs != want || sweep != want {
			t.Errorf("simple by pairs: %t, by sweep: %t, want %t", pairs, sweep, want)
		}
		n := &noder{strands: ring.strands(), limit: mostMeetings}
		n.sort()
		if crossings, _ := n.compare(); clear && (crossings > 0 || len(n.stops) > 0) {
			t.Errorf("edges said to keep clear of each other have %d crossings, %d stops", crossings, len(n.stops))
		}
	})
}

func TestTangledRing(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 1))
	knot := make(Ring, 3000)
	for i := range knot {
		knot[i] = XY{100 * random.Float64(), 100 * random.Float64()}.snapped()
	}
	for _, read := range []func([]Ring) (Region, error){RegionOf, NonZeroRegionOf} {
		if _, err := read([]Ring{knot}); !errors.Is(err, ErrTangled) {
			t.Errorf("error = %v, want ErrTangled", err)
		}
	}
}

// A walker who stands still leaves a knot of hundreds of crossings, which is
// not yet too many.
func TestKnottedRing(t *testing.T) {
	random := rand.New(rand.NewPCG(2, 1))
	ring := regular(300, 50)
	for i := range 90 {
		ring[i] = XY{50 + random.Float64(), random.Float64() - 1}.snapped()
	}
	r, err := NonZeroRegionOf([]Ring{ring})
	if err != nil {
		t.Fatal(err)
	}
	checkValid(t, r)
	var crossing *CrossingError
	if _, err := RegionOf([]Ring{ring}); !errors.As(err, &crossing) || crossing.Count < 300 {
		t.Errorf("error = %v, want one of hundreds of crossings", err)
	}
}

// Rings of 100,000 vertices must not take time that grows with the square.
func TestLargeRings(t *testing.T) {
	const n = 100_000
	for name, ring := range map[string]Ring{"spiky": spiky(n, 3), "wobbly": wobbly(n)} {
		t.Run(name, func(t *testing.T) {
			r := regionFrom(t, ring)
			same(t, "area", r.PlanarArea(), ring.signedArea())
			for _, reach := range []Length{0, 5, 5000} {
				sigma := AreaSigma(r, []Trace{{[]Ring{ring}, EdgeError{Sigma: 0.1, Reach: reach}}})
				if !(sigma > 0) || math.IsInf(float64(sigma), 0) {
					t.Errorf("sigma = %v m2 at a reach of %v m", sigma, reach)
				}
			}
		})
	}
}

// FuzzRegionOf traces rings on a coarse grid, where anything may fall on
// anything else, and asks for a valid region or a stated error.
func FuzzRegionOf(f *testing.F) {
	f.Add([]byte{0, 0, 9, 9, 9, 0, 0, 9})
	f.Add([]byte{0, 0, 4, 0, 4, 4, 0, 4, 0, 0, 4, 0, 4, 4, 0, 4})
	f.Add([]byte{0, 0, 8, 0, 4, 0, 8, 0, 8, 8, 0, 8, 3, 3, 3, 3})
	f.Fuzz(func(t *testing.T, data []byte) {
		var ring Ring
		for i := 0; i+1 < min(len(data), 64); i += 2 {
			ring = append(ring, XY{float64(data[i] % 16), float64(data[i+1] % 16)})
		}
		r, err := NonZeroRegionOf([]Ring{ring})
		if err != nil {
			t.Fatalf("%v: %v", ring, err)
		}
		checkValid(t, r)
		strict, err := RegionOf([]Ring{ring})
		if err == nil && math.Abs(strict.PlanarArea()-math.Abs(ring.signedArea())) > negligible*ring.length()+1e-9 {
			t.Errorf("%v: accepted with %v m2, traverse sum %v", ring, strict.PlanarArea(), ring.signedArea())
		}
	})
}

// Ground that meets itself at a corner and the ground beside it share their edge
// to the last digit, wherever it lies.
func TestRingsThatTouchThemselvesStayWhereTheyAre(t *testing.T) {
	check(t, 200, func(t *rapid.T) {
		metres := rapid.Float64Range(1, 9)
		x, y := metres.Draw(t, "x"), metres.Draw(t, "y") // of the corner
		wide, high := x+metres.Draw(t, "wide"), y+metres.Draw(t, "high")
		ring := Ring{{0, 0}, {x, 0}, {x, y}, {wide, y}, {wide, high}, {x, high}, {x, y}, {0, y}}
		whole := must[Region](t)(Union(regionFrom(t, ring), regionFrom(t, rectangle(x, 0, wide, y))))
		if len(whole.polygons) != 1 || len(whole.polygons[0].Holes) > 0 {
			t.Errorf("ground beside %v does not join it: %v", ring, whole.polygons)
		}
	})
}
