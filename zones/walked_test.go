package zones

import (
	"bytes"
	"encoding/json"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/paulmach/orb"

	"example.org/turfplat/geo"
	"example.org/turfplat/geo/ingest"
	"example.org/turfplat/geo/track"
)

// walkRound walks rings one after the other, a metre and a second a fix, each
// three metres past its start, with an error that fades over 20 s.
func walkRound(seed uint64, sigma float64, rings ...geo.Ring) *ingest.Tracks {
	frame, rng := geo.NewFrame(home), rand.New(rand.NewPCG(seed, 0))
	var fixes []ingest.Fix
	var slow geo.XY
	fade := math.Exp(-1. / 20)
	for _, r := range rings {
		for i := range len(r) + 1 {
			a, b := r[i%len(r)], r[(i+1)%len(r)]
			length := math.Hypot(b.X-a.X, b.Y-a.Y)
			steps := length
			if i == len(r) {
				steps = 3
			}
			for s := 0.0; s < steps; s++ {
				spread := sigma * math.Sqrt(1-fade*fade)
				slow = xy(fade*slow.X+spread*rng.NormFloat64(), fade*slow.Y+spread*rng.NormFloat64())
				at := frame.Place(xy(a.X+(b.X-a.X)*s/length+slow.X, a.Y+(b.Y-a.Y)*s/length+slow.Y))
				fixes = append(fixes, ingest.Fix{At: at, Time: time.Unix(1.7e9+int64(len(fixes)), 0), Quality: -1})
			}
		}
	}
	return &ingest.Tracks{Source: "round.gpx", Format: "GPX", Digest: [32]byte{0xab, 0xcd, 0xef, 1},
		Tracks: []ingest.Track{{Name: "back lawn", Segments: [][]ingest.Fix{fixes}, Place: ingest.Place{Source: "round.gpx", Feature: -1}}}}
}

func walkingOnEdge(kind Kind) Walking {
	return Walking{Kind: kind, Options: track.Options{Side: track.OnEdge}}
}

// followed follows a walk that must not be refused.
func followed(t *testing.T, w Walking, tracks *ingest.Tracks) Trail {
	t.Helper()
	trail := w.Follow(tracks)
	if trail.Objects.Refused() {
		t.Fatalf("refused: %s", told(trail.Objects.Problems))
	}
	return trail
}

// written writes a trail as a site file and reads it again.
func written(t *testing.T, trail Trail) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := Compile(trail.Objects, nil, Reading{Key: builtInKey}).File.WriteGeoJSON(&b); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// TestWalkedSigmaComesBack: the error of a ring's area follows from its site
// file, whatever the edge was moved by; that of a bed inside counts besides.
func TestWalkedSigmaComesBack(t *testing.T) {
	lawn, bed := rectangle(0, 0, 30, 20), rectangle(9, 7, 19, 15)
	for _, tt := range []struct {
		name  string
		w     Walking
		rings []geo.Ring
		rel   float64
	}{
		{"a lawn", walkingOnEdge(Turf), []geo.Ring{lawn}, 1e-5}, // sigma_m has micrometres
		{"moved out", Walking{Kind: Turf, Options: track.Options{Side: track.Inside, Offset: 0.5}}, []geo.Ring{lawn}, 1e-5},
		{"moved in", Walking{Kind: Turf, Options: track.Options{Side: track.Outside, Offset: 1}}, []geo.Ring{lawn}, 1e-5},
		{"a bed inside", walkingOnEdge(Turf), []geo.Ring{lawn, bed}, 1e-5},
		{"a hole in a lot", walkingOnEdge(Outline), []geo.Ring{lawn, bed}, 1e-5},
	} {
		trail := followed(t, tt.w, walkRound(5, 0.2, tt.rings...))
		m := platOf(t, written(t, trail)).Measurement()
		var area, variance float64
		for i, r := range trail.Rings {
			if i > 0 {
				area -= 2 * float64(r.Area)
			}
			area += float64(r.Area)
			variance += float64(r.Sigma) * float64(r.Sigma)
		}
		if len(trail.Rings) != len(tt.rings) {
			t.Fatalf("%s: %d rings", tt.name, len(trail.Rings))
		}
		near(t, tt.name+": area", m.Covers[Turf].AreaM2, area, 1e-6, 0)
		near(t, tt.name+": sigma", m.Covers[Turf].SigmaM2, math.Sqrt(variance), tt.rel, 0)
	}
}

// TestWalkedParts: what each ring is taken for, and an island of turf in a bed
// stays turf.
func TestWalkedParts(t *testing.T) {
	lawn, bed, island := rectangle(0, 0, 60, 50), rectangle(10, 10, 45, 40), rectangle(20, 18, 35, 32)
	for _, tt := range []struct {
		kind  Kind
		kinds []Kind // of the rings
		cover Kind
		want  float64 // m2 of it
		codes string
	}{
		{Turf, []Kind{Turf, Bed, Turf}, Turf, 3000 - 1050 + 210, "rings_several walk_hole"},
		{Bed, []Kind{Bed, "", Bed}, Bed, 3000 - 1050 + 210, "rings_several walk_hole"},
		{Building, []Kind{Building, "", Building}, Building, 3000 - 1050 + 210, "rings_several walk_hole"},
	} {
		trail := followed(t, walkingOnEdge(tt.kind), walkRound(3, 0.1, lawn, bed, island))
		var kinds []Kind
		var names, ids []string
		for _, r := range trail.Rings {
			kinds, names, ids = append(kinds, r.Kind), append(names, r.Name), append(ids, r.ID)
		}
		if !slices.Equal(kinds, tt.kinds) {
			t.Fatalf("%s: taken for %q, want %q", tt.kind, kinds, tt.kinds)
		}
		if got := strings.Join(names, ", "); got != "back lawn 1, back lawn 2, back lawn 3" || ids[0] != "walk:abcdef01/1" {
			t.Errorf("%s: named %s, ids %q", tt.kind, got, ids)
		}
		if got := strings.Join(codes(trail.Objects.Problems), " "); got != tt.codes {
			t.Errorf("%s: problems %s", tt.kind, got)
		}
		near(t, string(tt.kind), platOf(t, written(t, trail)).Measurement().Covers[tt.cover].AreaM2, tt.want, 0.03, 0)
	}
}

