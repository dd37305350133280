package zones

import (
	"cmp"
	"fmt"
	"slices"

	"example.org/turfplat/geo"
	"example.org/turfplat/geo/ingest"
)

// settle takes in what was found about a walk. Where something else was taken,
// a ring that was refused is only left out.
func (t *Trail) settle(problems []ingest.Problem) {
	taken := len(t.Objects.Features) > 0
	for _, p := range problems {
		switch {
		case p.Code == "offset_question", p.Code == "ring_drawn":
			continue // asked, and taken, elsewhere
		case p.Severity == ingest.Refusal && taken && p.Code != "ring_offset":
			p.Severity, p.Text = ingest.Warning, p.Text+": left out"
			t.LeftOut++
		}
		t.Objects.Problems = append(t.Objects.Problems, p)
	}
	t.tellRest()
	for _, r := range t.Rings {
		if r.Hole {
			t.Objects.Problems = append(t.Objects.Problems, t.tellHole(r))
		}
	}
}

// tellRest says if much of a walk is in none of its rings. Whoever stops short
// of closing a second ring would else hardly notice.
func (t *Trail) tellRest() {
	const muchOf = 4 // a quarter; common practice, no source
	used := 0
	for _, r := range t.Rings {
		used += r.Used
	}
	if rest := t.Fixes - used; len(t.Rings) > 0 && rest*muchOf > t.Fixes {
		t.Objects.Problems = append(t.Objects.Problems, ingest.Problem{
			Severity: ingest.Note, Code: "walk_rest", Place: ingest.Place{Source: t.Source, Feature: -1},
			Text: fmt.Sprintf("%d of %d fixes lie in no ring: dropped, on the way there and away, or round a ring that does not close", rest, t.Fixes),
			Hint: "--explain tells what was dropped; whoever walks a ring goes on a little past where it began",
		})
	}
}

// tellHole says what was made of a ring inside another.
func (t *Trail) tellHole(r WalkedRing) ingest.Problem {
	text, hint := fmt.Sprintf("lies inside %q: taken as a hole in it", r.In), ""
	if r.Kind != "" {
		text = fmt.Sprintf("lies inside %q: taken as a %s, which comes off the turf with an error of its own", r.In, r.Kind)
		hint = "if it is something else, change its kind in the site file"
	}
	return ingest.Problem{Severity: ingest.Note, Code: "walk_hole", Place: ingest.Place{Source: t.Source, Feature: -1, Label: r.Name}, Text: text, Hint: hint}
}

// Largest returns the largest ring; false if there is none.
func (t Trail) Largest() (WalkedRing, bool) {
	if len(t.Rings) == 0 {
		return WalkedRing{}, false
	}
	return slices.MaxFunc(t.Rings, func(a, b WalkedRing) int { return cmp.Compare(a.Area, b.Area) }), true
}

// Gain is by how much a ring would grow if its edge lay some way farther out,
// but for what is won at corners: they go with the square of the way.
func (r WalkedRing) Gain(out geo.Length) geo.Area { return geo.Area(out * r.Perimeter) }

// WalkedKinds are the kinds of ground that somebody may walk round: all that
// are traced as polygons.
func WalkedKinds() []Kind {
	kinds := []Kind{Turf, Bed, Outline, ZoneKind, Keepout}
	for _, k := range CoverKinds {
		if !slices.Contains(kinds, k) {
			kinds = append(kinds, k)
		}
	}
	return append(kinds, Tree)
}

// WalkedKind returns the kind that a word names, if one may walk round it.
func WalkedKind(word string) (Kind, error) {
	kind, kinds := Kind(word), WalkedKinds()
	if slices.Contains(kinds, kind) {
		return kind, nil
	}
	if near := kind.nearest(); slices.Contains(kinds, near) {
		return "", fmt.Errorf("%q is no kind: did you mean %s?", word, near)
	}
	if kind.Known() {
		return "", fmt.Errorf("%s is no ground that one walks round", kind)
	}
	return "", fmt.Errorf("%q is no kind", word)
}
