package zones

import (
	"math"

	"example.org/turfplat/geo"
)

const (
	// touching is the gap, in metres, across which two covers still meet, and
	// the width under which ground between two edges is a fault of drawing:
	// hands that trace one edge twice come that close (5 cm, common practice),
	// and 7 decimals of a degree leave a centimetre.
	touching = 0.05
	// reach is how far, in metres, from a fence turf still has to be trimmed
	// by hand (common practice, no source).
	reach = 0.25
	// trunkRing is the radius, in metres, of what is trimmed round a trunk
	// (common practice, no source).
	trunkRing = 0.45
)

// edging measures where a part of the turf meets hardscape and beds.
func (b borders) edging(turf *geo.Border) (hardscape, bed geo.Length) {
	return b.frontage(turf, Hardscape), b.frontage(turf, Bed)
}

// frontage measures where turf meets a cover.
func (b borders) frontage(turf *geo.Border, cover Kind) geo.Length {
	return b.frame.Frontage(turf, b.of(cover), touching)
}

// trim measures what is trimmed by hand on the turf: along buildings, along
// each side of fences, walls and hedges that turf reaches, and round trunks.
func (p *Plat) trim(b borders) geo.Length {
	sum := b.frontage(b.of(Turf), Building)
	turf := p.Ground.Cover(Turf)
	for _, o := range p.Site.Objects {
		sum += p.Site.trimAlong(o, turf)
	}
	return sum
}

// trimAlong is what an object that covers no ground adds to the trimming.
func (s *Site) trimAlong(o *Object, turf geo.Region) geo.Length {
	var sum geo.Length
	switch {
	case o.Kind == Tree:
		for _, p := range o.Points {
			if turf.Contains(p) {
				sum += 2 * math.Pi * trunkRing
			}
		}
	case o.Cover == "" && (o.Kind == Fence || o.Kind == Wall || o.Kind == Hedge):
		for _, l := range o.Lines {
			for i := 1; i < len(l); i++ {
				sum += s.lengthInside(turf, beside(l[i-1], l[i], reach)) + s.lengthInside(turf, beside(l[i], l[i-1], reach))
			}
		}
	}
	return sum
}

// beside returns the edge from a to b moved d metres to its left.
func beside(a, b geo.XY, d float64) geo.Line {
	east, north := b.X-a.X, b.Y-a.Y
	k := d / math.Hypot(east, north)
	return geo.Line{{X: a.X - k*north, Y: a.Y + k*east}, {X: b.X - k*north, Y: b.Y + k*east}}
}
