package zones

import (
	"fmt"

	"example.org/turfplat/geo"
	"example.org/turfplat/geo/ingest"
)

// takeDrawn takes the polygons that were drawn: traces of a map or an image.
func (w Walking) takeDrawn(t *Trail, tracks *ingest.Tracks) {
	drawn, problems := tracks.Drawn()
	t.Objects.Problems = append(t.Objects.Problems, problems...)
	t.Drawn = len(drawn)
	beds := make([]bool, len(drawn))
	if w.Kind == Turf && len(drawn) > 1 {
		beds = t.partBeds(drawn)
	}
	for i, f := range drawn {
		kind := w.Kind
		if beds[i] {
			kind = Bed
		}
		f.ID = trailID("drawn", tracks, i+1)
		f.Properties.Set("id", f.ID)
		f.Properties.Set("kind", kind)
		f.Properties.Set("source", Traced)
		t.add(f)
	}
}

// partBeds tells which of some polygons drawn as turf are beds, those that an
// odd number of the others go round, and cuts out of them the turf drawn in
// them. A polygon that crosses itself takes no part: it is told later.
func (t *Trail) partBeds(drawn []*ingest.Feature) []bool {
	frame := geo.NewFrame(drawn[0].Geometry.Bound().Center())
	grounds := groundsOf(frame, drawn)
	beds := make([]bool, len(drawn))
	for i, n := range nestingsOf(frame, grounds) {
		if n.depth == 0 {
			continue
		}
		if beds[i] = n.depth%2 == 1; beds[i] {
			t.Objects.Problems = append(t.Objects.Problems, t.tellDrawnBed(drawn[i], drawn[n.around]))
		} else if left, err := geo.Difference(grounds[n.around], grounds[i]); err == nil && !left.Empty() {
			grounds[n.around] = left
			drawn[n.around].Geometry = plain(frame.MultiPolygon(left))
		}
	}
	return beds
}

// A nesting says how many grounds go round one, and the smallest of them.
type nesting struct{ depth, around int }

func nestingsOf(frame geo.Frame, grounds []geo.Region) []nesting {
	all := make([]nesting, len(grounds))
	for i := range grounds {
		for j := range grounds {
			if !liesIn(frame, grounds[i], grounds[j]) {
				continue
			}
			if n := &all[i]; n.depth == 0 || frame.Area(grounds[j]) < frame.Area(grounds[n.around]) {
				n.around = j
			}
			all[i].depth++
		}
	}
	return all
}

// groundsOf are what polygons go round, empty where one crosses itself.
func groundsOf(frame geo.Frame, drawn []*ingest.Feature) []geo.Region {
	grounds := make([]geo.Region, len(drawn))
	for i, f := range drawn {
		var rings []geo.Ring
		for _, p := range polygons(f.Geometry) {
			rings = append(rings, frame.Rings(p)...)
		}
		if region, err := geo.RegionOf(rings); err == nil {
			grounds[i] = region
		}
	}
	return grounds
}

// liesIn reports whether a ground is smaller than another and has nine tenths
// of itself in it: who draws by hand draws over the edge.
func liesIn(frame geo.Frame, ground, other geo.Region) bool {
	const nearly = 0.9
	if ground.Empty() || other.Empty() || !ground.Bounds().Meets(other.Bounds()) {
		return false
	}
	own := frame.Area(ground)
	if own >= frame.Area(other) {
		return false
	}
	common, err := geo.Intersection(ground, other)
	return err == nil && frame.Area(common) >= nearly*own
}

// tellDrawnBed says what was made of a polygon drawn inside another.
func (t *Trail) tellDrawnBed(f, around *ingest.Feature) ingest.Problem {
	where := "another ring"
	if name := around.Label(); name != "" {
		where = fmt.Sprintf("%q", name)
	}
	return ingest.Problem{
		Severity: ingest.Note, Code: "drawn_inside", Place: ingest.Place{Source: t.Source, Feature: -1, Label: f.Label()},
		Text: fmt.Sprintf("was drawn inside %s: taken as a %s, which comes off the turf", where, Bed),
		Hint: "if it is something else, change its kind in the site file",
	}
}
