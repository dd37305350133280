package track

import (
	"math"
	"slices"
	"testing"
	"time"

	"github.com/paulmach/orb"
	"pgregory.net/rapid"

	"example.org/turfplat/geo"
	"example.org/turfplat/geo/ingest"
)

// drawWalk draws a lawn and a walk of one to three laps round it that starts
// and ends at one place.
func drawWalk(t *rapid.T) ([]geo.XY, []ingest.Fix) {
	ring := lawns[rapid.IntRange(1, 9).Draw(t, "lawn")].ring
	sigma := rapid.Float64Range(0, 0.6).Draw(t, "sigma")
	seed := rapid.Uint64().Draw(t, "seed")
	n := int(math.Round(ringLength(ring)))
	laps := rapid.IntRange(1, 3).Draw(t, "laps")
	line := []geo.XY{}
	for i := range n*laps + 1 {
		line = append(line, placeOn(ring, 3.3+float64(i)*ringLength(ring)/float64(n)))
	}
	return ring, alongLine(seed, sigma, line...)
}

func onlyRing(t *rapid.T, fixes []ingest.Fix) Ring {
	w, problems := Rings(tracksOf(fixes), Options{Side: OnEdge})
	if len(w.Rings) != 1 {
		t.Fatalf("%d rings: %v", len(w.Rings), problems)
	}
	return w.Rings[0]
}

// agree asks two measures of one walk to be alike: within a share of the
// area, and a part of the error told.
func agree(t *rapid.T, what string, a, b Ring, share, part float64) {
	if off := math.Abs(float64(a.Area - b.Area)); off > share*float64(a.Area)+part*float64(a.Sigma) {
		t.Errorf("%s: %.2f m2 became %.2f (sigma %.2f)", what, a.Area, b.Area, a.Sigma)
	}
}

func TestAWalkMeasuresAlikeHoweverItIsGiven(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		_, fixes := drawWalk(t)
		ring := onlyRing(t, fixes)

		// The clock runs back: the same places in the opposite order.
		back := slices.Clone(fixes)
		for i := range back {
			back[i].At = fixes[len(fixes)-1-i].At
		}
		agree(t, "reversed", ring, onlyRing(t, back), 0.002, 0.25)

		// Another place: the same walk half a world away, on the same parallel.
		away := slices.Clone(fixes)
		for i := range away {
			away[i].At = orb.Point{fixes[i].At.Lon() + 170, fixes[i].At.Lat()}
		}
		agree(t, "shifted", ring, onlyRing(t, away), 1e-6, 0)

		// Another day, and not in order.
		later := slices.Clone(fixes)
		for i := range later {
			later[i].Time = fixes[i].Time.Add(1000 * time.Hour)
		}
		slices.Reverse(later)
		agree(t, "in another order", ring, onlyRing(t, later), 1e-9, 0)
	})
}

// TestStartDoesNotMatter: a lawn walked without error has its area wherever
// the walk starts.
func TestStartDoesNotMatter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		ring := lawns[rapid.IntRange(1, 9).Draw(t, "lawn")].ring
		length := ringLength(ring)
		n := int(math.Round(length))
		start := rapid.Float64Range(0, length).Draw(t, "start")
		var line []geo.XY
		for i := range n + 1 {
			line = append(line, placeOn(ring, start+float64(i)*length/float64(n)))
		}
		want := math.Abs(signedArea(ring))
		// Places a metre apart cut corners by up to a quarter of a square metre each.
		if g := onlyRing(t, alongLine(1, 0, line...)); math.Abs(float64(g.Area)-want) > 2.5+0.001*want {
			t.Errorf("%.3f m2 from %.2f m on, want %.3f", g.Area, start, want)
		}
	})
}

// TestSameFixesSameWalk: nothing depends on anything but the fixes.
func TestSameFixesSameWalk(t *testing.T) {
	o := simulated(11)
	first, _ := Rings(o.trip.tracks(), Options{})
	for range 3 {
		again, _ := Rings(o.trip.tracks(), Options{})
		if len(again.Rings) != len(first.Rings) || !slices.Equal(again.Steps, first.Steps) {
			t.Fatal("another walk")
		}
		for i := range again.Rings {
			a, b := again.Rings[i], first.Rings[i]
			if a.Area != b.Area || a.Sigma != b.Sigma || a.CI95 != b.CI95 || !slices.Equal(a.Outline, b.Outline) {
				t.Errorf("ring %d differs", i+1)
			}
		}
	}
}
