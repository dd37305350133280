package render

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func anyPlate(t *rapid.T, name string) plate {
	place := rapid.Float64Range(-20, 20)
	side := rapid.Float64Range(0.5, 15)
	return turnedPlate(Point{place.Draw(t, name+" x"), place.Draw(t, name+" y")},
		side.Draw(t, name+" width"), side.Draw(t, name+" height"), rapid.Float64Range(-90, 90).Draw(t, name+" turn"))
}

// Plates share ground if and only if a point of a fine grid over one lies in
// the other, but for the width of the grid.
func TestPlatesMeet(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := anyPlate(t, "a"), anyPlate(t, "b")
		if a.meets(b) != b.meets(a) {
			t.Fatal("one plate meets the other, but not the other way round")
		}
		const steps = 60
		shared := false
		for i := range steps + 1 {
			for j := range steps + 1 {
				u, v := float64(i)/steps, float64(j)/steps
				p := Point{
					a[0].X + u*(a[1].X-a[0].X) + v*(a[3].X-a[0].X),
					a[0].Y + u*(a[1].Y-a[0].Y) + v*(a[3].Y-a[0].Y),
				}
				shared = shared || polygon{b[:]}.contains(p)
			}
		}
		if shared && !a.meets(b) {
			t.Fatal("plates share ground and do not meet")
		}
		if !shared && a.grown(-0.3).meets(b.grown(-0.3)) {
			t.Fatal("plates meet and share no ground")
		}
	})
}

func TestPlateGrows(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := anyPlate(t, "p")
		g := p.grown(1.5)
		sides := func(p plate) (float64, float64) {
			return math.Hypot(p[1].X-p[0].X, p[1].Y-p[0].Y), math.Hypot(p[2].X-p[1].X, p[2].Y-p[1].Y)
		}
		w, h := sides(p)
		gw, gh := sides(g)
		if math.Abs(gw-w-3) > 1e-9 || math.Abs(gh-h-3) > 1e-9 || math.Hypot(g.center().X-p.center().X, g.center().Y-p.center().Y) > 1e-9 {
			t.Fatalf("%g x %g grew to %g x %g", w, h, gw, gh)
		}
	})
}

// A field holds a plate if all of the plate's edge lies in it.
func TestFieldHoldsPlates(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		area := starShaped(t)
		bounds := area.bounds()
		at := Point{rapid.Float64Range(bounds.min.X, bounds.max.X).Draw(t, "at x"), rapid.Float64Range(bounds.min.Y, bounds.max.Y).Draw(t, "at y")}
		p := turnedPlate(at, rapid.Float64Range(1, 20).Draw(t, "w"), rapid.Float64Range(1, 8).Draw(t, "h"), rapid.Float64Range(-90, 90).Draw(t, "turn"))
		out := false
		for i, a := range p {
			b := p[(i+1)%len(p)]
			for k := range 50 {
				s := float64(k) / 50
				q := Point{a.X + s*(b.X-a.X), a.Y + s*(b.Y-a.Y)}
				out = out || !area.contains(q) && area.edgeDistance(q) > 1e-6
			}
		}
		if f := newField(area); f.holds(p) && out {
			t.Fatal("a field holds a plate that reaches out of it")
		} else if f.holds(p) && !f.meets(p) {
			t.Fatal("a field holds a plate that it does not meet")
		}
	})
}

func TestRimFindsInnerEdges(t *testing.T) {
	whole := box(0, 0, 30)
	left := polygon{{{0, 0}, {12, 0}, {12, 15}, {12, 30}, {0, 30}}}
	inner := newRim(whole).inner(left)
	if len(inner) != 1 || len(inner[0].Points) != 3 || lengthOf(inner) != 30 {
		t.Errorf("the edge within is %v", inner)
	}
	if all := newRim(box(40, 40, 5)).inner(left); lengthOf(all) != polygon(left).perimeter() {
		t.Errorf("of an area apart %g mm are within", lengthOf(all))
	}
}
