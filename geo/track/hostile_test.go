package track

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"
	"time"

	"github.com/paulmach/orb"

	"example.org/turfplat/geo"
	"example.org/turfplat/geo/ingest"
)

// TestHostileFixes: whatever the fixes, there is an end and no panic, and what
// is measured is finite.
func TestHostileFixes(t *testing.T) {
	nowhere := []orb.Point{{0, 0}, {180, 90}, {-180, -90}, {math.NaN(), 1}, {1, math.Inf(1)}, {360, 0}, {-93, 44}}
	for _, tt := range []struct {
		name string
		fix  func(i int) ingest.Fix
	}{
		{"nothing set", func(int) ingest.Fix { return ingest.Fix{} }},
		{"all over the world", func(i int) ingest.Fix { return ingest.Fix{At: nowhere[i%len(nowhere)], Quality: -1} }},
		{"the first and last year", func(i int) ingest.Fix {
			return ingest.Fix{At: orb.Point{float64(i) * 1e-5, 0}, Time: time.Date(1+9998*(i%2), 1, 1, 0, 0, i, 0, time.UTC), Quality: -1}
		}},
		{"one place, one time", func(int) ingest.Fix { return fixAt(1, 1, 1) }},
		{"NaN of every kind", func(i int) ingest.Fix {
			f := fixAt(float64(i), 0, float64(i))
			f.HDOP, f.Sigma = math.NaN(), math.NaN()
			return f
		}},
		{"negative and infinite", func(i int) ingest.Fix {
			f := fixAt(float64(i), 0, float64(i))
			f.HDOP, f.Sigma, f.Satellites, f.Quality = math.Inf(-1), -3, -7, 99
			return f
		}},
		{"a lattice", func(i int) ingest.Fix { return fixAt(float64(i%50), float64(i/50%3), float64(i)) }},
		{"a spiral", func(i int) ingest.Fix {
			sin, cos := math.Sincos(float64(i) / 10)
			return fixAt(float64(i)/20*cos, float64(i)/20*sin, float64(i))
		}},
	} {
		for _, n := range []int{1, 2, 3, 4, 5, 40, 900} {
			var fixes []ingest.Fix
			for i := range n {
				fixes = append(fixes, tt.fix(i))
			}
			finite(t, fmt.Sprintf("%s, %d", tt.name, n), fixes)
			p, _ := newPath(fixes, geo.NewFrame(centre(fixes)))
			standing(p)
		}
	}
	if w, problems := Rings(&ingest.Tracks{}, Options{}); len(w.Rings) > 0 || codes(problems) != "fixes_none" {
		t.Errorf("no tracks: %v", problems)
	}
}

func finite(t *testing.T, name string, fixes []ingest.Fix) {
	t.Helper()
	w, problems := Rings(tracksOf(fixes), Options{Offset: 0.1, Side: Inside})
	for _, g := range w.Rings {
		for _, v := range []float64{float64(g.Area), float64(g.Sigma), float64(g.CI95), float64(g.Perimeter), float64(g.EdgeSigma)} {
			if !(v > 0) || math.IsInf(v, 0) {
				t.Errorf("%s: %+v", name, g)
			}
		}
	}
	if len(w.Rings) == 0 && len(problems) == 0 {
		t.Errorf("%s: neither a ring nor a reason", name)
	}
}

// FuzzRings walks in quarters of a metre: three bytes a fix, the third of them
// the time that passes, or none at all. Walks are short, so that many are tried.
func FuzzRings(f *testing.F) {
	for _, l := range lawns[:3] {
		var text []byte
		for i := range 36 {
			at := placeOn(l.ring, 2*float64(i))
			text = append(text, byte(4*at.X), byte(4*at.Y), 8)
		}
		f.Add(text)
	}
	f.Add([]byte{1, 2, 255, 3, 4, 255, 200, 100, 255})
	f.Fuzz(func(t *testing.T, text []byte) {
		var fixes []ingest.Fix
		now := 0.0
		for i := 0; i+2 < len(text) && len(fixes) < 40; i += 3 {
			now += float64(text[i+2]) / 4
			x := fixAt(float64(int8(text[i]))/4, float64(int8(text[i+1]))/4, now)
			if text[i+2] == 255 {
				x.Time = time.Time{}
			}
			fixes = append(fixes, x)
		}
		finite(t, "fuzzed", fixes)
	})
}

// TestTooManyFixes: a log of days is refused before anything is laid out.
func TestTooManyFixes(t *testing.T) {
	fixes := make([]ingest.Fix, mostFixes+1)
	for i := range fixes {
		fixes[i] = fixAt(float64(i%20), float64(i%17), float64(i))
	}
	w, problems := Rings(tracksOf(fixes), Options{})
	if len(w.Rings) > 0 || len(w.Steps) > 0 || codes(problems) != "fixes_many" || !strings.Contains(problems[0].Text, "250001 fixes") {
		t.Errorf("%d rings, %d steps: %v", len(w.Rings), len(w.Steps), problems)
	}
}

func BenchmarkRings(b *testing.B) {
	for _, n := range []int{300, 10_000, 100_000, mostFixes} {
		b.Run(fmt.Sprintf("n=%d", n), func(b *testing.B) {
			rng := rand.New(rand.NewPCG(1, 1))
			errors := receiver{sigma: 1, law: rough(30, 0.3)}.errors(rng, n)
			fixes := make([]ingest.Fix, n)
			for i, e := range errors {
				p := placeOn(lawns[9].ring, 1.2*float64(i)).Plus(e)
				fixes[i] = fixAt(p.X, p.Y, float64(i))
			}
			tracks := tracksOf(fixes)
			b.ResetTimer()
			for b.Loop() {
				Rings(tracks, Options{})
			}
		})
	}
}
