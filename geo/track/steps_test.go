package track

import (
	"math"
	"math/rand/v2"
	"testing"
	"time"

	"github.com/paulmach/orb"

	"example.org/turfplat/geo"
	"example.org/turfplat/geo/ingest"
)

var (
	home    = geo.NewFrame(orb.Point{-93.1, 44.9})
	morning = time.Date(2024, 5, 1, 8, 0, 0, 0, time.UTC)
)

// fixAt is a fix at a place in the home frame, some seconds into the morning.
func fixAt(x, y, seconds float64) ingest.Fix {
	return ingest.Fix{At: home.Place(geo.XY{X: x, Y: y}), Time: morning.Add(time.Duration(seconds * 1e9)), Quality: -1}
}

// eastward walks east, a metre and a second a fix.
func eastward(n int) []ingest.Fix {
	var fixes []ingest.Fix
	for i := range n {
		fixes = append(fixes, fixAt(float64(i), 0, float64(i)))
	}
	return fixes
}

// changed returns fixes with those from index on changed, n of them.
func changed(fixes []ingest.Fix, index, n int, change func(i int, f *ingest.Fix)) []ingest.Fix {
	for i := index; i < index+n; i++ {
		change(i, &fixes[i])
	}
	return fixes
}

func moved(x, y float64) func(int, *ingest.Fix) {
	return func(i int, f *ingest.Fix) { f.At = home.Place(geo.XY{X: float64(i) + x, Y: y}) }
}

func TestStepsDropWhatTheyShould(t *testing.T) {
	zigzag := func(fixes []ingest.Fix, n int) []ingest.Fix {
		return changed(fixes, 0, n, func(i int, f *ingest.Fix) { f.At = home.Place(geo.XY{X: float64(i), Y: 8 * float64(i%2)}) })
	}
	corner := eastward(60)
	for i := 30; i < 60; i++ {
		corner[i].At = home.Place(geo.XY{X: 30, Y: float64(i - 30)})
	}
	hairpin := eastward(60)
	for i := 30; i < 60; i++ {
		hairpin[i].At = home.Place(geo.XY{X: 60 - float64(i), Y: 1})
	}
	stands := eastward(60)
	for i := 20; i < 60; i++ {
		stands[i].At = home.Place(geo.XY{X: 20 + max(0, float64(i-40)), Y: 0.2 * math.Sin(float64(i))})
	}
	for _, tt := range []struct {
		name  string
		step  string
		fixes []ingest.Fix
		want  int // left after the step
	}{
		{"in order", "order", eastward(50), 50},
		{"backwards", "order", func() []ingest.Fix { f := eastward(50); f[3], f[9] = f[9], f[3]; return f }(), 50},
		{"a time twice", "order", append(eastward(50), fixAt(3, 3, 20)), 50},
		{"fifty a second", "order", func() []ingest.Fix {
			var f []ingest.Fix
			for i := range 500 {
				f = append(f, fixAt(float64(i)/50, 0, float64(i)/50))
			}
			return f
		}(), 100},
		{"no times, standing", "order", changed(eastward(50), 0, 50, func(_ int, f *ingest.Fix) { f.Time = time.Time{}; f.At = home.Place(geo.XY{}) }), 1},
		{"no fix", "quality", changed(eastward(50), 10, 5, func(_ int, f *ingest.Fix) { f.Quality = 0 }), 45},
		{"HDOP 4.1", "quality", changed(eastward(50), 10, 5, func(_ int, f *ingest.Fix) { f.HDOP = 4.1 }), 45},
		{"HDOP 3.9", "quality", changed(eastward(50), 10, 5, func(_ int, f *ingest.Fix) { f.HDOP = 3.9 }), 50},
		{"error 11 m", "quality", changed(eastward(50), 10, 5, func(_ int, f *ingest.Fix) { f.Sigma = 11 }), 45},
		{"four satellites", "quality", changed(eastward(50), 10, 5, func(_ int, f *ingest.Fix) { f.Satellites = 4 }), 45},
		{"five satellites", "quality", changed(eastward(50), 10, 5, func(_ int, f *ingest.Fix) { f.Satellites = 5 }), 50},
		{"settles after four", "warm-up", zigzag(eastward(100), 4), 96},
		{"never settles", "warm-up", zigzag(eastward(100), 100), 100},
		{"error stated halves", "warm-up", changed(eastward(100), 0, 100, func(i int, f *ingest.Fix) { f.Sigma = max(1.5, 9/float64(i+1)) }), 98},
		{"one spike", "spikes", changed(eastward(60), 30, 1, moved(0, 12)), 59},
		{"two in a row", "spikes", changed(eastward(60), 30, 2, moved(0, 12)), 58},
		{"a corner", "spikes", corner, 60},
		{"a hairpin", "spikes", hairpin, 60},
		{"a step of two metres", "spikes", changed(eastward(60), 30, 30, moved(0, 2)), 60},
		{"stands for 20 s", "standing", stands, 38},
		{"walks on", "standing", eastward(60), 60},
		{"turns a corner", "standing", corner, 60},
	} {
		w, _ := Rings(tracksOf(tt.fixes), Options{Side: OnEdge})
		found := false
		for _, s := range w.Steps {
			if s.Name != tt.step {
				continue
			}
			found = true
			if s.Kept != tt.want || s.Dropped() != s.Before-s.Kept || s.Text == "" {
				t.Errorf("%s: %s left %d of %d, want %d (%s)", tt.name, s.Name, s.Kept, s.Before, tt.want, s.Text)
			}
		}
		if !found {
			t.Errorf("%s: no step %s", tt.name, tt.step)
		}
	}
}

