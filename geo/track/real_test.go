package track

import (
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.org/turfplat/geo"
	"example.org/turfplat/geo/ingest"
)

// realTracks reads a real log in place, from shared/data beside the project.
func realTracks(t *testing.T, name string) *ingest.Tracks {
	t.Helper()
	dir, err := os.Getwd()
	if err != nil {
		t.Fatal(err)
	}
	for {
		f, err := os.Open(filepath.Join(dir, "shared", "data", "tracks", name))
		if err == nil {
			defer f.Close()
			return ingest.ReadTracks(f, name, ingest.Limits{})
		}
		up := filepath.Dir(dir)
		if up == dir {
			t.Skip("the real tracks are not beside the project (shared/data)")
		}
		dir = up
	}
}

func realFixes(t *testing.T, name string) []ingest.Fix {
	t.Helper()
	var fixes []ingest.Fix
	for _, k := range realTracks(t, name).Tracks {
		for _, s := range k.Segments {
			fixes = append(fixes, s...)
		}
	}
	return fixes
}

// TestRealWalks: each real walk gives a ring near the area of its raw fixes,
// or a refusal. The raw area is no truth; it closes by a straight line what
// the walker left open.
func TestRealWalks(t *testing.T) {
	for _, tt := range []struct {
		name  string
		raw   float64 // m2; 0 for a refusal
		tol   float64 // share
		worst float64 // 1 sigma at most, share
		codes string  // refusals and warnings
	}{
		{"yard_walk_a_rtk.gpx", 166.0, 0.02, 0.06, ""},
		{"yard_walk_b_float_dgps.gpx", 229.4, 0.02, 0.10, ""},
		{"yard_walk_c_float_occluded.gpx", 156.6, 0.02, 0.10, ""},
		{"yard_walk_e_rtk.gpx", 392.2, 0.02, 0.06, ""},
		{"yard_walk_h_rtk_occluded.gpx", 249.2, 0.02, 0.06, ""},
		{"yard_walk_i_float_fast.gpx", 496.9, 0.02, 0.06, ""},
		{"yard_walk_k_float.gpx", 275.6, 0.02, 0.06, ""},
		{"loop_freiburg_10s.gpx", 43614, 0.03, 0.08, "edge_unobserved"},
		{"block_walk_no_time.gpx", 0, 0, 0, "walk_open"},
		{"short_walk.tcx", 0, 0, 0, "walk_open"},
		{"walk_line_rtk_float_boston.nmea", 0, 0, 0, "walk_open"},
		{"rtk_fix_and_dgps_mixed.nmea", 0, 0, 0, "walk_open"},
		{"hut_stroll_extensions.gpx", 0, 0, 0, "ring_small"},
		{"static_float_jumps_11min.csv", 0, 0, 0, "ring_small"},
		{"static_wisconsin_1hz.nmea", 0, 0, 0, "walk_still"},
		{"static_brussels_urban_1hz.nmea", 0, 0, 0, "walk_still"},
		{"static_seattle_multignss_1hz.nmea", 0, 0, 0, "walk_still"},
		{"static_open_autonomous_boston.nmea", 0, 0, 0, "walk_still"},
		{"static_open_rtk_ref_boston.nmea", 0, 0, 0, "walk_still"},
		{"static_rtk_open_10min.csv", 0, 0, 0, "walk_still"},
		{"static_autonomous_open_18min.csv", 0, 0, 0, "walk_still"},
		{"static_autonomous_14min.csv", 0, 0, 0, "walk_still"},
		{"rtk_float_static.nmea", 0, 0, 0, "walk_still"},
		{"rtk_float_to_fix_static_40min.pos", 0, 0, 0, "walk_still"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			w, problems := Rings(realTracks(t, tt.name), Options{Side: OnEdge})
			if got := codes(problems); got != tt.codes {
				t.Errorf("problems %q, want %q: %v", got, tt.codes, problems)
			}
			if (tt.raw > 0) != (len(w.Rings) == 1) {
				t.Fatalf("%d rings", len(w.Rings))
			}
			for _, g := range w.Rings {
				if off := math.Abs(float64(g.Area) - tt.raw); off > tt.tol*tt.raw || float64(g.Sigma) > tt.worst*tt.raw {
					t.Errorf("%.1f m2 +/- %.1f (1 sigma), want %.1f", g.Area, g.Sigma, tt.raw)
				}
				checkRing(t, tt.name, g)
			}
		})
	}
}

