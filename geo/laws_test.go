package geo

import (
	"math"
	"slices"
	"testing"

	"github.com/paulmach/orb"
	"pgregory.net/rapid"
)

// same asks two areas to agree to 1e-9 of their size or 1e-6 m2.
func same(t failer, what string, got, want float64) {
	t.Helper()
	if !near(got, want, 1e-6, 1e-9) {
		t.Errorf("%s: %.9f m2, want %.9f", what, got, want)
	}
}

func TestAreaDoesNotDependOnHowARingIsTraced(t *testing.T) {
	check(t, 1000, func(t *rapid.T) {
		lawn := drawLawn(t, "lawn", 500)
		want := regionFrom(t, lawn)
		start := rapid.IntRange(0, len(lawn)-1).Draw(t, "start")
		traced := slices.Concat(lawn[start:], lawn[:start])
		if rapid.Bool().Draw(t, "clockwise") {
			slices.Reverse(traced)
		}
		again := rapid.IntRange(0, len(lawn)-1).Draw(t, "repeated")
		traced = slices.Insert(traced, again, traced[again])
		got := regionFrom(t, traced)
		if got.PlanarArea() != want.PlanarArea() || !slices.Equal(got.polygons[0].Shell, want.polygons[0].Shell) {
			t.Errorf("traced as %v: %v, want %v", traced, got, want)
		}
	})
}

// A lawn has the same area in any frame near it, and a lawn laid out with the
// same eastings and northings has the same area anywhere.
func TestAreaIsTheSameInEveryFrame(t *testing.T) {
	check(t, 1000, func(t *rapid.T) {
		lawn := drawLawn(t, "lawn", 1000)
		at := orb.Point{rapid.Float64Range(-180, 180).Draw(t, "lon"), rapid.Float64Range(-80, 80).Draw(t, "lat")}
		places := NewFrame(at).Places(lawn)
		f := NewFrame(Center(slices.Values(places)))
		got, want := float64(f.Area(regionFrom(t, f.Ring(places)))), math.Abs(lawn.signedArea())
		if !near(got, want, lawn.length()*grain/2, 1e-9) { // all that snapping can do to a small lawn
			t.Errorf("area %.9f m2, want %.9f", got, want)
		}
	})
}

func TestOverlayLaws(t *testing.T) {
	check(t, 300, func(t *rapid.T) {
		a, b := regionFrom(t, drawLawn(t, "a", 15)), regionFrom(t, drawLawn(t, "b", 15))
		either := must[Region](t)(Union(a, b))
		both := must[Region](t)(Intersection(a, b))
		onlyA := must[Region](t)(Difference(a, b))
		for _, r := range []Region{either, both, onlyA} {
			checkValid(t, r)
		}
		same(t, "union and intersection", either.PlanarArea()+both.PlanarArea(), a.PlanarArea()+b.PlanarArea())
		same(t, "difference and intersection", onlyA.PlanarArea()+both.PlanarArea(), a.PlanarArea())
		overlap := must[Region](t)(Intersection(onlyA, b))
		same(t, "overlap of the difference with what was taken away", overlap.PlanarArea(), 0)
		turned := must[Region](t)(Union(b, a))
		same(t, "union the other way round", turned.PlanarArea(), either.PlanarArea())
	})
}