func tracksOf(segments ...[]ingest.Fix) *ingest.Tracks {
	place := ingest.Place{Source: "walk.gpx", Feature: -1}
	return &ingest.Tracks{Source: "walk.gpx", Tracks: []ingest.Track{{Segments: segments, Place: place}}}
}

func TestStopBecomesItsMedian(t *testing.T) {
	fixes := eastward(60)
	for i := 20; i < 60; i++ {
		fixes[i].At = home.Place(geo.XY{X: 20 + max(0, float64(i-40)), Y: 0.3 * float64(i%3)})
	}
	p, _ := newPath(fixes, home)
	p, _ = p.withStops()
	for _, s := range p.stations {
		if s.until > s.time {
			if d := s.at.Distance(geo.XY{X: 20, Y: 0.3}); d > 0.5 || s.until-s.time < 18 {
				t.Errorf("stop at %v for %g s", s.at, s.until-s.time)
			}
			return
		}
	}
	t.Error("no stop")
}

// TestTurningIsNotStanding: who goes round the end of a strip is back where he
// was a while ago; with an error of some metres that looks like a stop to
// whoever looks at the two ends of the while only.
func TestTurningIsNotStanding(t *testing.T) {
	const walks = 60
	stopped := 0
	for seed := range uint64(walks) {
		w := walker{lawn: lawns[11], laps: 3, receiver: receiver{sigma: 3, law: white, tells: "nothing"}}
		fixes := w.trip(rand.New(rand.NewPCG(5, seed))).fixes
		p, _ := newPath(fixes, geo.NewFrame(centre(fixes)))
		if q, _ := p.withStops(); len(q.stations) < len(p.stations) {
			stopped++
		}
	}
	if stopped > walks/20 {
		t.Errorf("%d of %d walks without a stop have some", stopped, walks)
	}
}

func TestLostEdges(t *testing.T) {
	walk := func(from, to, turn float64) path { // silence between, then on at an angle
		var fixes []ingest.Fix
		for i := range 20 {
			fixes = append(fixes, fixAt(float64(i), 0, float64(i)))
		}
		sin, cos := math.Sincos(turn * math.Pi / 180)
		for i := range 20 {
			fixes = append(fixes, fixAt(to+cos*float64(i), sin*float64(i), from+float64(i)))
		}
		p, _ := newPath(fixes, home)
		return p
	}
	for _, tt := range []struct {
		name          string
		path          path
		lost, atStake bool
	}{
		{"none", walk(20, 20, 0), false, false},
		{"five seconds", walk(24, 24, 0), false, false},
		{"thirty, straight on", walk(50, 50, 0), true, false},
		{"thirty, round a corner", walk(50, 40, 90), true, true},
		{"thirty, standing", walk(50, 20, 0), false, false},
		{"a minute for ten metres", walk(80, 30, 0), true, true},
	} {
		tr := newTraverse(tt.path)
		l := tr.lapOf(loop{18, 19, 20, 21})
		if got := tt.path.lost(20); got != tt.lost {
			t.Errorf("%s: lost %v, want %v", tt.name, got, tt.lost)
		}
		if got := tr.atStake(l); got > 0 != tt.atStake {
			t.Errorf("%s: %.1f m2 at stake, want some: %v", tt.name, got, tt.atStake)
		}
	}
}

func TestRulesAreComplete(t *testing.T) {
	seen := make(map[string]bool)
	for _, r := range Rules() {
		if r.Value == 0 || r.Text == "" || r.Source == "" || seen[r.Text] {
			t.Errorf("%+v", r)
		}
		seen[r.Text] = true
	}
}
