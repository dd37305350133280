package geo

import (
	"flag"
	"math"
	"math/rand/v2"
	"strconv"
	"testing"

	"pgregory.net/rapid"
)

// check runs a property over a number of cases; fewer with -short.
func check(t *testing.T, cases int, property func(*rapid.T)) {
	t.Helper()
	if testing.Short() {
		cases = max(1, cases/10)
	}
	checks := flag.Lookup("rapid.checks")
	before := checks.Value.String()
	defer func() { _ = checks.Value.Set(before) }()
	_ = checks.Value.Set(strconv.Itoa(cases))
	rapid.Check(t, property)
}

// failer is what testing.T and rapid.T have in common.
type failer interface {
	Helper()
	Errorf(format string, args ...any)
	Fatalf(format string, args ...any)
}

func must[T any](t failer) func(T, error) T {
	return func(v T, err error) T {
		t.Helper()
		if err != nil {
			t.Fatalf("unexpected error: %v", err)
		}
		return v
	}
}

func regionFrom(t failer, rings ...Ring) Region {
	t.Helper()
	return must[Region](t)(RegionOf(rings))
}

func rectangle(west, south, east, north float64) Ring {
	return Ring{{west, south}, {east, south}, {east, north}, {west, north}}
}

// regular returns a regular polygon.
func regular(n int, radius float64) Ring {
	r := make(Ring, n)
	for i := range r {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(n))
		r[i] = XY{radius * cos, radius * sin}
	}
	return r
}

// spiky returns a star of n vertices at random distances of 10 to 30 m.
func spiky(n int, seed uint64) Ring {
	random := rand.New(rand.NewPCG(seed, 0))
	r := regular(n, 1)
	for i := range r {
		r[i] = r[i].Times(10 + 20*random.Float64()).snapped()
	}
	return r
}

// wobbly returns a smooth lawn of n vertices, some 15 m across.
func wobbly(n int) Ring {
	r := regular(n, 15)
	for i := range r {
		turn := 2 * math.Pi * float64(i) / float64(n)
		r[i] = r[i].Times(1 + 0.2*math.Sin(3*turn) + 0.1*math.Cos(7*turn)).snapped()
	}
	return r
}

// drawLawn draws a ring that does not cross itself: vertices in all
// directions from a middle within reach metres of the frame's centre.
func drawLawn(t *rapid.T, label string, reach float64) Ring {
	n := rapid.IntRange(3, 24).Draw(t, label+" vertices")
	middle := XY{rapid.Float64Range(-reach, reach).Draw(t, label+" x"), rapid.Float64Range(-reach, reach).Draw(t, label+" y")}
	r := regular(n, 1)
	for i := range r {
		r[i] = middle.Plus(r[i].Times(rapid.Float64Range(2, 20).Draw(t, label+" radius"))).snapped()
	}
	return r
}

// drawScrawl draws a ring of any positions, half the time on a coarse grid,
// where edges overlap and vertices lie on edges.
func drawScrawl(t *rapid.T) Ring {
	n := rapid.IntRange(3, 14).Draw(t, "vertices")
	r := make(Ring, n)
	grid := rapid.Bool().Draw(t, "on a grid")
	for i := range r {
		if grid {
			r[i] = XY{float64(rapid.IntRange(0, 5).Draw(t, "x")), float64(rapid.IntRange(0, 5).Draw(t, "y"))}
			continue
		}
		r[i] = XY{rapid.Float64Range(-20, 20).Draw(t, "x"), rapid.Float64Range(-20, 20).Draw(t, "y")}.snapped()
	}
	return r
}

// windingNumber sums the angles under which the edges are seen from p.
func (r Ring) windingNumber(p XY) int {
	var sum float64
	for i, a := range r {
		u, v := a.Minus(p), r.next(i).Minus(p)
		sum += math.Atan2(u.Cross(v), u.Dot(v))
	}
	return int(math.Round(sum / (2 * math.Pi)))
}

// clearOfEdges reports whether p lies d metres or more from all edges.
func (r Ring) clearOfEdges(p XY, d float64) bool {
	for i, a := range r {
		if (edge{a, r.next(i)}).distance(p) < d {
			return false
		}
	}
	return true
}

// checkValid proves that a region is what Polygon and Region promise: rings
// wound as they should be, none crossing itself or another, holes in their
// shells, pieces apart.
func checkValid(t failer, r Region) {
	t.Helper()
	for _, p := range r.polygons {
		if p.Shell.signedArea() <= 0 {
			t.Errorf("shell is not counter-clockwise")
		}
		for i, ring := range p.Rings() {
			if i > 0 && ring.signedArea() >= 0 {
				t.Errorf("hole is not clockwise")
			}
			if simple, _ := ring.simple(); !simple {
				t.Errorf("ring touches itself: %v", ring)
			}
			if outer := p.Shell.locate(ring[0].Toward(ring[1], 0.5)); i > 0 && outer != inside {
				t.Errorf("hole is not in its shell")
			}
		}
	}
	edges := r.edgeList()
	for i, e := range edges {
		for _, o := range edges[:i] {
			if overlap(e, o) {
				t.Errorf("edges %v and %v cross or overlap", e, o)
			}
		}
	}
}

// overlap reports whether edges cross, or share more than one point.
func overlap(e, o edge) bool {
	abc, abd := orientation(e.a, e.b, o.a), orientation(e.a, e.b, o.b)
	cda, cdb := orientation(o.a, o.b, e.a), orientation(o.a, o.b, e.b)
	if abc == 0 && abd == 0 {
		along := e.b.Minus(e.a)
		at := func(p XY) float64 { return p.Minus(e.a).Dot(along) }
		return max(at(o.a), at(o.b)) > 0 && min(at(o.a), at(o.b)) < along.Dot(along)
	}
	return abc*abd < 0 && cda*cdb < 0
}

// edgeList returns the edges of the region, in order.
func (r Region) edgeList() []edge { return r.appendEdges(nil) }

func (e edge) distance(p XY) float64 { return p.DistanceToEdge(e.a, e.b) }