// Beds are traced along walls and lot lines: their vertices lie on the edges
// of a lawn, or a grain beside them.
func TestOverlayAlongCommonEdges(t *testing.T) {
	check(t, 500, func(t *rapid.T) {
		lawn := drawLawn(t, "lawn", 15)
		var bed Ring
		at := rapid.IntRange(0, len(lawn)-1).Draw(t, "edge")
		for range rapid.IntRange(2, 6).Draw(t, "positions on edges") {
			i := at % len(lawn)
			share := rapid.SampledFrom([]float64{0, 0.125, 1. / 3, 0.5, 0.9}).Draw(t, "share")
			bed = append(bed, lawn[i].Toward(lawn.next(i), share).snapped())
			at += rapid.IntRange(0, 1).Draw(t, "on")
		}
		bed = append(bed, XY{rapid.Float64Range(-30, 30).Draw(t, "x"), rapid.Float64Range(-30, 30).Draw(t, "y")}.snapped())
		a, b := regionFrom(t, lawn), must[Region](t)(NonZeroRegionOf([]Ring{bed}))
		either, both := must[Region](t)(Union(a, b)), must[Region](t)(Intersection(a, b))
		onlyA, onlyB := must[Region](t)(Difference(a, b)), must[Region](t)(Difference(b, a))
		slight := allowance(a, b)
		for _, sum := range []struct {
			what      string
			got, want float64
		}{
			{"union and intersection", either.PlanarArea() + both.PlanarArea(), a.PlanarArea() + b.PlanarArea()},
			{"difference and intersection", onlyA.PlanarArea() + both.PlanarArea(), a.PlanarArea()},
			{"difference the other way and intersection", onlyB.PlanarArea() + both.PlanarArea(), b.PlanarArea()},
			{"all that is apart", onlyA.PlanarArea() + onlyB.PlanarArea() + both.PlanarArea(), either.PlanarArea()},
		} {
			if math.Abs(sum.got-sum.want) > slight {
				t.Errorf("%s: %.9f m2, want %.9f within %.2g", sum.what, sum.got, sum.want, slight)
			}
		}
	})
}

func TestUnionDoesNotDependOnOrder(t *testing.T) {
	check(t, 200, func(t *rapid.T) {
		regions := make([]Region, rapid.IntRange(2, 6).Draw(t, "regions"))
		for i := range regions {
			regions[i] = regionFrom(t, drawLawn(t, "lawn", 60))
		}
		want := must[Region](t)(Union(regions...))
		got := must[Region](t)(Union(rapid.Permutation(regions).Draw(t, "order")...))
		checkValid(t, got)
		same(t, "union in another order", got.PlanarArea(), want.PlanarArea())
		whole := must[Region](t)(wholeOf(regions))
		same(t, "union without shortcuts", got.PlanarArea(), whole.PlanarArea())
	})
}

// blocks are regions of unit squares on a board, of which everything is known.
type blocks [board][board]bool

const board = 7

func drawBlocks(t *rapid.T, label string) blocks {
	var b blocks
	density := rapid.IntRange(1, 9).Draw(t, label+" density")
	for x := range board {
		for y := range board {
			b[x][y] = rapid.IntRange(0, 9).Draw(t, label) < density
		}
	}
	return b
}

func (b blocks) with(o blocks, both func(bool, bool) bool) (blocks, int) {
	count := 0
	for x := range board {
		for y := range board {
			if b[x][y] = both(b[x][y], o[x][y]); b[x][y] {
				count++
			}
		}
	}
	return b, count
}

func (b blocks) region(t failer) Region { return must[Region](t)(Union(b.squares(t)...)) }

func (b blocks) squares(t failer) []Region {
	var squares []Region
	for x := range board {
		for y := range board {
			if b[x][y] {
				squares = append(squares, regionFrom(t, rectangle(float64(x), float64(y), float64(x+1), float64(y+1))))
			}
		}
	}
	return squares
}

func (b blocks) checkRegion(t failer, what string, r Region, count int) {
	t.Helper()
	checkValid(t, r)
	if r.PlanarArea() != float64(count) {
		t.Errorf("%s: area %v, want %d", what, r.PlanarArea(), count)
	}
	for x := range board {
		for y := range board {
			if p := (XY{float64(x) + 0.5, float64(y) + 0.5}); r.holds(p) != b[x][y] {
				t.Errorf("%s: holds %v: %t", what, p, r.holds(p))
			}
		}
	}
}