// TestWalkedProperties: what a later reader needs stays with the object.
func TestWalkedProperties(t *testing.T) {
	w := Walking{Kind: Turf, Options: track.Options{Side: track.Inside, Offset: 0.3}}
	trail := followed(t, w, walkRound(1, 0.2, rectangle(0, 0, 30, 20)))
	f := trail.Objects.Features[0]
	for key, want := range map[string]string{
		"kind": "turf", "source": "walked", "name": "back lawn", "laps": "1", "side": "inside", "offset_m": "0.3", "id": "walk:abcdef01/1",
	} {
		if got, _ := f.Properties.Text(key); got != want {
			t.Errorf("%s is %q, want %q", key, got, want)
		}
	}
	if class, _ := f.Properties.Text("class"); len(class) != 1 || class < "A" || class > "E" {
		t.Errorf("class %q", class)
	}
	s := siteOf(t, written(t, trail))
	if n := len(s.Fixes(s.Objects[0])); n != trail.Rings[0].Used || !s.HasFixes() {
		t.Errorf("%d fixes kept, %d used", n, trail.Rings[0].Used)
	}
}

// TestKeptFixes: at most one a second and no more than a map can show.
func TestKeptFixes(t *testing.T) {
	for _, tt := range []struct {
		fixes    int
		interval float64
		want     int
	}{{100, 1, 100}, {100, 0, 100}, {100, 5, 100}, {100, 0.2, 20}, {100, 0.98, 100}, {100, 0.5, 50}, {10_000, 1, 2000}, {0, 1, 0}} {
		lap := make([]orb.Point, tt.fixes)
		if got := len(keptFixes([]WalkedRing{{Ring: track.Ring{Raw: [][]orb.Point{lap}}}}, tt.interval)); got != tt.want {
			t.Errorf("%d fixes every %g s: %d kept, want %d", tt.fixes, tt.interval, got, tt.want)
		}
	}
}

// TestFixesOfAnyText: whatever a file has for fixes is read or passed over.
func TestFixesOfAnyText(t *testing.T) {
	s := siteOf(t, sketch{covering(Turf, "t", rectangle(0, 0, 9, 9))}.file(home, ""))
	for text, want := range map[string]int{
		`null`: 0, `"a"`: 0, `[]`: 0, `[[1]]`: 0, `[1,2]`: 0, `[[1,2],["a"]]`: 0, `[[-93.1,44.95],[-93.1,44.95,250],[999,0],[0,1e300]]`: 2,
	} {
		o := &Object{Feature: &ingest.Feature{}}
		o.Feature.Properties.Set(fixesKey, json.RawMessage(text))
		if got := len(s.Fixes(o)); got != want {
			t.Errorf("%s: %d fixes, want %d", text, got, want)
		}
	}
}

// TestRingsLeftOut: a ring that cannot be measured is left out where another
// can, and refuses the file where none can.
func TestRingsLeftOut(t *testing.T) {
	lawn, strip := rectangle(0, 0, 60, 50), rectangle(90, 0, 120, 3)
	trail := followed(t, walkingOnEdge(Turf), walkRound(4, 1.5, lawn, strip))
	if len(trail.Rings) != 1 || trail.LeftOut != 1 {
		t.Errorf("%d rings, %d left out: %s", len(trail.Rings), trail.LeftOut, told(trail.Objects.Problems))
	}
	alone := walkingOnEdge(Turf).Follow(walkRound(4, 1.5, strip))
	if !alone.Objects.Refused() || alone.LeftOut != 0 {
		t.Errorf("the strip alone: %s", told(alone.Objects.Problems))
	}
}

// TestRestOfAWalk: a walker learns of a second ring that does not close.
func TestRestOfAWalk(t *testing.T) {
	tracks := walkRound(2, 0.1, rectangle(0, 0, 30, 20), geo.Ring{xy(60, 0), xy(90, 0), xy(90, 30)})
	segment := tracks.Tracks[0].Segments[0]
	tracks.Tracks[0].Segments[0] = segment[:len(segment)-30] // without the way back
	trail := followed(t, walkingOnEdge(Turf), tracks)
	if !slices.Contains(codes(trail.Objects.Problems), "walk_rest") || len(trail.Rings) != 1 {
		t.Errorf("%d rings: %s", len(trail.Rings), told(trail.Objects.Problems))
	}
}

func TestWalkedKind(t *testing.T) {
	for word, want := range map[string]string{
		"turf": "turf", "outline": "outline", "tree": "tree",
		"lawn": `"lawn" is no kind: did you mean turf?`, "fence": "fence is no ground that one walks round",
		"hazard": "hazard is no ground that one walks round", "xyz": `"xyz" is no kind`, "": `"" is no kind`,
	} {
		kind, err := WalkedKind(word)
		got := string(kind)
		if err != nil {
			got = err.Error()
		}
		if got != want {
			t.Errorf("%q: %s, want %s", word, got, want)
		}
	}
	for _, k := range WalkedKinds() {
		if shapes[k]&area == 0 {
			t.Errorf("%s is no polygon", k)
		}
	}
}
