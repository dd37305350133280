package geo

import (
	"math"
	"slices"
	"testing"

	"github.com/paulmach/orb"
	"pgregory.net/rapid"
)

// A thing of the tests, in metres from a middle.
type thing struct {
	geometry orb.Geometry
	at       []XY
	reach    float64
}

// drawThing draws a point, a line or a ring in a frame, some of them long.
func drawThing(t *rapid.T, f Frame) thing {
	far := rapid.SampledFrom([]float64{300, 300, 3000, 30_000}).Draw(t, "far")
	at := XY{rapid.Float64Range(-far, far).Draw(t, "x"), rapid.Float64Range(-far, far).Draw(t, "y")}
	size := rapid.SampledFrom([]float64{5, 50, 500, 20_000}).Draw(t, "size")
	var line orb.LineString
	th := thing{reach: rapid.SampledFrom([]float64{0, 3, 50}).Draw(t, "reach")}
	for range rapid.IntRange(1, 5).Draw(t, "positions") {
		step := XY{rapid.Float64Range(-size, size).Draw(t, "dx"), rapid.Float64Range(-size, size).Draw(t, "dy")}
		line = append(line, f.Place(at.Plus(step)))
	}
	switch {
	case len(line) == 1:
		th.geometry = line[0]
		th.at = []XY{f.XY(line[0])}
	case len(line) > 2 && rapid.Bool().Draw(t, "ring"):
		ring := append(orb.Ring(line), line[0])
		th.geometry, th.at = orb.MultiPolygon{{ring}}, f.Ring(ring)
	default:
		th.geometry, th.at = orb.MultiLineString{line}, f.Line(line)
	}
	return th
}

// meets reports whether a thing really has to do with a rectangle: an edge, a
// corner, or the rectangle's own middle inside the ring.
func (th thing) meets(b Bounds) bool {
	near := b.Grown(th.reach * math.Sqrt2 / 2) // inside the rounded rectangle
	for i := range th.at {
		a, c := th.at[max(0, i-1)], th.at[i]
		const steps = 1000
		for k := range steps + 1 {
			if near.holds(a.Toward(c, float64(k)/steps)) {
				return true
			}
		}
	}
	_, ring := th.geometry.(orb.MultiPolygon)
	return ring && Ring(th.at).locate(XY{(b.Min.X + b.Max.X) / 2, (b.Min.Y + b.Max.Y) / 2}) == inside
}

// TestNeighboursMissNothing: whatever lies in a rectangle is found, anywhere on
// the globe, and nothing twice.
func TestNeighboursMissNothing(t *testing.T) {
	middles := []orb.Point{{-93.1, 44.95}, {180, -17}, {-179.9999, 66}, {0, 0}, {12, 89.99}, {45, 35.26}, {90, -89.9995}}
	rapid.Check(t, func(t *rapid.T) {
		f := NewFrame(rapid.SampledFrom(middles).Draw(t, "middle"))
		n := new(Neighbours)
		var things []thing
		for range rapid.IntRange(1, 20).Draw(t, "things") {
			th := drawThing(t, f)
			things = append(things, th)
			n.Add(th.geometry, th.reach)
		}
		n.Settle()
		w, h := rapid.Float64Range(1, 400).Draw(t, "width"), rapid.Float64Range(1, 400).Draw(t, "height")
		at := XY{rapid.Float64Range(-300, 300).Draw(t, "west"), rapid.Float64Range(-300, 300).Draw(t, "south")}
		lot := Bounds{at, at.Plus(XY{w, h})}
		found := n.Near(f, lot)
		if !slices.IsSorted(found) || len(slices.Compact(slices.Clone(found))) != len(found) {
			t.Errorf("not in order, or twice: %v", found)
		}
		for i, th := range things {
			if th.meets(lot) && !slices.Contains(found, i) {
				t.Errorf("%v, reaching %g m, lies in %v round %v and was not found", th.geometry, th.reach, lot, f.Center())
			}
		}
	})
}

// TestNeighboursAreClose: among 10,000 houses on a grid of 25 m a lot finds
// those round it and not many more.
func TestNeighboursAreClose(t *testing.T) {
	f := NewFrame(orb.Point{-93.1, 44.95})
	n := new(Neighbours)
	for i := range 10_000 {
		x, y := float64(i%100)*25, float64(i/100)*25
		house := Ring{{x, y}, {x + 10, y}, {x + 10, y + 10}, {x, y + 10}}
		n.Add(orb.Polygon{append(f.Places(house), f.Place(house[0]))}, 0)
	}
	n.Add(nil, 0)
	n.Settle()
	lot := Bounds{XY{1000, 1000}, XY{1100, 1100}} // meets 5 by 5
	if found := n.Near(f, lot); len(found) < 25 || len(found) > 81 {
		t.Errorf("found %d houses", len(found))
	}
	if found := n.Near(f, Bounds{XY{-500, -500}, XY{-400, -400}}); len(found) > 0 {
		t.Errorf("found %v far off", found)
	}
	if found := new(Neighbours).Near(f, lot); found != nil {
		t.Errorf("found %v of nothing", found)
	}
}

func BenchmarkNeighbours(b *testing.B) {
	f := NewFrame(orb.Point{-93.1, 44.95})
	n := new(Neighbours)
	for i := range 50_000 {
		x, y := float64(i%250)*20, float64(i/250)*20
		n.Add(orb.LineString{f.Place(XY{x, y}), f.Place(XY{x + 15, y + 5})}, 1.5)
	}
	n.Settle()
	for b.Loop() {
		if len(n.Near(f, Bounds{XY{1000, 1000}, XY{1100, 1120}})) == 0 {
			b.Fatal("nothing found")
		}
	}
}
