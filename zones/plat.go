package zones

import (
	"fmt"
	"math"

	"github.com/paulmach/orb"

	"example.org/turfplat/geo"
	"example.org/turfplat/geo/ingest"
)

// A Plat is a property laid out: its ground in covers, its turf in zones.
type Plat struct {
	Site   *Site
	Ground *Ground
	Zones  []Zone
	Sun    *Sunlight // nil if it was not asked for, or there is no turf
}

// Survey lays a site out. It returns nil if the site is, or on the way gets,
// Refused; Site.Problems tells why.
func Survey(s *Site) *Plat {
	if s.Refused() {
		return nil
	}
	p := &Plat{Site: s}
	var err error
	if p.Ground, err = s.layGround(); err == nil {
		s.checkSize(p.Ground)
		s.tellFarOff(p.Ground)
		s.checkSetbacks()
		s.noteNamedShores()
		if !s.Refused() {
			p.Zones, p.Sun, err = s.layZones(p.Ground.Cover(Turf))
		}
	}
	if err == nil && !s.Refused() {
		err = p.prove()
	}
	if err != nil {
		s.problem(ingest.Refusal, "overlay_failed", s.place(), err.Error(), "report the file: this should not happen")
	}
	if s.Refused() {
		return nil
	}
	s.tellTurfOverlaps()
	s.tellUnknownGrasses()
	p.tellResidual()
	return p
}

const (
	smallLawn = 10  // m2
	largeLawn = 1e9 // m2
)

// checkSize tells of lawns and sites that are hardly meant.
func (s *Site) checkSize(g *Ground) {
	turf := s.Frame.Area(g.Cover(Turf))
	bounds := g.Outline.Bounds().Union(g.Traced.All.Bounds())
	switch {
	case g.Traced.All.Empty() && len(g.OffTurf) > 0:
		s.problem(ingest.Warning, "no_turf", s.place(), "nothing is turf, only covers are measured", "trace the lawn as kind turf, or the property's edge as kind outline")
	case g.Traced.All.Empty():
		s.problem(ingest.Refusal, "no_turf", s.place(), "there is neither turf nor an outline to find it in", "trace the lawn as kind turf, or the property's edge as kind outline")
	case turf > largeLawn && onPlan(s.largestLawn()):
		s.problem(ingest.Refusal, "degrees_local", s.lawnPlace(), "its coordinates look like feet or metres of a plan, not degrees", "give longitude and latitude (WGS 84): lay the plan on a map first")
		return
	case turf > largeLawn:
		s.problem(ingest.Refusal, "lawn_large", s.lawnPlace(), fmt.Sprintf("%.0f km2 of turf is no lawn", float64(turf)/1e6), "look for a vertex far off")
	case turf == 0:
		s.problem(ingest.Warning, "turf_none", s.place(), "no turf is left when all else is taken off", "")
	case turf < smallLawn:
		s.problem(ingest.Warning, "lawn_small", s.lawnPlace(), s.told.Told(turf)+" of turf is very little for a lawn", "are the coordinates degrees, and is all of it traced?")
	}
	if geo.Wide(bounds) {
		s.problem(ingest.Warning, "site_large", s.place(), fmt.Sprintf("the site is %.1f km across: measured along geodesics", max(bounds.Width(), bounds.Height())/1000), "look for a vertex far off, unless it is meant to be so large")
	}
}

// onPlan reports whether an object that covers too much looks drawn on a plan
// whose feet or metres were read as degrees: it goes over several of them, and no
// two of its vertices that follow each other lie together, as they do where some
// are far off.
func onPlan(o *Object) bool {
	const across, apart = 3, 0.05 // degrees
	var last *orb.Point
	for p := range positions(o.Feature.Geometry) {
		if last != nil && *last != p && max(math.Abs(p[0]-last[0]), math.Abs(p[1]-last[1])) < apart {
			return false
		}
		last = &p
	}
	b := o.Feature.Geometry.Bound()
	return max(b.Max[0]-b.Min[0], b.Max[1]-b.Min[1]) > across
}

// lawnPlace is where the largest object lies that turf comes from.
func (s *Site) lawnPlace() ingest.Place { return s.placeNear(s.largestLawn()) }

// largestLawn is the largest object that turf comes from.
func (s *Site) largestLawn() *Object {
	lawns := s.Of(Turf)
	if len(lawns) == 0 {
		lawns = s.Of(Outline)
	}
	sortObjects(s.Frame, lawns)
	return lawns[len(lawns)-1]
}

// tellTurfOverlaps warns of turf that was traced twice; it counts once.
func (s *Site) tellTurfOverlaps() {
	turf := s.Of(Turf)
	sortObjects(s.Frame, turf)
	for i, a := range turf {
		for _, b := range turf[i+1:] {
			shared, err := geo.Intersection(a.Ground, b.Ground)
			if err != nil {
				continue // told already: the union of the two failed as well
			}
			area := s.Frame.Area(shared)
			if area <= telling {
				continue
			}
			hint := ""
			if area >= s.Frame.Area(a.Ground)-telling {
				hint = fmt.Sprintf("%q lies wholly in %q: if it is a bed, give it kind bed", a.Label(), b.Label())
			}
			s.problem(ingest.Warning, "turf_overlap", a.Place, fmt.Sprintf("%s were traced as turf in %q as well and count once", s.told.Told(area), b.Label()), hint)
		}
	}
}
