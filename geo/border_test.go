package geo

import (
	"math"
	"slices"
	"testing"

	"github.com/paulmach/orb"
	"pgregory.net/rapid"
)

// The slow path: every edge is compared with every other, and an edge with the
// same ends with no more right than others.

func slowFrontage(f Frame, r *Border, o Region, d float64) Length {
	var sum float64
	for i, e := range r.edges {
		var spans []span
		for _, other := range o.edgeList() {
			if s, ok := e.alongside(other, d); ok && other.bounds().Meets(e.bounds().Grown(d/math.Cos(mostAskew))) {
				spans = append(spans, s)
			}
		}
		if len(r.counting) > 0 {
			spans = common(spans, r.counting[i].spans(), nil)
		}
		sum += covered(spans) * f.trueLength(e.a, e.b)
	}
	return Length(sum)
}

func slowFacings(r Region, narrow float64) []facing {
	var found []facing
	edges := r.edgeList()
	for i, e := range edges {
		for j, o := range edges {
			if compareXY(e.a, o.a) > 0 || i == j || e.narrowness(&o) <= 0 {
				continue
			}
			if part, ok := e.alongside(o, narrow*e.narrowness(&o)); ok {
				found = append(found, facing{int32(i), int32(j), part, o.apart(e.at((part.from + part.to) / 2))})
			}
		}
	}
	return found
}

// slowExposures are what of the edges of rings in order bounds a region.
func slowExposures(rings []Ring, r Region) [][]exposure {
	const same = 1e-5
	edges := r.edgeList()
	free := make([][]span, len(edges))
	for j := range free {
		free[j] = []span{{0, 1}}
	}
	all := make([][]exposure, len(rings))
	for k, ring := range rings {
		for i, a := range ring {
			e := edge{a, ring.next(i)}
			alone := slices.IndexFunc(edges, e.same)
			for j, o := range edges {
				part, ok := o.alongside(e, same)
				if !ok || alone >= 0 && j != alone || !o.bounds().Meets(e.bounds().Grown(same)) {
					continue
				}
				for _, s := range free[j] {
					if taken := (span{max(s.from, part.from), min(s.to, part.to)}); taken.from < taken.to {
						all[k] = append(all[k], exposed(i, e, o, taken))
					}
				}
				free[j] = without(free[j], part)
			}
		}
	}
	return all
}

// drawMeeting draws two regions that lie on each other's edges in part, and
// the rings they come from. A few of the rings are moved by hairs.
func drawMeeting(t *rapid.T) (a, b Region, rings []Ring) {
	hair := rapid.SampledFrom([]float64{0, grain, 1e-6, 1e-5, 0.02}).Draw(t, "hair")
	draw := drawLawnOrBox
	for _, label := range []string{"bed", "lawn", "walk"} {
		rings = append(rings, draw(t, label))
	}
	bed, lawn, walk := regionFrom(t, rings[0]), regionFrom(t, rings[1]), regionFrom(t, rings[2])
	a = must[Region](t)(Difference(must[Region](t)(Difference(lawn, bed)), walk))
	b = must[Region](t)(Union(bed, walk))
	for i, p := range rings[0] {
		if rapid.IntRange(0, 3).Draw(t, "moved") == 0 {
			rings[0][i] = p.Plus(XY{hair, -hair}).snapped()
		}
	}
	return a, b, rings
}

func drawLawnOrBox(t *rapid.T, label string) Ring {
	if rapid.Bool().Draw(t, label+" traced") {
		return drawLawn(t, label, 10)
	}
	at := func(from int, what string) float64 {
		return float64(rapid.IntRange(from, from+8).Draw(t, label+what)) / 4
	}
	return rectangle(at(0, " west"), at(0, " south"), at(9, " east"), at(9, " north"))
}

// inRows is a border in rows, however few its edges are.
func inRows(r Region, narrow float64) *Border {
	b := newBorder(r, 0)
	b.layRows(2*narrow + grain)
	return b
}

