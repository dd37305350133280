package sun

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"example.org/turfplat/geo"
)

func contoursOf(t failer, f *Field, turf geo.Region) []Contour {
	t.Helper()
	contours, err := Contours(f, turf, DefaultLimits())
	if err != nil {
		t.Fatalf("contours: %v", err)
	}
	return contours
}

// Hours that fall evenly from west to east pass each limit on a straight line
// from edge to edge, with the sunny ground on its left.
func TestContoursAcross(t *testing.T) {
	lawn := region(t, rectangle(0, 0, 16, 12))
	contours := contoursOf(t, fieldOf(lawn, 0.5, func(p geo.XY) float64 { return 8.1 - p.X/2 }), lawn)
	for i, west := range []float64{4.2, 8.2, 12.2} {
		c := contours[i]
		if area := float64(frame.Area(c.Above)); math.Abs(area-12*west) > 0.1 {
			t.Errorf("%g h: %.2f m2 above, want %.2f", c.Hours, area, 12*west)
		}
		if len(c.Lines) != 1 {
			t.Fatalf("%g h: %d lines", c.Hours, len(c.Lines))
		}
		line := c.Lines[0]
		for _, p := range line {
			if math.Abs(p.X-west) > tolerance {
				t.Errorf("%g h: runs through %v, want %g m east", c.Hours, p, west)
			}
		}
		if first, last := line[0].Y, line[len(line)-1].Y; math.Abs(first) > 1e-6 || math.Abs(last-12) > 1e-6 {
			t.Errorf("%g h: runs from %g to %g, want 0 to 12", c.Hours, first, last)
		}
	}
}

// Hours that grow evenly from a point pass a limit on a circle.
func TestContoursRound(t *testing.T) {
	lawn := region(t, rectangle(-10, -10, 10, 10))
	for _, step := range []float64{0.25, 0.5, 1} {
		contours := contoursOf(t, fieldOf(lawn, step, func(p geo.XY) float64 { return math.Hypot(p.X, p.Y) }), lawn)
		for _, c := range contours {
			if len(c.Lines) != 1 {
				t.Fatalf("%g h: %d lines", c.Hours, len(c.Lines))
			}
			for _, p := range c.Lines[0] {
				if d := math.Hypot(p.X, p.Y); math.Abs(d-c.Hours) > 0.5 {
					t.Errorf("cells of %g m, %g h: runs %.2f m from the middle", step, c.Hours, d)
				}
			}
			if area, want := float64(frame.Area(c.Above)), 400-math.Pi*c.Hours*c.Hours; math.Abs(area-want) > 0.05*want {
				t.Errorf("cells of %g m, %g h: %.1f m2 above, want %.1f", step, c.Hours, area, want)
			}
		}
	}
}

func TestContoursOfAllOrNothing(t *testing.T) {
	lawn := region(t, rectangle(0, 0, 5, 5))
	contours := contoursOf(t, fieldOf(lawn, 0.5, func(geo.XY) float64 { return 5 }), lawn)
	for i, want := range []float64{0, 25, 25} {
		if area := float64(frame.Area(contours[i].Above)); math.Abs(area-want) > 1e-9 || len(contours[i].Lines) > 0 {
			t.Errorf("%g h: %g m2 above and %d lines, want %g and none", contours[i].Hours, area, len(contours[i].Lines), want)
		}
	}
	if contours := contoursOf(t, fieldOf(lawn, 0.5, func(geo.XY) float64 { return math.NaN() }), lawn); !contours[0].Above.Empty() {
		t.Error("there is ground above hours that nobody knows")
	}
}

// Whatever the turf and its sun, contours lie on the turf, on the edge of the
// ground that gets as many hours, whose cells do, but for those near the edge
// and those of specks.
func TestContoursLieOnTheEdgeOfTheirGround(t *testing.T) {
	check(t, 300, func(t *rapid.T) {
		const most, near = 12.0, 1.5
		turf := drawTurf(t, most)
		if turf.Empty() {
			return
		}
		f := fieldOf(turf, 1, drawHours(t, most))
		for _, c := range contoursOf(t, f, turf) {
			if out, err := geo.Difference(c.Above, turf); err != nil || float64(frame.Area(out)) > 1e-6 {
				t.Fatalf("%g h: %g m2 above lie off the turf (%v)", c.Hours, float64(frame.Area(out)), err)
			}
			edge := edgesOf(c.Above)
			for _, line := range c.Lines {
				for i := 1; i < len(line); i++ {
					middle := geo.XY{X: (line[i-1].X + line[i].X) / 2, Y: (line[i-1].Y + line[i].Y) / 2}
					if d := edge.distance(middle); d > 1e-3 {
						t.Fatalf("%g h: the line lies %g m off the edge at %v", c.Hours, d, middle)
					}
				}
			}
			for cell, in := range f.within(turf) {
				p := f.Center(cell)
				if !in || edge.distance(p) < near || specked(f, cell, c.Hours) {
					continue
				}
				if got := f.Values[cell] >= c.Hours; got != c.Above.Contains(p) {
					t.Fatalf("%g h: the cell at %v has %g h", c.Hours, p, f.Values[cell])
				}
			}
		}
	})
}

// specked reports whether a cell differs from any of those round it.
func specked(f *Field, cell int, hours float64) bool {
	for north := -1; north <= 1; north++ {
		for east := -1; east <= 1; east++ {
			if o := f.offset(cell, east, north); o >= 0 && (f.Values[o] >= hours) != (f.Values[cell] >= hours) {
				return true
			}
		}
	}
	return false
}

type edges []geo.Line

func edgesOf(r geo.Region) edges {
	var all edges
	for _, p := range r.Polygons() {
		for _, ring := range p.Rings() {
			all = append(all, append(slices.Clone(geo.Line(ring)), ring[0]))
		}
	}
	return all
}

func (e edges) distance(p geo.XY) float64 {
	least := math.Inf(1)
	for _, l := range e {
		for i := 1; i < len(l); i++ {
			least = min(least, p.DistanceToEdge(l[i-1], l[i]))
		}
	}
	return least
}
