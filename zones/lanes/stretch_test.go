package lanes

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"example.org/turfplat/geo"
	"example.org/turfplat/zones"
)

// block is a rectangle of ground.
func block(t failer, west, south, east, north float64) geo.Region {
	return must[geo.Region](t)(geo.RegionOf([]geo.Ring{{{X: west, Y: south}, {X: east, Y: south}, {X: east, Y: north}, {X: west, Y: north}}}))
}

func TestStretches(t *testing.T) {
	p := Plot{Zones: []zones.Zone{{ID: "a", Region: block(t, 0, 0, 10, 10)}, {ID: "b", Region: block(t, 10, 0, 30, 10)}, {ID: "far", Region: block(t, 50, 0, 60, 10)}}}
	for name, tt := range map[string]struct {
		line   geo.Line
		want   []Stretch
		mostly string
	}{
		"in one":              {geo.Line{{X: 1, Y: 1}, {X: 9, Y: 1}}, []Stretch{{"a", 1}}, "a"},
		"through two":         {geo.Line{{X: 5, Y: 1}, {X: 25, Y: 1}}, []Stretch{{"a", 0.25}, {"b", 0.75}}, "b"},
		"there and back":      {geo.Line{{X: 4, Y: 1}, {X: 14, Y: 1}, {X: 14, Y: 3}, {X: 4, Y: 3}}, []Stretch{{"a", 12.0 / 22}, {"b", 10.0 / 22}}, "a"},
		"halfway in b":        {geo.Line{{X: 1, Y: 1}, {X: 1, Y: 9}, {X: 9, Y: 9}, {X: 9, Y: 5}, {X: 22, Y: 5}}, []Stretch{{"a", 21.0 / 33}, {"b", 12.0 / 33}}, "a"},
		"along the border":    {geo.Line{{X: 10, Y: 1}, {X: 10, Y: 9}}, []Stretch{{"a", 1}}, "a"},
		"partly along it":     {geo.Line{{X: 10, Y: 1}, {X: 10, Y: 5}, {X: 14, Y: 5}}, []Stretch{{"b", 1}}, "b"},
		"partly off the turf": {geo.Line{{X: 5, Y: 1}, {X: 35, Y: 1}}, []Stretch{{"a", 0.2}, {"b", 0.8}}, "b"},
	} {
		got := p.stretches(tt.line)
		alike := func(a, b Stretch) bool { return a.Zone == b.Zone && math.Abs(a.Share-b.Share) < 1e-12 }
		if !slices.EqualFunc(got, tt.want, alike) {
			t.Errorf("%s: %v, want %v", name, got, tt.want)
		}
		if got := mostly(got); got != tt.mostly {
			t.Errorf("%s: mostly %s, want %s", name, got, tt.mostly)
		}
	}
}

// Stretches sum to the ground of the plan, and give each zone about its own:
// a lane serves half a swath on both sides, so that a zone's part is out by no
// more than half a swath along its borders.
func TestStretchesServeTheirZones(t *testing.T) {
	check(t, 60, func(t *rapid.T) {
		scene, w := drawScene(t), drawWork(t)
		y := scene.yard(t)
		turf := y.Plots[0].Turf
		bounds := turf.Bounds()
		x := rapid.Float64Range(bounds.Min.X, bounds.Max.X).Draw(t, "border")
		west := must[geo.Region](t)(geo.Intersection(turf, block(t, bounds.Min.X-1, bounds.Min.Y-1, x, bounds.Max.Y+1)))
		east := must[geo.Region](t)(geo.Difference(turf, west))
		y.Plots[0].Zones = []zones.Zone{{ID: "west", Region: west}, {ID: "east", Region: east}}
		plan := must[Plan](t)(Lay(y, w))
		served := make(map[string]float64)
		var all float64
		for _, l := range plan.Lanes {
			var share float64
			for _, s := range l.Stretches {
				served[s.Zone] += s.Share * l.Ground
				share += s.Share
			}
			if l.Spreading {
				near(t, "shares", share, 1, 1e-12, 0)
			}
			all += l.Ground
		}
		near(t, "both zones", served["west"]+served["east"], all, 1e-9, 0)
		near(t, "all ground", all, areaOf(plan.Walked), 1e-9, 0)
		if len(plan.Lanes) == 0 {
			return
		}
		slack := w.Pattern.Swath() * (bounds.Max.Y - bounds.Min.Y)
		own := areaOf([]geo.Region{must[geo.Region](t)(geo.Intersection(plan.Walked[0], west))})
		if off := math.Abs(served["west"] - own); off > slack {
			t.Errorf("west: %.1f m2 served, it has %.1f, out by more than %.1f", served["west"], own, slack)
		}
	})
}
