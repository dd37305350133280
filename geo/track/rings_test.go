package track

import (
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"
	"time"

	"example.org/turfplat/geo"
	"example.org/turfplat/geo/ingest"
)

// alongLine walks a line at a metre a second, with an error that fades over
// 20 s and that the receiver states.
func alongLine(seed uint64, sigma float64, line ...geo.XY) []ingest.Fix {
	rng := rand.New(rand.NewPCG(seed, 0))
	var places []geo.XY
	for i := 1; i < len(line); i++ {
		n := int(math.Round(line[i-1].Distance(line[i])))
		for k := range n {
			places = append(places, line[i-1].Plus(line[i].Minus(line[i-1]).Times(float64(k)/float64(n))))
		}
	}
	places = append(places, line[len(line)-1])
	errors := receiver{sigma: sigma, law: rough(20, 0.3)}.errors(rng, len(places))
	var fixes []ingest.Fix
	for i, p := range places {
		f := fixAt(p.X+errors[i].X, p.Y+errors[i].Y, float64(i))
		f.Sigma = max(0.02, sigma)
		fixes = append(fixes, f)
	}
	return fixes
}

// statedSigma makes the receiver state another error.
func statedSigma(sigma float64, fixes []ingest.Fix) []ingest.Fix {
	return changed(fixes, 0, len(fixes), func(_ int, f *ingest.Fix) { f.Sigma = sigma })
}

// shifted moves a ring and closes it.
func shifted(ring []geo.XY, by geo.XY) []geo.XY {
	var out []geo.XY
	for _, p := range append(slices.Clone(ring), ring[0]) {
		out = append(out, p.Plus(by))
	}
	return out
}

func codes(problems []ingest.Problem) string {
	var out []string
	for _, p := range problems {
		out = append(out, p.Code)
	}
	return strings.Join(out, " ")
}

