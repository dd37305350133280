package zones

import (
	"math"

	"example.org/turfplat/geo"
)

// Edges are the lengths along which turf meets what is edged or trimmed.
type Edges struct {
	Hardscape geo.Length
	Bed       geo.Length
	Trim      geo.Length // along buildings, and each side of fences, walls, hedges and trunks that turf reaches
}

const (
	// touching is the gap, in metres, across which two covers still meet:
	// hands that trace one edge twice come that close (5 cm, common practice).
	touching = 0.05
	// reach is how far, in metres, from a fence turf still has to be trimmed
	// by hand (common practice, no source).
	reach = 0.25
	// trunkRing is the radius, in metres, of what is trimmed round a trunk
	// (common practice, no source).
	trunkRing = 0.45
)

// edges measures the edges of a part of the turf.
func (s *Site) edges(turf geo.Region, g *Ground) (Edges, error) {
	e := Edges{
		Hardscape: s.Frame.Contact(turf, g.Cover(Hardscape), touching),
		Bed:       s.Frame.Contact(turf, g.Cover(Bed), touching),
		Trim:      s.Frame.Contact(turf, g.Cover(Building), touching),
	}
	for _, o := range s.Objects {
		along, err := s.trimAlong(o, turf)
		if err != nil {
			return Edges{}, err
		}
		e.Trim += along
	}
	return e, nil
}

// trimAlong is what an object that covers no ground adds to the trimming.
func (s *Site) trimAlong(o *Object, turf geo.Region) (geo.Length, error) {
	switch {
	case o.Kind == Tree:
		var round geo.Length
		for _, p := range o.Points {
			if turf.Contains(p) {
				round += 2 * math.Pi * trunkRing
			}
		}
		return round, nil
	case o.Cover != "" || o.Kind != Fence && o.Kind != Wall && o.Kind != Hedge:
		return 0, nil
	}
	var sides geo.Length
	for _, l := range o.Lines {
		strip, err := l.Stroke(2 * reach)
		if err != nil {
			return 0, err
		}
		for _, ring := range ringsOf(strip) {
			closed := append(geo.Line(ring), ring[0])
			sides += s.lengthInside(turf, closed)
		}
	}
	return sides, nil
}
