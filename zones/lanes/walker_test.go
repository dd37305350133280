package lanes

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"example.org/turfplat/geo"
)

func regionFrom(t failer, rings ...geo.Ring) geo.Region {
	t.Helper()
	return must[geo.Region](t)(geo.RegionOf(rings))
}

func TestWalker(t *testing.T) {
	house := regionFrom(t, rectangle(-5, -5, 5, 5))
	fence := geo.Line{{X: 5, Y: 0}, {X: 40, Y: 0}}
	for _, tt := range []struct {
		name string
		a, b geo.XY
		want float64 // m, by corners a berth off
	}{
		{"in sight", geo.XY{X: -10, Y: -8}, geo.XY{X: 10, Y: -8}, 20},
		{"along the wall", geo.XY{X: -5, Y: -5}, geo.XY{X: 5, Y: -5}, 10},
		{"round the house", geo.XY{X: -8, Y: 0}, geo.XY{X: 8, Y: 5}, math.Hypot(3, 5) + 13},
		{"round the fence's end", geo.XY{X: 35, Y: 3}, geo.XY{X: 35, Y: -3}, 2 * math.Hypot(5, 3)},
		{"round the house, not the fence", geo.XY{X: 6, Y: 3}, geo.XY{X: 6, Y: -3}, 2*math.Hypot(1, 2) + 30},
	} {
		w := newWalker([]geo.Region{house}, []geo.Line{fence})
		path := w.path(tt.a, tt.b)
		near(t, tt.name, w.way(tt.a, tt.b), length(path), 1e-12, 0)
		for i := 1; i < len(path); i++ {
			for _, at := range divided(geo.Line{path[i-1], path[i]}, 0.1) {
				if house.Contains(at) && distanceToEdges(at, house) > 1e-6 {
					t.Errorf("%s: walks through the house at %v", tt.name, at)
				}
			}
			if crosses(path[i-1], path[i], fence[0], fence[1]) {
				t.Errorf("%s: walks through the fence", tt.name)
			}
		}
		near(t, tt.name, length(path), tt.want, 0, 2*berth*float64(len(path)-2)+1e-9)
	}
	yard := regionFrom(t, rectangle(-20, -20, 20, 20), rectangle(-19, -19, 19, 19))
	w := newWalker([]geo.Region{yard}, nil)
	if path := w.path(geo.XY{}, geo.XY{X: 30}); path != nil {
		t.Errorf("walks out of a walled yard by %v", path)
	}
	if way := w.way(geo.XY{}, geo.XY{X: 30}); way < unreached {
		t.Errorf("the way out of a walled yard is %v m", way)
	}
}

// A way is no shorter than the straight one, the same both ways round, and no
// longer by way of a third place.
func TestWalkerLaws(t *testing.T) {
	check(t, 60, func(t *rapid.T) {
		var beds []geo.Region
		for range rapid.IntRange(1, 5).Draw(t, "beds") {
			beds = append(beds, regionFrom(t, regular(rapid.IntRange(3, 8).Draw(t, "sides"), rapid.Float64Range(-20, 20).Draw(t, "x"), rapid.Float64Range(-20, 20).Draw(t, "y"), rapid.Float64Range(0.5, 6).Draw(t, "radius"))))
		}
		joined := must[geo.Region](t)(geo.Union(beds...))
		w := newWalker([]geo.Region{joined}, nil)
		var at []geo.XY
		for range 3 {
			p := geo.XY{X: rapid.Float64Range(-30, 30).Draw(t, "x"), Y: rapid.Float64Range(-30, 30).Draw(t, "y")}
			if joined.Contains(p) {
				return
			}
			at = append(at, p)
		}
		ab, bc, ac := w.way(at[0], at[1]), w.way(at[1], at[2]), w.way(at[0], at[2])
		if ab < at[0].Distance(at[1])-1e-9 {
			t.Errorf("way of %v m between places %v m apart", ab, at[0].Distance(at[1]))
		}
		near(t, "the way back", w.way(at[1], at[0]), ab, 1e-9, 0)
		// corners stand for bends of up to half a radian: a little is lost there
		if ac > (ab+bc)*1.05+2*berth {
			t.Errorf("way of %v m, by a third place %v", ac, ab+bc)
		}
	})
}

// Lines are led round posts, on their ring or outside it, at no great length.
func TestBent(t *testing.T) {
	check(t, 300, func(t *rapid.T) {
		p := Post{geo.XY{X: rapid.Float64Range(-2, 2).Draw(t, "x"), Y: rapid.Float64Range(-2, 2).Draw(t, "y")}, rapid.Float64Range(0.2, 1).Draw(t, "radius")}
		l := geo.Line{{X: -10, Y: rapid.Float64Range(-2, 2).Draw(t, "from")}, {X: 0, Y: rapid.Float64Range(-2, 2).Draw(t, "by")}, {X: 10, Y: 0}}
		led := bent(l, []Post{p}, func(geo.XY) bool { return true })
		for _, at := range divided(led, 0.02) {
			if away := at.Distance(p.At); away < p.Radius-1e-9 {
				t.Fatalf("comes within %v m of a post of %v m", away, p.Radius)
			}
		}
		cornered := p.holds(l[1]) // a corner inside the ring may be cut short
		if longer := length(led) - length(l); longer > (math.Pi-2)*p.Radius*1.4+1e-9 || longer < -1e-9 && len(led) > 3 && !cornered {
			t.Errorf("leads %v m longer round %v", longer, p.Radius)
		}
	})
}
