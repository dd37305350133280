package geo

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// exposedWhole exposes all edges of a counter-clockwise ring.
func exposedWhole(r Ring) []exposure {
	xs := make([]exposure, len(r))
	for i := range r {
		xs[i] = exposure{edge: i, part: span{0, 1}, outward: 1}
	}
	return xs
}

// Published check values: first-order sd by the closed formula (for equal
// steps the circular autoregressive covariance, rho a step), second-order sd
// with n sigma^4/2 added, and the sd of 400,000 trials drawn with numpy, seed
// 42, whose own sampling error is 0.11 %. Reach is -step/ln(rho).
func TestAreaErrorCheckValues(t *testing.T) {
	ell := Ring{{0, 0}, {30, 0}, {30, 12}, {18, 12}, {18, 24}, {0, 24}}
	for _, tt := range []struct {
		name                         string
		ring                         Ring
		sigma, rho                   float64
		first, second, drawn, within float64 // second 0: not published; within: of drawn, relative
	}{
		{"20 m square", rectangle(0, 0, 20, 20), 1, 0, 28.2843, 28.3196, 28.2457, 0.004},
		{"50 m square", rectangle(0, 0, 50, 50), 3, 0, 212.1320, 212.5135, 212.7978, 0.004},
		{"30 x 20 m", rectangle(0, 0, 30, 20), 0.5, 0, 18.0278, 18.0312, 18.0301, 0.004},
		{"L 30 x 24 less 12 x 12", ell, 1, 0, 33.4066, 33.4515, 33.5140, 0.004},
		{"20 m square, coarse", rectangle(0, 0, 20, 20), 5, 0, 141.4214, 145.7738, 145.4008, 0.004},
		{"60-gon", regular(60, 15), 2, 0, 24.2902, 32.7111, 32.6906, 0.004},
		{"60-gon, rho 0.5", regular(60, 15), 2, 0.5, 41.6184, 0, 45.7067, 0.004},
		{"60-gon, rho 0.9", regular(60, 15), 2, 0.9, 74.9949, 0, 75.6078, 0.004},
		{"60-gon, rho 0.98", regular(60, 15), 2, 0.98, 33.7006, 0, 33.7442, 0.004},
	} {
		t.Run(tt.name, func(t *testing.T) {
			reach := 0.0
			if tt.rho > 0 {
				reach = -tt.ring.next(0).Minus(tt.ring[0]).Norm() / math.Log(tt.rho)
			}
			gradient, share := new(claims).gradients(tt.ring, exposedWhole(tt.ring))
			w := newWayRound(tt.ring, reach)
			s2 := tt.sigma * tt.sigma
			first := math.Sqrt(s2 * w.firstOrder(gradient))
			second := math.Sqrt(s2*w.firstOrder(gradient) + s2*s2*w.secondOrder(share))
			if !near(first, tt.first, 6e-5, 0) {
				t.Errorf("first order: %.4f m2, want %.4f", first, tt.first)
			}
			if tt.second != 0 && !near(second, tt.second, 6e-5, 0) {
				t.Errorf("second order: %.4f m2, want %.4f", second, tt.second)
			}
			got := float64(AreaSigma(regionFrom(t, tt.ring), []Trace{{[]Ring{tt.ring}, EdgeError{Sigma: Length(tt.sigma), Reach: Length(reach)}}}))
			if !near(got, second, 0, 1e-9) || !near(got, tt.drawn, 0, tt.within) {
				t.Errorf("AreaSigma = %.4f m2, want %.4f, drawn %.4f", got, second, tt.drawn)
			}
		})
	}
}

// The sums over all pairs of vertices are run up in one pass; here they are
// taken one by one.
func TestSumsOverPairsOfVertices(t *testing.T) {
	check(t, 1000, func(t *rapid.T) {
		ring := drawLawn(t, "lawn", 50)
		n := len(ring)
		reach := rapid.SampledFrom([]float64{0, 1e-3, 0.5, 5, 50, 5e3, 5e6}).Draw(t, "reach")
		var exposed []exposure
		for i := range ring {
			from := rapid.Float64Range(0, 1).Draw(t, "from")
			exposed = append(exposed, exposure{i, span{from, rapid.Float64Range(from, 1).Draw(t, "to")}, rapid.SampledFrom([]float64{1, -1}).Draw(t, "outward")})
		}
		gradient, share := new(claims).gradients(ring, exposed)
		w := newWayRound(ring, reach)
		defer w.release()
		var first, second, size float64
		for i := range n {
			for j := range n {
				first += w.of(i, j) / w.both * gradient[i].Dot(gradient[j])
				second += pairOf(w, i, j) * share[i] * share[j]
				size += math.Abs(gradient[i].Dot(gradient[j]))
			}
		}
		if got := w.firstOrder(gradient); !near(got, first, 1e-9*size, 0) {
			t.Errorf("first order %.12g, one by one %.12g", got, first)
		}
		if got := w.secondOrder(share); !near(got, second, 1e-9, 0) {
			t.Errorf("second order %.12g, one by one %.12g", got, second)
		}
	})
}

