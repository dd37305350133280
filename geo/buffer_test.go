package geo

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

func TestBufferLaws(t *testing.T) {
	check(t, 150, func(t *rapid.T) {
		lawn := regionFrom(t, drawLawn(t, "lawn", 50))
		d := rapid.Float64Range(0.05, 5).Draw(t, "distance")
		grown, shrunk := must[Region](t)(lawn.Buffer(d)), must[Region](t)(lawn.Buffer(-d))
		checkValid(t, grown)
		checkValid(t, shrunk)
		if beyond := must[Region](t)(Difference(lawn, grown)); beyond.PlanarArea() > 1e-6 {
			t.Errorf("%g m2 of the lawn are not in its surroundings", beyond.PlanarArea())
		}
		if beyond := must[Region](t)(Difference(shrunk, lawn)); beyond.PlanarArea() > 1e-6 {
			t.Errorf("%g m2 of the inset are not in the lawn", beyond.PlanarArea())
		}
		// No vertex of an inset comes nearer the edge than d, by more than what
		// the engine smooths away.
		for _, p := range shrunk.polygons {
			for _, v := range p.Shell {
				for _, e := range lawn.edgeList() {
					if e.distance(v) < d*(1-smoothing)-1e-6 {
						t.Errorf("inset of %v m comes within %v m of the edge", d, e.distance(v))
					}
				}
			}
		}
	})
}

const smoothing = 0.0113 // see Buffer, and the chords of round joins

// A convex region grows by its perimeter times d and the disc of radius d
// (Steiner's formula).
func TestBufferOfConvexRegions(t *testing.T) {
	for name, ring := range map[string]Ring{"square": rectangle(0, 0, 20, 20), "strip": rectangle(0, 0, 100, 1),
		"triangle": {{0, 0}, {30, 0}, {10, 20}}, "60-gon": regular(60, 15)} {
		for _, d := range []float64{0.3, 1, 7} {
			r := regionFrom(t, ring)
			got := must[Region](t)(r.Buffer(d)).PlanarArea() - ring.signedArea() - d*ring.length()
			if disc := math.Pi * d * d; !near(got, disc, 1e-6, 0.0019) { // chords of 5.6 or 6 degrees instead of a circle
				t.Errorf("%s: corners of a buffer of %v m take %v m2, want %v", name, d, got, disc)
			}
		}
	}
	square := regionFrom(t, rectangle(0, 0, 20, 20))
	same(t, "inset of a square", must[Region](t)(square.Buffer(-3)).PlanarArea(), 14*14)
	if r := must[Region](t)(square.Buffer(-10)); !r.Empty() {
		t.Errorf("inset by half its width leaves %v m2", r.PlanarArea())
	}
	if r := must[Region](t)(square.Buffer(0)); r.PlanarArea() != 400 {
		t.Errorf("buffer of nothing has %v m2", r.PlanarArea())
	}
	if r := must[Region](t)(Region{}.Buffer(5)); !r.Empty() {
		t.Errorf("surroundings of nothing have %v m2", r.PlanarArea())
	}
}

func TestDisc(t *testing.T) {
	check(t, 300, func(t *rapid.T) {
		radius := rapid.Float64Range(0.01, 500).Draw(t, "radius")
		at := XY{rapid.Float64Range(-500, 500).Draw(t, "x"), rapid.Float64Range(-500, 500).Draw(t, "y")}
		d := Disc(at, radius)
		if !near(d.PlanarArea(), math.Pi*radius*radius, 2*math.Pi*radius*grain, 1e-12) {
			t.Errorf("area = %.9f m2, want %.9f", d.PlanarArea(), math.Pi*radius*radius)
		}
		for _, p := range d.polygons[0].Shell {
			if off := p.Minus(at).Norm(); off > radius*1.0009+grain || off < radius {
				t.Errorf("vertex %v m from the middle of a disc of %v m", off, radius)
			}
		}
	})
	for _, radius := range []float64{0, 1e-9, 1e-7} {
		if d := Disc(XY{1, 2}, radius); !d.Empty() {
			t.Errorf("disc of %v m has %d vertices", radius, len(d.polygons[0].Shell))
		}
	}
}

