package zones

import (
	"fmt"
	"strings"

	"example.org/turfplat/geo/ingest"
	"example.org/turfplat/zones/turf"
)

// tellUnsuited warns of zones whose grass does not get the sun that it needs,
// and names those that would do better.
func (d *division) tellUnsuited() {
	for _, z := range d.zones {
		if z.Species == "" || !z.Apply || !z.Sun.Known {
			continue
		}
		grass, known := d.site.grasses.Find(z.Species)
		if known && z.Sun.Fit == turf.Fails {
			d.site.problem(ingest.Warning, "species_shaded", z.place, fmt.Sprintf("zone %q gets %.1f h of direct sun a day, in which %s thins out", z.Name, z.Sun.Hours, grass.Name), d.site.betterGrasses(z.Sun.Hours, grass.Season))
		}
	}
}

// betterGrasses names the grasses that get on better with so many hours.
func (s *Site) betterGrasses(hours float64, season turf.Season) string {
	var names []string
	for _, grass := range s.grasses.Better(hours, season) {
		names = append(names, grass.Name)
	}
	if len(names) == 0 {
		return "no grass of the season bears so little sun: think of a bed, of mulch, or of letting more light in"
	}
	return "these bear it better: " + strings.Join(names, ", ")
}
