package lanes

import (
	"cmp"
	"flag"
	"math"
	"slices"
	"strconv"
	"testing"

	"pgregory.net/rapid"

	"example.org/turfplat/geo"
	"example.org/turfplat/zones"
)

// check tries a property on a number of random cases, fewer with -short.
func check(t *testing.T, cases int, property func(*rapid.T)) {
	t.Helper()
	if testing.Short() {
		cases = max(1, cases/10)
	}
	checks := flag.Lookup("rapid.checks")
	defer checks.Value.Set(checks.Value.String())
	checks.Value.Set(strconv.Itoa(cases))
	rapid.Check(t, property)
}

// A scene is an invented lawn with a bed and a tree, as rings, so that it can
// be moved.
type scene struct {
	lawn, bed geo.Ring
	tree      geo.XY
}

func drawScene(t *rapid.T) scene {
	n := rapid.IntRange(3, 9).Draw(t, "vertices")
	var s scene
	for i := range n {
		sin, cos := math.Sincos(2 * math.Pi * (float64(i) + rapid.Float64Range(0, 0.6).Draw(t, "turn")) / float64(n))
		r := rapid.Float64Range(8, 30).Draw(t, "radius")
		s.lawn = append(s.lawn, geo.XY{X: r * cos, Y: r * sin})
	}
	s.bed = regular(7, rapid.Float64Range(-5, 5).Draw(t, "bed x"), rapid.Float64Range(-5, 5).Draw(t, "bed y"), rapid.Float64Range(0.7, 4).Draw(t, "bed radius"))
	s.tree = geo.XY{X: rapid.Float64Range(-9, 9).Draw(t, "tree x"), Y: rapid.Float64Range(-9, 9).Draw(t, "tree y")}
	return s
}

func (s scene) moved(by func(geo.XY) geo.XY) scene {
	ring := func(r geo.Ring) geo.Ring {
		m := make(geo.Ring, len(r))
		for i, p := range r {
			m[i] = by(p)
		}
		return m
	}
	return scene{ring(s.lawn), ring(s.bed), by(s.tree)}
}

// yard lays the scene out. A bed that reaches past the lawn ends there.
func (s scene) yard(t failer) Yard {
	lawn := must[geo.Region](t)(geo.RegionOf([]geo.Ring{s.lawn}))
	bed := must[geo.Region](t)(geo.Intersection(must[geo.Region](t)(geo.RegionOf([]geo.Ring{s.bed})), lawn))
	y := yardOf(must[geo.Region](t)(geo.Difference(lawn, bed)), zones.Cover{Kind: zones.Bed, Region: bed})
	y.Posts = []Post{{s.tree, CommonPractice().TrunkRing}}
	return y
}

func drawWork(t *rapid.T) Work {
	w := singleWork(rapid.Float64Range(1.8, 4).Draw(t, "swath"))
	w.Mode = rapid.SampledFrom([]Mode{Single, Tight, Cross}).Draw(t, "mode")
	return w
}

// lines lists the lanes that spread, those walked one way like those walked
// the other, in an order of their own.
func (p Plan) lines() []geo.Line {
	var lines []geo.Line
	for _, l := range p.Lanes {
		if l.Spreading {
			lines = append(lines, l.Line)
		}
	}
	slices.SortFunc(lines, func(a, b geo.Line) int { return cmp.Compare(math.Round(length(a)*1e3), math.Round(length(b)*1e3)) })
	return lines
}

// A lawn turned and shifted takes lanes of the same lengths.
func TestMovedLawns(t *testing.T) {
	check(t, 25, func(t *rapid.T) {
		s, w := drawScene(t), drawWork(t)
		sin, cos := math.Sincos(rapid.Float64Range(0, 2*math.Pi).Draw(t, "turn"))
		east, north := rapid.Float64Range(-500, 500).Draw(t, "east"), rapid.Float64Range(-500, 500).Draw(t, "north")
		m := s.moved(func(p geo.XY) geo.XY { return geo.XY{X: p.X*cos - p.Y*sin + east, Y: p.X*sin + p.Y*cos + north} })
		p := must[Plan](t)(Lay(s.yard(t), w))
		q := must[Plan](t)(Lay(m.yard(t), w))
		sameLengths(t, p, q)
	})
}

func sameLengths(t *rapid.T, p, q Plan) {
	a, b := p.lines(), q.lines()
	if len(a) != len(b) {
		t.Fatalf("%d lanes, and %d when moved", len(a), len(b))
	}
	for i := range a {
		near(t, "length of a lane", length(b[i]), length(a[i]), 0, 0.005)
	}
	near(t, "length of all lanes", q.SpreadLength(), p.SpreadLength(), 1e-4, 0)
}