func TestStroke(t *testing.T) {
	const bend = 4 * quadrantEdges // chords of a full turn
	// a round join at a right angle adds a quarter of the polygon of chords
	corner := bend / 4 * math.Sin(2*math.Pi/bend) / 2
	for _, tt := range []struct {
		name  string
		line  Line
		width float64
		want  float64
		abs   float64
	}{
		{"straight", Line{{0, 0}, {30, 0}}, 2, 60, 1e-9 * 60},
		{"straight, askew", Line{{1, 2}, {31, 42}}, 1.5, 75, 1e-9 * 75},
		{"straight, in two parts", Line{{0, 0}, {10, 0}, {30, 0}}, 2, 60, 1e-9 * 60},
		{"position repeated", Line{{0, 0}, {10, 0}, {10, 0}, {30, 0}}, 2, 60, 1e-9 * 60},
		// two legs, their overlap counted once, the outer corner round
		{"right angle", Line{{0, 0}, {10, 0}, {10, 10}}, 2, 20 + 20 - 1 + corner, 1e-6},
		// corners overlap inside and are round outside
		{"closed", Line{{0, 0}, {10, 0}, {10, 10}, {0, 10}, {0, 0}}, 2, 100 + 4*10 + 4*corner - 64, 1e-6},
		{"closed, started mid-way", Line{{5, 0}, {10, 0}, {10, 10}, {0, 10}, {0, 0}, {5, 0}}, 2, 100 + 4*10 + 4*corner - 64, 1e-6},
		{"closed and filled", Line{{0, 0}, {2, 0}, {2, 2}, {0, 2}, {0, 0}}, 2, 4 + 8 + 4*corner, 1e-6},
		{"no length", Line{{3, 3}, {3, 3}, {3, 3}}, 2, 0, 0},
		{"one position", Line{{3, 3}}, 2, 0, 0},
		{"nothing", nil, 2, 0, 0},
		{"no width", Line{{0, 0}, {30, 0}}, 0, 0, 0},
	} {
		t.Run(tt.name, func(t *testing.T) {
			r := must[Region](t)(tt.line.Stroke(tt.width))
			checkValid(t, r)
			if !near(r.PlanarArea(), tt.want, tt.abs, 0) {
				t.Errorf("area = %.9f m2, want %.9f", r.PlanarArea(), tt.want)
			}
		})
	}
}

// drawLine draws a line of any positions, closed or not, that may go back along
// itself.
func drawLine(t *rapid.T) Line {
	l := Line(drawScrawl(t))
	if rapid.Bool().Draw(t, "to and fro") {
		a, b := l[0], l[1]
		l = Line{a, b, a.Toward(b, rapid.Float64Range(0, 1).Draw(t, "back to")).snapped()}
	}
	if rapid.Bool().Draw(t, "closed") {
		l = append(l, l[0])
	}
	return l
}

// A strip hangs on the ground alone: not on the end from which its line was
// drawn, nor on where a closed one was started. Along a line that goes back on
// itself, corners of the strip lie within rounding of each other, and a setback
// round it would bend about them in another way.
func TestStrokesOfOneLineAreTheSame(t *testing.T) {
	check(t, 300, func(t *rapid.T) {
		l := drawLine(t)
		other := slices.Clone(l)
		if l[0] == l[len(l)-1] {
			start := rapid.IntRange(1, len(l)-1).Draw(t, "start")
			other = slices.Concat(l[start:], l[1:start+1])
		}
		if rapid.Bool().Draw(t, "the other way") {
			slices.Reverse(other)
		}
		width := rapid.Float64Range(0.1, 8).Draw(t, "width")
		want, got := must[Region](t)(l.Stroke(width)), must[Region](t)(other.Stroke(width))
		if !slices.EqualFunc(got.polygons, want.polygons, func(a, b Polygon) bool { return slices.EqualFunc(a.Rings(), b.Rings(), slices.Equal[Ring]) }) {
			t.Errorf("strips of %v and of %v differ", l, other)
		}
	})
}
