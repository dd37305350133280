package zones

import (
	"slices"

	"example.org/turfplat/geo/ingest"
)

// turfResidual is the code of the warning that turf is what nobody mapped.
const turfResidual = "turf_residual"

const (
	residualText = "no lawn is mapped: "
	residualHint = "trace the lawn as kind turf, or what else is there, from a picture or on site"
)

// TurfResidual reports whether turf is what is left of the outline, and what
// was taken off it is nothing, or comes of map data: those lack whatever nobody
// mapped, and all of that passes for turf. Who traces a property by its edge and
// all that stands on it means it so.
func (p *Plat) TurfResidual() bool {
	return p.Ground.Traced.From == Outline && !p.Ground.Cover(Turf).Empty() && p.Site.coversMapped()
}

// coversMapped reports whether any of the covers comes of map data, or there
// are none.
func (s *Site) coversMapped() bool {
	none := true
	for _, o := range s.Objects {
		if o.Cover == "" {
			continue
		}
		if none = false; o.Source == Imported || o.Source == DefaultWidth {
			return true
		}
	}
	return none
}

// tellResidual warns of it.
func (p *Plat) tellResidual() {
	if s := p.Site; p.TurfResidual() {
		s.problem(ingest.Warning, turfResidual, s.place(), residualText+s.told.Told(s.Frame.Area(p.Ground.Cover(Turf)))+" of turf are what is left of the outline", residualHint)
	}
}

// tellNoLawn warns of a property that is being surveyed and on which no lawn is
// mapped, unless it was told that even less is.
func (s *Site) tellNoLawn() {
	outlines := s.Of(Outline)
	told := slices.ContainsFunc(s.Problems, func(p ingest.Problem) bool { return p.Code == OutlineUnbuilt || p.Code == OutlineBare })
	if s.Refused() || told || len(outlines) == 0 || len(s.Of(Turf)) > 0 || !s.coversMapped() {
		return
	}
	s.problem(ingest.Warning, turfResidual, s.place(), residualText+"turf will be what is left of the outline", residualHint)
}
