package ingest

import (
	"math"
	"slices"
	"testing"

	"github.com/paulmach/orb"
	"pgregory.net/rapid"
)

// assembled builds areas of lines that must close.
func assembled(t rapid.TB, lines [][]orb.Point) orb.MultiPolygon {
	t.Helper()
	a := newAssembly(lines)
	if ends := a.openEnds(); len(ends) > 0 {
		t.Fatalf("open at %v", ends)
	}
	n := nesting{left: nestingSteps}
	areas, ok := n.areas(a, a.rings())
	if !ok {
		t.Fatalf("rings cross: %v", lines)
	}
	return a.multiPolygon(areas)
}

// cells are squares of a grid, some of them taken.
type cells struct {
	wide, high int
	taken      []bool
}

func drawCells(t *rapid.T) cells {
	c := cells{wide: rapid.IntRange(1, 7).Draw(t, "wide"), high: rapid.IntRange(1, 7).Draw(t, "high")}
	c.taken = rapid.SliceOfN(rapid.Bool(), c.wide*c.high, c.wide*c.high).Draw(t, "taken")
	if !slices.Contains(c.taken, true) {
		c.taken[0] = true
	}
	return c
}

// rings are those of the cells taken, each by itself, at a place that may lie
// across the antimeridian.
func (c cells) rings(west float64) [][]orb.Point {
	var rings [][]orb.Point
	at := func(x, y int) orb.Point { return orb.Point{rounded(wrap(west + float64(x)*0.001)), float64(y) * 0.001} }
	for i, taken := range c.taken {
		if x, y := i%c.wide, i/c.wide; taken {
			rings = append(rings, []orb.Point{at(x, y), at(x+1, y), at(x+1, y+1), at(x, y+1), at(x, y)})
		}
	}
	return rings
}

// pieces cuts lines in two, turns some round and mixes them.
func pieces(t *rapid.T, lines [][]orb.Point) [][]orb.Point {
	var all [][]orb.Point
	for _, line := range lines {
		k := rapid.IntRange(1, len(line)-1).Draw(t, "cut")
		all = append(all, slices.Clone(line[:k+1]), slices.Clone(line[k:]))
	}
	for _, line := range all {
		if rapid.Bool().Draw(t, "turn") {
			slices.Reverse(line)
		}
	}
	return rapid.Permutation(all).Draw(t, "order")
}

// TestAssemblyLaws: squares of a grid, cut up and mixed, become areas that
// cover just these squares; no ring meets itself, holes lie in their shells,
// and the order of the pieces does not matter.
func TestAssemblyLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := drawCells(t)
		west := rapid.SampledFrom([]float64{-180, -0.003, 12, 179.997}).Draw(t, "west")
		lines := pieces(t, c.rings(west))
		got := assembled(t, lines)
		if again := assembled(t, pieces(t, c.rings(west))); !orb.Equal(got, again) {
			t.Errorf("the order matters: %v and %v", got, again)
		}
		var area float64
		for _, polygon := range got {
			for i, r := range polygon {
				checkSimple(t, r)
				ring := trace{points: r}
				twice, _ := ring.area()
				if (twice > 0) != (i == 0) {
					t.Errorf("ring %d of %v runs the wrong way", i, polygon)
				}
				area += twice / 2e-6
			}
		}
		want := 0
		for i, taken := range c.taken {
			if taken {
				want++
			}
			middle := orb.Point{wrap(west + float64(i%c.wide)*0.001 + 0.0005), float64(i/c.wide)*0.001 + 0.0005}
			if covers(got, middle) != taken {
				t.Errorf("cell %d: taken %v", i, taken)
			}
		}
		if math.Abs(area-float64(want)) > 1e-6 {
			t.Errorf("got an area of %v cells, want %d", area, want)
		}
	})
}

// checkSimple: a ring is closed and comes to no other place twice.
func checkSimple(t rapid.TB, r orb.Ring) {
	t.Helper()
	last := len(r) - 1
	if last < 3 || r[0] != r[last] {
		t.Errorf("not a closed ring: %v", r)
		return
	}
	seen := make(map[orb.Point]bool)
	for _, p := range r[:last] {
		if seen[p] {
			t.Errorf("comes to %v twice: %v", p, r)
		}
		seen[p] = true
	}
}

// covers reports whether exactly one polygon has p inside its shell and in
// none of its holes.
func covers(all orb.MultiPolygon, p orb.Point) bool {
	times := 0
	for _, polygon := range all {
		inside := 0
		for _, r := range polygon {
			if around(r, p) {
				inside++
			}
		}
		if inside == 1 {
			times++
		}
	}
	return times == 1
}

// around counts crossings of a ring with the way east of p.
func around(r orb.Ring, p orb.Point) bool {
	odd := false
	for i := range r[1:] {
		a, b := offset(p, r[i]), offset(p, r[i+1])
		if (a[1] > 0) != (b[1] > 0) && (cross(a, b) > 0) == (b[1] > a[1]) {
			odd = !odd
		}
	}
	return odd
}

// TestAssemblyStar: a hostile star of many loops through one place is walked
// in no time.
func TestAssemblyStar(t *testing.T) {
	const loops = 100_000
	var lines [][]orb.Point
	for i := range loops {
		a := 2 * math.Pi * float64(i) / loops
		b := a + math.Pi/loops
		lines = append(lines, []orb.Point{{0, 0}, {math.Cos(a), math.Sin(a)}, {math.Cos(b), math.Sin(b)}, {0, 0}})
	}
	a := newAssembly(lines)
	if rings := a.rings(); len(rings) != loops {
		t.Errorf("got %d rings", len(rings))
	}
}

// TestNestingWork: rings within rings beyond all reason are given up.
func TestNestingWork(t *testing.T) {
	var lines [][]orb.Point
	for i := range 300 {
		s := float64(i+1) * 1e-4
		lines = append(lines, []orb.Point{{-s, -s}, {s, -s}, {s, s}, {-s, s}, {-s, -s}})
	}
	a := newAssembly(lines)
	rings := a.rings()
	n := nesting{left: 1e6}
	if areas, ok := n.areas(a, rings); !ok || len(areas) != 150 || n.left < 0 {
		t.Errorf("got %d areas, %v, %d left", len(areas), ok, n.left)
	}
	n = nesting{left: 1e4}
	if areas, _ := n.areas(a, rings); areas != nil || n.left >= 0 {
		t.Errorf("got %d areas, %d left", len(areas), n.left)
	}
}

// TestAssemblyCrossing: lines that cross without a common place make rings, or
// are given up, but never panic.
func TestAssemblyCrossing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		place := rapid.Custom(func(t *rapid.T) orb.Point {
			return orb.Point{float64(rapid.IntRange(0, 4).Draw(t, "x")), float64(rapid.IntRange(0, 4).Draw(t, "y"))}
		})
		var lines [][]orb.Point
		for range rapid.IntRange(1, 5).Draw(t, "lines") {
			line := rapid.SliceOfN(place, 2, 9).Draw(t, "line")
			lines = append(lines, append(line, line[0]))
		}
		a := newAssembly(lines)
		if ends := a.openEnds(); len(ends) > 0 {
			t.Fatalf("open at %v", ends)
		}
		edges := 0
		rings := a.rings()
		for _, r := range rings {
			checkSimple(t, a.line(r.vertices))
			edges += len(r.vertices) - 1
		}
		if edges != len(a.lines) {
			t.Errorf("rings have %d edges of %d", edges, len(a.lines))
		}
		n := nesting{left: nestingSteps}
		n.areas(a, rings)
	})
}
