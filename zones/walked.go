package zones

import (
	"encoding/hex"
	"fmt"
	"slices"

	"example.org/turfplat/geo/ingest"
	"example.org/turfplat/geo/track"
)

// A Walking says what somebody walked round, and what of it the fixes do not
// tell.
type Walking struct {
	Kind Kind // one of WalkedKinds
	track.Options
}

// A Trail is a file of tracks, and what became of it.
type Trail struct {
	Source, Format string
	Fixes          int // read, of walks and of what was drawn
	Walks          int // tracks that were walked, not drawn
	Drawn          int // polygons taken that were drawn in a map viewer
	LeftOut        int // rings that could not be measured, where others could
	Rings          []WalkedRing
	Walk           *track.Walk // its steps; empty if nothing was walked

	// Objects are the rings and polygons as objects of a site, with all that
	// was found on the way.
	Objects *ingest.Collection
}

// A WalkedRing is a ring with the part it was given.
type WalkedRing struct {
	track.Ring
	Name string
	ID   string // of the object; "" for a hole of the object of another ring
	Kind Kind   // "" for such a hole
	In   string // name of the ring around it, or ""
}

// Follow makes objects of the rings of a file of tracks, and of polygons drawn
// in a map viewer. A walked ring is an object of source walked; its sigma_m is
// the error of the edge from which the error of the ring's area follows, and
// its laps, its class and its fixes stay with it.
//
// A ring right inside a ring of turf is taken as a bed, with an error of its
// own, and one inside that as turf again. Of other kinds it is a hole. Drawn
// polygons of turf inside each other are taken so as well; those of other kinds
// stand as they were drawn, with the holes drawn in them.
//
// A ring that cannot be measured refuses the site, unless there is another:
// then it is left out with a warning. An offset that does not fit refuses.
// Problems are those of [track.Rings] and of the reader, and the notes
// walk_hole, drawn_inside and walk_rest. The question of the offset is left to
// the caller, who knows the units in which to ask: see [Trail.Largest].
func (w Walking) Follow(tracks *ingest.Tracks) Trail {
	t := Trail{
		Source: tracks.Source, Format: tracks.Format, Fixes: tracks.Fixes(), Walks: tracks.Walked(), Walk: &track.Walk{},
		Objects: &ingest.Collection{Source: tracks.Source, Digest: tracks.Digest, Problems: slices.Clone(tracks.Problems)},
	}
	if tracks.Refused() {
		return t
	}
	w.takeDrawn(&t, tracks)
	if t.Walks > 0 {
		var problems []ingest.Problem
		t.Walk, problems = track.Rings(tracks, w.Options)
		w.takeRings(&t, tracks)
		t.settle(problems)
	}
	return t
}

func (t *Trail) add(f *ingest.Feature) {
	f.Index = len(t.Objects.Features)
	t.Objects.Features = append(t.Objects.Features, f)
}

// trailID is the same for the same file, and no two files share one.
func trailID(what string, tracks *ingest.Tracks, number int) string {
	return fmt.Sprintf("%s:%s/%d", what, hex.EncodeToString(tracks.Digest[:4]), number)
}