// TestLongRealWalks: walks that go round nothing in particular, or several
// things, come to an end.
func TestLongRealWalks(t *testing.T) {
	for _, name := range []string{"jog_lisbon_1s.fit", "hike_scotland.fit", "lake_walk_segments.gpx", "loop_mainz_5s.gpx", "walk_austin_10s.kml"} {
		t.Run(name, func(t *testing.T) {
			w, problems := Rings(realTracks(t, name), Options{Side: OnEdge})
			if len(w.Rings) == 0 && !strings.Contains(codes(problems), "ring_") {
				t.Error(problems)
			}
			for _, g := range w.Rings {
				checkRing(t, name, g)
			}
		})
	}
}

// TestStandingReceivers: the scatter told of a receiver that stood still is
// the one that its good fixes show. Logs of a few minutes hold few
// independent errors, and the law may put some of what they show down to
// chance, or to what outlasts them.
func TestStandingReceivers(t *testing.T) {
	for _, tt := range []struct {
		name   string
		factor float64
	}{
		{"static_wisconsin_1hz.nmea", 1.3},
		{"static_brussels_urban_1hz.nmea", 1.6},
		{"static_seattle_multignss_1hz.nmea", 1.4},
		{"static_open_autonomous_boston.nmea", 1.4},
		{"static_open_rtk_ref_boston.nmea", 2.2},
		{"static_rtk_open_10min.csv", 1.2},
		{"static_float_jumps_11min.csv", 1.3},
		{"static_autonomous_open_18min.csv", 1.8},
		{"static_autonomous_14min.csv", 1.8},
		{"rtk_float_to_fix_static_40min.pos", 1.4},
	} {
		t.Run(tt.name, func(t *testing.T) {
			fixes := realFixes(t, tt.name)
			p, _ := newPath(fixes, geo.NewFrame(centre(fixes)))
			p, _ = p.gated()
			p, _ = p.withoutSpikes()
			want := sampled(p)
			if got := float64(standing(p).Sigma); got > tt.factor*want || got < want/tt.factor {
				t.Errorf("told %.3f m, sampled %.3f", got, want)
			}
		})
	}
}

// TestRealErrors walks lawns with the errors of real receivers that stood
// still: what they did in the minutes of the walk. Where windows overlap much,
// few walks are independent, and the coverage of one log says little; that of
// all together is asked for.
func TestRealErrors(t *testing.T) {
	const windows = 12
	var walked, covered int
	for _, name := range []string{
		"static_wisconsin_1hz.nmea", "static_brussels_urban_1hz.nmea", "static_seattle_multignss_1hz.nmea",
		"static_open_autonomous_boston.nmea", "static_autonomous_open_18min.csv", "static_autonomous_14min.csv",
	} {
		fixes := realFixes(t, name)
		p, _ := newPath(fixes, geo.NewFrame(centre(fixes)))
		p, _ = p.gated()
		for k := range 6 * windows {
			l, laps := lawns[[]int{0, 2, 4}[k%3]], 1+k/3%2
			n := int(ringLength(l.ring)/pace.Value*float64(laps)) + 2
			if n >= len(p.stations) {
				continue
			}
			from := k * (len(p.stations) - n) / (6 * windows)
			g, ok := walkedWith(p.stations[from:from+n], l, uint64(k))
			if !ok {
				continue
			}
			walked++
			if math.Abs(float64(g.Area)-math.Abs(signedArea(l.ring))) <= float64(g.CI95) {
				covered++
			}
		}
	}
	if share := float64(covered) / float64(walked); walked < 300 || share < 0.90 {
		t.Errorf("the 95 %% interval holds %.1f %% of %d areas", 100*share, walked)
	}
}

// walkedWith walks a lawn with the errors of stations at one place.
func walkedWith(errors []station, l lawn, seed uint64) (Ring, bool) {
	start := rand.New(rand.NewPCG(3, seed)).Float64() * ringLength(l.ring)
	var fixes []ingest.Fix
	for i, e := range errors {
		at := placeOn(l.ring, start+pace.Value*float64(i)).Plus(e.at)
		fixes = append(fixes, fixAt(at.X, at.Y, float64(i)))
	}
	w, _ := Rings(tracksOf(fixes), Options{Side: OnEdge})
	if len(w.Rings) != 1 {
		return Ring{}, false
	}
	return w.Rings[0], true
}