// Blocks touch, nest and leave islands in holes, which is where shortcuts go
// wrong.
func TestOverlayOfBlocks(t *testing.T) {
	check(t, 150, func(t *rapid.T) {
		a, b := drawBlocks(t, "a"), drawBlocks(t, "b")
		ra, rb := a.region(t), b.region(t)
		for _, op := range []struct {
			name    string
			overlay func(a, b Region) (Region, error)
			both    func(a, b bool) bool
		}{
			{"union", func(a, b Region) (Region, error) { return Union(a, b) }, func(a, b bool) bool { return a || b }},
			{"intersection", Intersection, func(a, b bool) bool { return a && b }},
			{"difference", Difference, func(a, b bool) bool { return a && !b }},
		} {
			want, count := a.with(b, op.both)
			want.checkRegion(t, op.name, must[Region](t)(op.overlay(ra, rb)), count)
		}
	})
}

// What lies strictly inside something is overlaid without the engine, and must
// come out as the engine has it.
func TestNestingAgreesWithTheEngine(t *testing.T) {
	ring := func(x, y, radius float64) Ring {
		r := regular(12, radius)
		for i := range r {
			r[i] = r[i].Plus(XY{x, y}).snapped()
		}
		return r
	}
	lawn := []Ring{rectangle(-50, -50, 50, 50), ring(-25, 0, 10), ring(25, 0, 12)}
	for _, tt := range []struct {
		name string
		b    []Region
		fast bool
	}{
		{"bed clear of the lawn's own holes", []Region{regionFrom(t, ring(0, 0, 5))}, true},
		{"two beds", []Region{regionFrom(t, ring(0, 30, 5)), regionFrom(t, ring(0, -30, 5))}, true},
		{"path round an island", []Region{regionFrom(t, ring(0, 30, 12), ring(0, 30, 8))}, true},
		{"path round an island with a bed", []Region{regionFrom(t, ring(0, 30, 12), ring(0, 30, 8)), regionFrom(t, ring(0, 30, 3))}, false},
		{"bed in a hole", []Region{regionFrom(t, ring(-25, 0, 5))}, false},
		{"bed round a hole", []Region{regionFrom(t, ring(-25, 0, 15))}, false},
		{"bed that touches a hole", []Region{regionFrom(t, rectangle(-15, -1, -10, 1))}, false},
		{"bed over the edge", []Region{regionFrom(t, ring(50, 0, 5))}, false},
		{"bed elsewhere", []Region{regionFrom(t, ring(90, 0, 5))}, false},
	} {
		t.Run(tt.name, func(t *testing.T) {
			a, b := regionFrom(t, lawn...), must[Region](t)(Union(tt.b...))
			if _, fast := pierced(a, b); fast != tt.fast {
				t.Errorf("taken out without an overlay: %t, want %t", fast, tt.fast)
			}
			in, out, err := partsOf(a, b)
			if err != nil {
				t.Fatal(err)
			}
			gotIn, gotOut := must[Region](t)(Intersection(a, b)), must[Region](t)(Difference(a, b))
			same(t, "intersection", gotIn.PlanarArea(), in.PlanarArea())
			same(t, "difference", gotOut.PlanarArea(), out.PlanarArea())
			for x := -49.5; x < 100; x += 3 {
				for y := -49.5; y < 50; y += 3 {
					if p := (XY{x, y}); gotIn.holds(p) != in.holds(p) || gotOut.holds(p) != out.holds(p) {
						t.Errorf("overlay and shortcut disagree at %v", p)
					}
				}
			}
		})
	}
}

func TestCentroidOfAReflectedLawn(t *testing.T) {
	check(t, 300, func(t *rapid.T) {
		lawn := drawLawn(t, "lawn", 500)
		mirrored := make(Ring, len(lawn))
		for i, p := range lawn {
			mirrored[i] = p.Times(-1)
		}
		c, m := regionFrom(t, lawn).Centroid(), regionFrom(t, mirrored).Centroid()
		if d := c.Plus(m).Norm(); d > 1e-9 {
			t.Errorf("centroids are %g m from being mirrored", d)
		}
	})
	if c := regionFrom(t, rectangle(10, 20, 14, 26)).Centroid(); c != (XY{12, 23}) {
		t.Errorf("centroid of a rectangle = %v", c)
	}
}
