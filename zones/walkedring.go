package zones

import (
	"fmt"
	"math"

	"github.com/paulmach/orb"

	"example.org/turfplat/geo"
	"example.org/turfplat/geo/ingest"
	"example.org/turfplat/geo/track"
)

// takeRings names the walked rings, gives each its part and makes objects.
func (w Walking) takeRings(t *Trail, tracks *ingest.Tracks) {
	title := tracks.Title()
	if title == "" {
		title = idFromFile(tracks.Source)
	}
	for _, g := range t.Walk.Rings {
		r := WalkedRing{Ring: g, Name: title, Kind: w.kindOf(g)}
		if len(t.Walk.Rings) > 1 {
			r.Name = fmt.Sprintf("%s %d", title, g.Number)
		}
		if r.Kind != "" {
			r.ID = trailID("walk", tracks, g.Number)
		}
		t.Rings = append(t.Rings, r)
	}
	for i := range t.Rings {
		if in := t.Rings[i].Within; in >= 0 {
			t.Rings[i].In = t.Rings[in].Name
		}
	}
	for i, r := range t.Rings {
		if r.Kind != "" {
			t.take(w, i)
		}
	}
}

// kindOf returns the kind of the object that a ring becomes, "" if it is a
// hole of another's.
func (w Walking) kindOf(g track.Ring) Kind {
	switch {
	case !g.Hole:
		return w.Kind
	case w.Kind == Turf:
		return Bed
	}
	return ""
}

// take makes an object of a ring and the holes in it.
func (t *Trail) take(w Walking, i int) {
	r := t.Rings[i]
	around := []WalkedRing{r}
	for _, hole := range t.Rings {
		if hole.Within == i && (hole.Kind == "" || r.Kind != w.Kind) {
			around = append(around, hole)
		}
	}
	geometry, err := ground(around)
	if err != nil {
		t.Objects.Problems = append(t.Objects.Problems, ingest.Problem{
			Severity: ingest.Refusal, Code: "geometry_failed", Place: ingest.Place{Source: t.Source, Feature: -1, Label: r.Name},
			Text: "hole cannot be cut out: " + err.Error(), Hint: "walk the two in files of their own",
		})
		return
	}
	t.add(ingest.NewFeature(w.properties(r, around, t.Walk.Interval), geometry))
}

// properties are those of an object made of a ring and its holes.
func (w Walking) properties(r WalkedRing, around []WalkedRing, interval float64) ingest.Properties {
	var p ingest.Properties
	p.Set("id", r.ID)
	p.Set("kind", r.Kind)
	p.Set("name", r.Name)
	p.Set("source", Walked)
	p.Set("sigma_m", micrometres(edgeSigma(around)))
	p.Set("laps", r.Laps)
	p.Set("class", string(r.Class))
	if w.Side != track.NotStated {
		p.Set("side", SideWord(w.Side))
	}
	if w.Offset > 0 {
		p.Set("offset_m", micrometres(w.Offset))
	}
	p.Set(fixesKey, keptFixes(around, interval))
	return p
}

// SideWord is the word of a side in files and flags, "" if it is not stated.
func SideWord(s track.Side) string {
	switch s {
	case track.Inside:
		return "inside"
	case track.Outside:
		return "outside"
	case track.OnEdge:
		return "edge"
	}
	return ""
}

// ground is what a ring goes round, less the holes in it. A hole may reach
// over its edge a little.
func ground(around []WalkedRing) (orb.Geometry, error) {
	shell := orb.Polygon{around[0].Outline}
	if len(around) == 1 {
		return shell, nil
	}
	frame := geo.NewFrame(around[0].Outline[0])
	whole, err := geo.RegionOf(frame.Rings(shell))
	for _, hole := range around[1:] {
		if err != nil {
			break
		}
		var off geo.Region
		if off, err = geo.RegionOf(frame.Rings(orb.Polygon{hole.Outline})); err == nil {
			whole, err = geo.Difference(whole, off)
		}
	}
	if err != nil {
		return nil, err
	}
	return plain(frame.MultiPolygon(whole)), nil
}

// edgeSigma is the error of an edge made of rings from which, taken as
// [geo.Walk], the error of the area follows that independent errors of the
// rings leave: both go with the way round.
func edgeSigma(around []WalkedRing) geo.Length {
	var variance, way float64
	for _, r := range around {
		weight := float64(r.EdgeSigma) * float64(r.Perimeter)
		variance += weight * weight
		way += float64(r.Perimeter)
	}
	return geo.Length(math.Sqrt(variance) / way)
}

// micrometres rounds a length for a file.
func micrometres(l geo.Length) float64 { return math.Round(float64(l)*1e6) / 1e6 }