// pairOf returns the part of secondOrder that belongs to two vertices of whole
// shares.
func pairOf(w *wayRound, i, j int) float64 {
	before, after := w.beside(i)
	former, latter := w.beside(j)
	stepped := w.of(after, latter) - w.of(after, former) - w.of(before, latter) + w.of(before, former)
	return w.of(i, j) * stepped / (4 * w.both * w.both)
}

func TestSharedShiftMovesNoArea(t *testing.T) {
	check(t, 300, func(t *rapid.T) {
		ring := drawLawn(t, "lawn", 50)
		traces := []Trace{{[]Ring{ring}, EdgeError{Sigma: 1, Reach: 1e9}}}
		if got := AreaSigma(regionFrom(t, ring), traces); got > 0.01 {
			t.Errorf("sigma = %v m2 though all vertices shift together", got)
		}
	})
}

func TestAreaErrorDoesNotDependOnHowARingIsTraced(t *testing.T) {
	check(t, 300, func(t *rapid.T) {
		ring := drawLawn(t, "lawn", 50)
		r := regionFrom(t, ring)
		e := EdgeError{Sigma: 0.3, Reach: Length(rapid.SampledFrom([]float64{0, 8, 200}).Draw(t, "reach")),
			Kind: rapid.SampledFrom([]ErrorKind{Vertices, Width, Walk}).Draw(t, "kind")}
		want := AreaSigma(r, []Trace{{[]Ring{ring}, e}})
		start := rapid.IntRange(0, len(ring)-1).Draw(t, "start")
		traced := slices.Concat(ring[start:], ring[:start])
		if rapid.Bool().Draw(t, "clockwise") {
			slices.Reverse(traced)
		}
		traced = slices.Insert(traced, start, traced[start])
		if got := AreaSigma(r, []Trace{{[]Ring{traced}, e}}); !near(float64(got), float64(want), 1e-9, 1e-9) {
			t.Errorf("sigma = %v m2, want %v", got, want)
		}
	})
}