func TestRingsOfAWalk(t *testing.T) {
	lawn, bed := rectangle(30, 20), shifted(rectangle(8, 6), geo.XY{X: 10, Y: 6})
	house := geo.XY{X: -15, Y: 4}
	for _, tt := range []struct {
		name  string
		fixes []ingest.Fix
		areas []float64 // of the rings in order
		holes []bool
		laps  []int
		codes string
	}{
		{"one lap", alongLine(1, 0.2, shifted(lawn, geo.XY{})...), []float64{600}, []bool{false}, []int{1}, ""},
		{"to the right", alongLine(2, 0.2, reversed(shifted(lawn, geo.XY{}))...), []float64{600}, []bool{false}, []int{1}, ""},
		{"from a house and back", alongLine(3, 0.2, slices.Concat([]geo.XY{house}, shifted(lawn, geo.XY{}), []geo.XY{house})...),
			[]float64{600}, []bool{false}, []int{1}, ""},
		{"three laps", alongLine(4, 0.2, slices.Concat(shifted(lawn, geo.XY{}), shifted(lawn, geo.XY{})[1:], shifted(lawn, geo.XY{})[1:])...),
			[]float64{600}, []bool{false}, []int{3}, ""},
		{"the second lap the other way round", alongLine(5, 0.2, slices.Concat(shifted(lawn, geo.XY{}), reversed(shifted(lawn, geo.XY{}))[1:])...),
			[]float64{600}, []bool{false}, []int{2}, ""},
		{"the second lap unfinished", alongLine(6, 0.2, slices.Concat(shifted(lawn, geo.XY{}), lawn[1:], []geo.XY{{Y: 16}})...),
			[]float64{600}, []bool{false}, []int{2}, ""},
		{"a bed inside", alongLine(7, 0.2, slices.Concat(shifted(lawn, geo.XY{}), bed)...),
			[]float64{600, 48}, []bool{false, true}, []int{1, 1}, "rings_several"},
		{"a bed inside, nearer to the edge than laps close", alongLine(7, 0.1, slices.Concat(shifted(rectangle(24, 16), geo.XY{}), shifted(rectangle(10, 8), geo.XY{X: 7, Y: 4}))...),
			[]float64{384, 80}, []bool{false, true}, []int{1, 1}, "rings_several"},
		{"two lawns", alongLine(8, 0.2, slices.Concat(shifted(lawn, geo.XY{}), shifted(rectangle(20, 15), geo.XY{X: 50}))...),
			[]float64{600, 300}, []bool{false, false}, []int{1, 1}, "rings_several"},
		{"a figure of eight", alongLine(9, 0.2, geo.XY{X: 1, Y: 1}, geo.XY{X: 20, Y: 20}, geo.XY{Y: 20}, geo.XY{X: 20}, geo.XY{}, geo.XY{X: 2, Y: 2}),
			[]float64{100, 100}, []bool{false, false}, []int{1, 1}, "rings_several"},
		{"across the lawn to its far corner first", alongLine(10, 0.2, slices.Concat([]geo.XY{{X: -10, Y: 6}, {X: 30, Y: 14}}, shifted([]geo.XY{{X: 30, Y: 14}, {X: 30, Y: 20}, {Y: 20}, {}, {X: 30}}, geo.XY{}))...),
			[]float64{600}, []bool{false}, []int{1}, ""},
		{"the second lap drawn away by seven metres", alongLine(14, 0.2, slices.Concat(shifted(rectangle(40, 30), geo.XY{}), shifted(rectangle(40, 30), geo.XY{X: 6, Y: 4}))...),
			[]float64{1200}, []bool{false}, []int{2}, ""},
		{"two rings that overlap", alongLine(15, 0.2, slices.Concat(shifted(lawn, geo.XY{}), shifted(lawn, geo.XY{X: 18, Y: 8}))...), nil, nil, nil, "rings_several ring_overlaps"},
		{"one edge drawn twice, ten metres apart", statedSigma(2.8, alongLine(16, 0.2, slices.Concat(shifted(rectangle(100, 80), geo.XY{}), shifted(rectangle(80, 60), geo.XY{X: 10, Y: 10}))...)), nil, nil, nil, "rings_several ring_twice"},
		{"a large pond in a lawn, and a good receiver", alongLine(16, 0.2, slices.Concat(shifted(rectangle(100, 80), geo.XY{}), shifted(rectangle(80, 60), geo.XY{X: 10, Y: 10}))...),
			[]float64{8000, 4800}, []bool{false, true}, []int{1, 1}, "rings_several"},
		{"a lap and half of one", alongLine(17, 0.2, slices.Concat(shifted(lawn, geo.XY{}), lawn[1:3])...), []float64{600}, []bool{false}, []int{1}, ""},
		{"a lap, then to and fro along one side", alongLine(17, 0.2, slices.Concat(shifted(lawn, geo.XY{}), lawn[1:2], lawn[:1], lawn[1:2], lawn[:1])...), nil, nil, nil, "ring_left"},
		{"an open walk", alongLine(11, 0.2, geo.XY{}, geo.XY{X: 30}, geo.XY{X: 30, Y: 40}), nil, nil, nil, "walk_open"},
		{"out and back", alongLine(12, 0.2, geo.XY{}, geo.XY{X: 40}, geo.XY{X: 40, Y: 0.5}, geo.XY{Y: 0.5}), nil, nil, nil, "walk_open"},
		{"a strip too narrow", alongLine(13, 1, shifted(rectangle(40, 2.5), geo.XY{})...), nil, nil, nil, "ring_uncertain"},
		{"standing", func() []ingest.Fix {
			f := eastward(60)
			return changed(f, 0, 60, func(i int, f *ingest.Fix) { f.At = home.Place(geo.XY{X: 0.1 * math.Sin(float64(i))}) })
		}(), nil, nil, nil, "walk_still"},
		{"poor fixes", changed(eastward(60), 0, 60, func(_ int, f *ingest.Fix) { f.HDOP = 9 }), nil, nil, nil, "fixes_few"},
		{"apart by a country", append(eastward(60), func() []ingest.Fix {
			f := alongLine(1, 0.1, geo.XY{X: 200_000}, geo.XY{X: 200_080})
			return changed(f, 0, len(f), func(i int, f *ingest.Fix) { f.Time = f.Time.Add(time.Hour) })
		}()...), nil, nil, nil, "walk_wide"},
	} {
		w, problems := Rings(tracksOf(tt.fixes), Options{Side: OnEdge})
		if len(w.Rings) != len(tt.areas) {
			t.Errorf("%s: %d rings, want %d; %v", tt.name, len(w.Rings), len(tt.areas), problems)
			continue
		}
		for i, g := range w.Rings {
			if off := math.Abs(float64(g.Area) - tt.areas[i]); off > 1.5*float64(g.CI95) || off > 0.06*tt.areas[i] {
				t.Errorf("%s: ring %d has %.1f m2 +/- %.1f, want %.1f", tt.name, i+1, g.Area, g.CI95, tt.areas[i])
			}
			if g.Hole != tt.holes[i] || g.Laps != tt.laps[i] {
				t.Errorf("%s: ring %d is a hole: %v, of %d laps, want %v, %d", tt.name, i+1, g.Hole, g.Laps, tt.holes[i], tt.laps[i])
			}
			checkRing(t, tt.name, g)
		}
		if got := codes(problems); got != tt.codes {
			t.Errorf("%s: problems %q, want %q", tt.name, got, tt.codes)
		}
	}
}

