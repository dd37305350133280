package zones

import (
	"fmt"
	"slices"
	"strings"

	"example.org/turfplat/geo/ingest"
	"example.org/turfplat/zones/sun"
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

// tellShadeStated warns of zones whose grass thins out in the shade that a
// person stated: all hours of that exposure are fewer than it bears. Where hours
// are worked out, or written in the file, they tell.
func (d *division) tellShadeStated() {
	if d.site.sun != nil {
		return
	}
	for _, z := range d.zones {
		need, known := d.site.needOf(z)
		most, shaded := mostHours(sun.Exposure(z.Exposure))
		if known && shaded && z.Apply && !z.Sun.Known && need.Least != nil && most < *need.Least {
			d.site.problem(ingest.Warning, "species_shaded", z.place,
				fmt.Sprintf("zone %q is said to lie in %s, with less than %g h of direct sun a day; %s thins out below %g h", z.Name, exposureWords[sun.Exposure(z.Exposure)], most, need.Grass, *need.Least),
				d.site.betterGrasses(most, d.seasonOf(z)))
		}
	}
}

// seasonOf is the season of a zone's grass; "" if it is not known.
func (d *division) seasonOf(z Zone) turf.Season {
	grass, _ := d.site.grasses.Find(z.Species)
	return grass.Season
}

// mostHours are the hours of direct sun a day that an exposure stays under;
// false if it has no such limit, or none is stated.
func mostHours(e sun.Exposure) (float64, bool) {
	class := slices.Index(sun.Exposures, e)
	if class < 1 {
		return 0, false
	}
	return sun.DefaultLimits()[class-1], true
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