func TestBorderFindsWhatComparingAllFinds(t *testing.T) {
	f := NewFrame(orb.Point{10, 50})
	check(t, 1000, func(t *rapid.T) {
		a, b, rings := drawMeeting(t)
		narrow := rapid.SampledFrom([]float64{1e-5, 0.05, 0.5}).Draw(t, "narrow")
		border, other, bare := NewBroadBorder(a, narrow), NewBorder(b), NewBorder(a)
		if rapid.Bool().Draw(t, "in rows") { // as if they were many
			border, other, bare = inRows(a, narrow), inRows(b, 0), inRows(a, narrow)
			border.strikeNarrow(narrow)
		}
		found, _ := bare.facings(narrow)
		want := slowFacings(a, narrow)
		slices.SortFunc(found, border.byNearness)
		slices.SortFunc(want, border.byNearness)
		if !slices.Equal(found, want) {
			t.Errorf("facings %v, comparing all %v", found, want)
		}
		d := rapid.SampledFrom([]float64{1e-5, 0.05, 0.5}).Draw(t, "distance")
		if got, want := f.Frontage(border, other, d), slowFrontage(f, border, b, d); got != want {
			t.Errorf("frontage %v m, comparing all %v m", got, want)
		}
		c := newClaims(border)
		for k, want := range slowExposures(rings, a) {
			if got := c.claim(rings[k], rings[k].bounds()); !slices.Equal(got, want) {
				t.Errorf("ring %d bounds it at %v, comparing all at %v", k, got, want)
			}
		}
	})
}

// Of combs, whose teeth stand in few rows, facings are the same as well.
func TestFacingsOfCombs(t *testing.T) {
	check(t, 100, func(t *rapid.T) {
		teeth := rapid.IntRange(30, 70).Draw(t, "teeth")
		pitch, slant := rapid.SampledFrom([]float64{0.04, 0.1, 0.3}).Draw(t, "pitch"), rapid.Float64Range(-20, 20).Draw(t, "slant")
		width := float64(teeth) * pitch
		comb := Ring{{0, 0}, {0, -1}, {width, -1}, {width, 0}}
		for i := teeth - 1; i >= 0; i-- {
			west, east := (float64(i)+0.2)*pitch, (float64(i)+0.6)*pitch
			long := rapid.Float64Range(-0.9, 10).Draw(t, "length")
			comb = append(comb, XY{east, 0}, XY{east + long/10*slant, long}, XY{west + long/10*slant, long}, XY{west, 0})
		}
		turn := rapid.SampledFrom([]float64{0, 30, 90}).Draw(t, "turn") * degree
		for i, p := range comb {
			comb[i] = XY{p.X*math.Cos(turn) - p.Y*math.Sin(turn), p.X*math.Sin(turn) + p.Y*math.Cos(turn)}.snapped()
		}
		r := pieces(comb)
		const narrow = 0.05
		bare := inRows(r, narrow)
		found, all := bare.facings(narrow)
		if want := slowFacings(r, narrow); all {
			slices.SortFunc(found, bare.byNearness)
			slices.SortFunc(want, bare.byNearness)
			if !slices.Equal(found, want) {
				t.Errorf("%d facings, comparing all %d", len(found), len(want))
			}
		} else if len(want) <= len(found)/2 {
			t.Errorf("%d facings are too many, and comparing all finds %d", len(found), len(want))
		}
	})
}

func TestBorderOfOddShapes(t *testing.T) {
	comb := Ring{{0, 0}}
	for i := range 400 { // long teeth
		comb = append(comb, XY{float64(i) + 0.2, 50}, XY{float64(i) + 0.8, 1})
	}
	comb = append(comb, XY{400, 0})
	for name, r := range map[string]Region{
		"comb": regionFrom(t, comb), "hairline": regionFrom(t, rectangle(0, 0, 1000, grain)), "none": {},
	} {
		b := NewBorder(r)
		if n := len(b.edges); len(b.list) > (edgesARow+2)*n || len(b.first) > n+2 || n > manyEdges && len(b.list) < n {
			t.Errorf("%s: %d edges make %d rows with %d", name, n, len(b.first)-1, len(b.list))
		}
		for i, e := range b.edges {
			if got := b.near(e, 0, nil); !slices.Contains(got, int32(i)) {
				t.Errorf("%s: edge %d is not found where it is", name, i)
			}
			if b.same(edge{e.b, e.a}) != i {
				t.Errorf("%s: edge %d is not found by its ends", name, i)
			}
		}
	}
}