// checkRing: a ring is what it says, and its edge error gives its area error.
func checkRing(t *testing.T, name string, g Ring) {
	t.Helper()
	frame := geo.NewFrame(g.Outline[0])
	region, err := geo.RegionOf([]geo.Ring{frame.Ring(g.Outline)})
	if err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	if got := frame.Area(region); math.Abs(float64(got-g.Area)) > 1e-6*float64(g.Area) {
		t.Errorf("%s: outline has %.6f m2, told %.6f", name, got, g.Area)
	}
	if g.Outline[0] != g.Outline[len(g.Outline)-1] || len(g.Raw) != g.Laps {
		t.Errorf("%s: outline is open, or %d laps drawn of %d", name, len(g.Raw), g.Laps)
	}
	trace := geo.Trace{Rings: []geo.Ring{frame.Ring(g.Outline)}, Error: geo.EdgeError{Sigma: g.EdgeSigma, Kind: geo.Walk}}
	if got := geo.AreaSigma(region, []geo.Trace{trace}); math.Abs(float64(got-g.Sigma)) > 0.01*float64(g.Sigma) {
		t.Errorf("%s: its edge error gives %.3f m2, told %.3f", name, got, g.Sigma)
	}
	if g.CI95 < g.Sigma || g.Class < 'A' || g.Class > 'E' {
		t.Errorf("%s: interval %.2f, sigma %.2f, class %c", name, g.CI95, g.Sigma, g.Class)
	}
}

// TestLapsInSeveralTracks: laps recorded one by one belong to one ring.
func TestLapsInSeveralTracks(t *testing.T) {
	first, second := alongLine(1, 0.3, shifted(rectangle(30, 20), geo.XY{})...), alongLine(2, 0.3, shifted(rectangle(30, 20), geo.XY{})...)
	for i := range second {
		second[i].Time = second[i].Time.Add(5 * time.Minute)
	}
	tracks := tracksOf(first)
	tracks.Tracks = append(tracks.Tracks, tracksOf(second).Tracks...)
	w, problems := Rings(tracks, Options{Side: OnEdge})
	if len(w.Rings) != 1 || w.Rings[0].Laps != 2 {
		t.Errorf("%d rings, %v", len(w.Rings), problems)
	}
}