func TestAreaSigma(t *testing.T) {
	square, bed := rectangle(0, 0, 20, 20), rectangle(5, 5, 9, 9)
	vertices := func(sigma Length) EdgeError { return EdgeError{Sigma: sigma} }
	less := func(a, b Ring) Region {
		return must[Region](t)(Difference(regionFrom(t, a), regionFrom(t, b)))
	}
	alone := func(r Ring, e EdgeError) float64 {
		return float64(AreaSigma(regionFrom(t, r), []Trace{{[]Ring{r}, e}}))
	}
	path := []Ring{rectangle(0, 0, 20, 20), reversed(rectangle(2, 2, 18, 18))} // 2 m wide
	for _, tt := range []struct {
		name   string
		region Region
		traces []Trace
		want   float64
		rel    float64
	}{
		{"no region", Region{}, []Trace{{[]Ring{square}, vertices(1)}}, 0, 0},
		{"no traces", regionFrom(t, square), nil, 0, 0},
		{"trace of something else", regionFrom(t, square), []Trace{{[]Ring{rectangle(1, 1, 19, 19)}, vertices(1)}}, 0, 0},
		{"bed taken out: variances add", less(square, bed), []Trace{{[]Ring{bed}, vertices(0.3)}, {[]Ring{square}, vertices(1)}},
			math.Hypot(alone(square, vertices(1)), alone(bed, vertices(0.3))), 1e-12},
		{"exact bed", less(square, bed), []Trace{{[]Ring{bed}, vertices(0)}, {[]Ring{square}, vertices(1)}}, alone(square, vertices(1)), 1e-12},
		{"two traces of one edge: the first counts", regionFrom(t, square), []Trace{{[]Ring{square}, vertices(0.2)}, {[]Ring{square}, vertices(1)}},
			alone(square, vertices(0.2)), 1e-12},
		{"two traces of one edge, the first exact", regionFrom(t, square), []Trace{{[]Ring{square}, vertices(0)}, {[]Ring{square}, vertices(1)}}, 0, 0},

		// The half of a square with its east side from another trace. To first
		// order: each vertex errs by sigma along the gradient, half the sum of
		// its exposed normals.
		{"edge shared with a neighbour", regionFrom(t, square), []Trace{{[]Ring{rectangle(20, -5, 40, 25)}, vertices(0)}, {[]Ring{square}, vertices(0.001)}},
			0.001 * math.Sqrt(2*(10*10+10*10)+2*(10*10)), 1e-6},
		// A bed over the middle third of the south side leaves the ends of it:
		// of a displacement of one end, 1/2 - 1/6 of the length is left.
		{"edge partly covered", less(rectangle(0, 0, 30, 20), rectangle(10, -5, 20, 5)),
			[]Trace{{[]Ring{rectangle(10, -5, 20, 5)}, vertices(0)}, {[]Ring{rectangle(0, 0, 30, 20)}, vertices(0.001)}},
			0.001 * math.Sqrt(2*(10*10+15*15)+2*(10*10+10*10)), 1e-6},

		{"width of a square", regionFrom(t, square), []Trace{{[]Ring{square}, EdgeError{Sigma: 0.1, Kind: Width}}}, 0.1 * 80, 1e-12},
		{"width of a path round a lawn", regionFrom(t, path...), []Trace{{path, EdgeError{Sigma: 0.1, Kind: Width}}}, 0.1 * (80 + 64), 1e-12},
		{"width of a path, hole traced like the shell", regionFrom(t, path...), []Trace{{[]Ring{path[0], reversed(path[1])}, EdgeError{Sigma: 0.1, Kind: Width}}}, 0.1 * (80 + 64), 1e-12},
		{"lawn inside a path of uncertain width", regionFrom(t, path[1]), []Trace{{path, EdgeError{Sigma: 0.1, Kind: Width}}}, 0.1 * 64, 1e-12},
		{"walk", regionFrom(t, square), []Trace{{[]Ring{square}, EdgeError{Sigma: 2, Kind: Walk}}}, 0.45 * 2 * 80, 1e-12},
	} {
		t.Run(tt.name, func(t *testing.T) {
			if got := float64(AreaSigma(tt.region, tt.traces)); !near(got, tt.want, 0, tt.rel) {
				t.Errorf("sigma = %.9f m2, want %.9f", got, tt.want)
			}
		})
	}
}

// A lawn of two traces, a bed of a third inside it and one of a fourth over
// its edge: the vertices are moved at random and the lawn made again.
func TestAreaSigmaAgainstRandomVertices(t *testing.T) {
	trials := 3000
	if testing.Short() {
		trials = 300
	}
	outline := Ring{{0, 0}, {30, 2}, {33, 20}, {14, 26}, {-2, 18}}
	inner, outer := Ring{{8, 8}, {13, 7}, {15, 12}, {10, 14}}, Ring{{20, -2}, {27, -3}, {26, 6}, {21, 5}}
	make1 := func(o, i, e Ring) Region {
		beds := must[Region](t)(Union(regionFrom(t, i), regionFrom(t, e)))
		return must[Region](t)(Difference(regionFrom(t, o), beds))
	}
	const so, si, se = 0.3, 0.1, 0.2
	want := float64(AreaSigma(make1(outline, inner, outer), []Trace{
		{[]Ring{inner}, EdgeError{Sigma: si}}, {[]Ring{outer}, EdgeError{Sigma: se}}, {[]Ring{outline}, EdgeError{Sigma: so}}}))
	random := rand.New(rand.NewPCG(11, 3))
	moved := func(r Ring, sigma float64) Ring {
		m := make(Ring, len(r))
		for i, p := range r {
			m[i] = p.Plus(XY{sigma * random.NormFloat64(), sigma * random.NormFloat64()}).snapped()
		}
		return m
	}
	var sum, squares float64
	for range trials {
		a := make1(moved(outline, so), moved(inner, si), moved(outer, se)).PlanarArea()
		sum, squares = sum+a, squares+a*a
	}
	n := float64(trials)
	drawn := math.Sqrt((squares - sum*sum/n) / (n - 1))
	if margin := 3.5 / math.Sqrt(2*n); math.Abs(drawn/want-1) > margin {
		t.Errorf("AreaSigma = %.4f m2, drawn %.4f (within %.1f %%)", want, drawn, 100*margin)
	}
}
