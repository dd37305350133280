package ingest

import (
	"github.com/paulmach/orb"
)

// Drawn returns the polygons that were drawn in a map viewer rather than
// walked, a feature each, with its name if it has one. Rings are closed and
// wound; a polygon without an inside is left out, with a warning (ring_flat).
func (t *Tracks) Drawn() ([]*Feature, []Problem) {
	var drawn []*Feature
	var problems []Problem
	for _, track := range t.Tracks {
		if !track.Closed {
			continue
		}
		g, err := settled(track.polygon())
		if g == nil || err != nil {
			place := track.Place
			place.Label = track.Name
			problems = append(problems, Problem{
				Severity: Warning, Code: "ring_flat", Place: place,
				Text: "polygon goes round nothing, left it out",
			})
			continue
		}
		var props Properties
		if track.Name != "" {
			props.Set("name", track.Name)
		}
		f := NewFeature(props, g)
		f.Index = len(drawn)
		drawn = append(drawn, f)
	}
	return drawn, problems
}

// polygon is the drawn edge and its holes.
func (t Track) polygon() orb.Polygon {
	var p orb.Polygon
	for _, segment := range t.Segments {
		ring := make(orb.Ring, len(segment))
		for i, fix := range segment {
			ring[i] = fix.At
		}
		p = append(p, ring)
	}
	return p
}

// Walked counts the tracks that were walked, not drawn.
func (t *Tracks) Walked() int {
	n := 0
	for _, track := range t.Tracks {
		if !track.Closed {
			n++
		}
	}
	return n
}

// Title is what people call the walk: the name of its tracks if they have one
// and the same, else nothing.
func (t *Tracks) Title() string {
	title := ""
	for _, track := range t.Tracks {
		if track.Closed || track.Name == "" {
			continue
		}
		if title != "" && track.Name != title {
			return ""
		}
		title = track.Name
	}
	return title
}