// A lawn seen in a mirror takes the lanes seen in a mirror, from a spreader
// that has its deflector on the other side.
func TestMirroredLawns(t *testing.T) {
	check(t, 25, func(t *rapid.T) {
		s, w := drawScene(t), drawWork(t)
		mirror := func(p geo.XY) geo.XY { return geo.XY{X: -p.X, Y: p.Y} }
		p := must[Plan](t)(Lay(s.yard(t), w))
		w.Shield = Left
		q := must[Plan](t)(Lay(s.moved(mirror).yard(t), w))
		sameLengths(t, p, q)
		for _, l := range p.lines() {
			middle := mirror(halfwayAlong(l))
			if !slices.ContainsFunc(q.lines(), func(m geo.Line) bool { return distanceToLine(middle, m) < 0.02 }) {
				t.Errorf("no lane runs through %v, where the mirror shows one", middle)
			}
		}
	})
}

func halfwayAlong(l geo.Line) geo.XY { return shortened(l, length(l)/2)[0] }

// Lanes lie in the ground that is to be treated and clear of trunks, ways in
// neither bed nor trunk; what lanes put out is the rate times the ground.
func TestLanesKeepToTheGround(t *testing.T) {
	check(t, 40, func(t *rapid.T) {
		y, w := drawScene(t).yard(t), drawWork(t)
		p := must[Plan](t)(Lay(y, w))
		var put float64
		for _, l := range p.Lanes {
			for _, at := range divided(l.Line, 0.25) {
				if l.Spreading && distanceToEdges(at, p.Walked[0]) > 1e-3 && !p.Walked[0].Contains(at) {
					t.Errorf("lane %d leaves the ground at %v", l.N, at)
				}
				if away := at.Distance(y.Posts[0].At); away < y.Posts[0].Radius*0.9 {
					t.Errorf("lane %d, spreading: %v, comes within %.2f m of the trunk %v, cut %v", l.N, l.Spreading, away, y.Posts, p.Cut)
				}
				if !l.Spreading && len(p.Cut) == 0 && y.Closed[0].Region.Contains(at) && distanceToEdges(at, y.Closed[0].Region) > 1e-3 {
					t.Errorf("the way to lane %d crosses the bed at %v", l.N, at)
				}
			}
			put += l.Ground
		}
		if p.SpreadLength() == 0 {
			return
		}
		turf := areaOf([]geo.Region{y.Plots[0].Turf}) - areaOf(p.Hand)
		near(t, "ground served by the output of all lanes", put, turf, 0.01, 0)
		c := p.Coverage(y)
		var all, on float64
		for f := range p.fields(y) {
			cast := p.cast(f)
			for i, v := range cast.cells {
				all += float64(v) * cast.step * cast.step
				if f.ground.cells[i] == served {
					on += float64(v) * cast.step * cast.step
				}
			}
		}
		near(t, "all that lands, as lengths of lanes", all, p.SpreadLength(), 1e-3, 0)
		near(t, "what lands on the ground, beside it and on other turf", on/all+c.Outside+c.Seam, 1, 1e-6, 0)
		var where float64
		for _, share := range c.Where {
			where += share
		}
		near(t, "what lands off the turf", where, c.Outside, 1e-9, 1e-12)
	})
}

// The strokes of a lane leave its length's output, before that is made exact.
func TestStrokes(t *testing.T) {
	row := geo.Line{{X: -9, Y: -4}, {X: 10, Y: 5.5}}
	for _, name := range Shapes {
		p := must[Pattern](t)(Shaped(name, 2.5))
		rel := 0.01
		if name == "drop" {
			rel = 0.05 // ends of a sudden, on ten cells a swath: half a cell may be lost
		}
		near(t, name+" row", rawOutput(Lane{Pass: Fill, Line: row}, p), length(row), rel, 0)
		lap := closed(regular(24, 0, 0, 12))
		near(t, name+" lap", rawOutput(Lane{Pass: Header, Line: lap}, p), length(lap), rel, 0)
	}
}

// rawOutput sums what a lane leaves on open turf.
func rawOutput(l Lane, p Pattern) float64 {
	ground := newRaster[uint8](geo.Bounds{Min: geo.XY{X: -20, Y: -20}, Max: geo.XY{X: 20, Y: 20}}, p.Swath()/cellsPerSwath)
	var sum float64
	for _, s := range strokes(l) {
		for _, at := range ground.within(s.bounds(p)) {
			sum += s.leaves(at, p, true)
		}
	}
	return sum * ground.step * ground.step
}

// The same yard gives the same lanes, every time.
func TestLayIsRepeatable(t *testing.T) {
	y := hectare(t)
	want := must[Plan](t)(Lay(y, singleWork(3)))
	got := must[Plan](t)(Lay(hectare(t), singleWork(3)))
	for i, l := range want.Lanes {
		if !slices.Equal(l.Line, got.Lanes[i].Line) {
			t.Fatalf("lane %d: %v, then %v", l.N, l.Line, got.Lanes[i].Line)
		}
	}
}