// TestOffset: a lawn walked half a metre inside its edge comes out right if
// the walker says so, and with a question if not.
func TestOffset(t *testing.T) {
	inside := alongLine(3, 0.15, shifted(rectangle(29, 19), geo.XY{})...)
	outside := alongLine(4, 0.15, shifted(rectangle(31, 21), geo.XY{})...)
	for _, tt := range []struct {
		name  string
		fixes []ingest.Fix
		o     Options
		want  float64
		codes string
	}{
		{"inside, stated", inside, Options{Offset: 0.5, Side: Inside}, 600, ""},
		{"inside, not stated", inside, Options{}, 551, "offset_question"},
		{"inside, said to be on the edge", inside, Options{Side: OnEdge}, 551, ""},
		{"outside, stated", outside, Options{Offset: 0.5, Side: Outside}, 600, ""},
		{"farther in than the lawn is wide", inside, Options{Offset: 12, Side: Outside}, 551, "ring_offset"},
	} {
		w, problems := Rings(tracksOf(tt.fixes), tt.o)
		if len(w.Rings) != 1 {
			t.Fatalf("%s: %v", tt.name, problems)
		}
		g := w.Rings[0]
		if off := math.Abs(float64(g.Area) - tt.want); off > float64(g.CI95) || g.CI95 > 30 {
			t.Errorf("%s: %.1f m2 +/- %.1f, want %.1f", tt.name, g.Area, g.CI95, tt.want)
		}
		if got := codes(problems); got != tt.codes {
			t.Errorf("%s: problems %q, want %q", tt.name, got, tt.codes)
		}
		checkRing(t, tt.name, g)
	}
}

// TestOffsetOfABed: whoever keeps to the turf walks outside of a bed.
func TestOffsetOfABed(t *testing.T) {
	lawn, bed := rectangle(29, 19), shifted(rectangle(9, 7), geo.XY{X: 10, Y: 6})
	w, problems := Rings(tracksOf(alongLine(7, 0.1, slices.Concat(shifted(lawn, geo.XY{}), bed)...)), Options{Offset: 0.5, Side: Inside})
	if len(w.Rings) != 2 {
		t.Fatal(problems)
	}
	for i, want := range []float64{600, 48} {
		if off := math.Abs(float64(w.Rings[i].Area) - want); off > 0.06*want {
			t.Errorf("ring %d: %.1f m2, want %.1f", i+1, w.Rings[i].Area, want)
		}
	}
}

func TestStatedSigma(t *testing.T) {
	fixes := alongLine(5, 1, shifted(rectangle(30, 20), geo.XY{})...)
	var last geo.Area
	for _, sigma := range []geo.Length{0.3, 1, 3} {
		w, problems := Rings(tracksOf(fixes), Options{Side: OnEdge, Sigma: sigma})
		if len(w.Rings) != 1 {
			t.Fatal(problems)
		}
		if g := w.Rings[0]; g.Sigma <= last {
			t.Errorf("sigma %g m: %.1f m2, no more than for less", sigma, g.Sigma)
		} else {
			last = g.Sigma
		}
	}
}

// TestFewFixes: with too few to tell, the error is the bound for the believed
// one, and the class says so.
func TestFewFixes(t *testing.T) {
	var fixes []ingest.Fix
	for i := range 11 {
		p := placeOn(rectangle(60, 40), 20*float64(i))
		fixes = append(fixes, fixAt(p.X, p.Y, 15*float64(i)))
	}
	w, problems := Rings(tracksOf(fixes), Options{Side: OnEdge, Sigma: 1})
	if len(w.Rings) != 1 {
		t.Fatal(problems)
	}
	g := w.Rings[0]
	if want := 0.45 * float64(g.Perimeter); !g.Assumed || g.Class != 'E' || math.Abs(float64(g.Sigma)-want) > 0.05*want {
		t.Errorf("assumed %v, class %c, sigma %.1f, want %.1f; %v", g.Assumed, g.Class, g.Sigma, want, problems)
	}
}

func TestDrawnRing(t *testing.T) {
	tracks := tracksOf(eastward(20))
	tracks.Tracks[0].Closed = true
	if w, problems := Rings(tracks, Options{}); len(w.Rings) > 0 || codes(problems) != "ring_drawn fixes_none" {
		t.Error(problems)
	}
}
