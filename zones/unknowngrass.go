package zones

import (
	"fmt"
	"strings"

	"example.org/turfplat/geo/ingest"
)

// tellUnknownGrasses warns of grasses that are not in the table, once each,
// where they are stated first: of the site, of turf, of zones, of the sides of
// cutlines. Of trees any species is taken.
func (s *Site) tellUnknownGrasses() {
	told := make(map[string]bool)
	tell := func(species string, place ingest.Place) {
		name := strings.ToLower(species)
		if _, known := s.grasses.Find(species); known || species == "" || told[name] {
			return
		}
		told[name] = true
		hint := "name a grass of the table, or add this one to it with --species FILE"
		if near := s.grasses.Nearest(species); near != "" {
			hint = fmt.Sprintf("did you mean %q?", near)
		}
		s.problem(ingest.Warning, "species_unknown", place, fmt.Sprintf("species %q is not in the table of grasses: neither its season nor the sun and the rates it needs are known", species), hint)
	}
	tell(s.Species, s.place())
	for _, o := range s.Objects {
		switch o.Kind {
		case Turf, ZoneKind, Keepout:
			tell(o.statedSpecies(), o.Place)
		case Cutline:
			for _, word := range []string{"north", "south", "east", "west"} {
				tell(o.statedSides()[word], o.Place)
			}
		}
	}
}
