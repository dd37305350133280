package zones

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"example.org/turfplat/geo"
	"example.org/turfplat/geo/ingest"
	"example.org/turfplat/zones/sun"
	"example.org/turfplat/zones/turf"
)

// needOf is the sun that the grass of a zone needs; false if it is not known.
func (s *Site) needOf(z Zone) (turf.SunNeed, bool) {
	grass, known := s.grasses.Find(z.Species)
	if !known {
		return turf.SunNeed{}, false
	}
	return grass.SunNeed()
}

// judgedByGrass reports whether a zone is divided by what its grass needs.
func (s *Site) judgedByGrass(z Zone) bool {
	_, known := s.needOf(z)
	return s.sun.ByGrass && known
}

// limitsOf are the limits that a zone is divided by: those of its grass if that
// is asked for and the grass is known, else those of exposure.
func (s *Site) limitsOf(z Zone) sun.Limits {
	if !s.judgedByGrass(z) {
		return s.sun.Limits
	}
	need, _ := s.needOf(z)
	return need.Limits()
}

// fitOf says what the grass of a zone has of sun in a class of its limits.
func (s *Site) fitOf(z Zone, class int) turf.Fit {
	need, _ := s.needOf(z)
	limits := need.Limits()
	if class < len(limits) {
		return need.Fit(limits[class])
	}
	return need.Fit(0)
}

// sunshine is the sun of a zone of so many hours, judged by its grass.
func (s *Site) sunshine(z Zone, hours, doubtful float64) Sunshine {
	shine := Sunshine{Known: true, Hours: hours, Doubtful: doubtful}
	if need, known := s.needOf(z); known {
		shine.Fit, shine.Need = need.Fit(hours), &need
	}
	return shine
}

// doubtful is the turf so near a limit that it is to be checked on site, each
// zone by the limits that it is divided by.
func (s *Site) doubtful(l *Sunlight, turf geo.Region, zones []Zone) (geo.Region, error) {
	if !l.ByGrass {
		return sun.Doubtful(l.Hours, turf, l.Limits)
	}
	var bands []geo.Region
	for len(zones) > 0 {
		limits := s.limitsOf(zones[0])
		var alike []geo.Region
		zones = slices.DeleteFunc(slices.Clone(zones), func(z Zone) bool {
			same := slices.Equal(s.limitsOf(z), limits)
			if same {
				alike = append(alike, z.Region)
			}
			return same
		})
		ground, err := geo.Union(alike...)
		if err != nil {
			return geo.Region{}, err
		}
		if len(limits) == 0 {
			continue
		}
		band, err := sun.Doubtful(l.Hours, ground, limits)
		if err != nil {
			return geo.Region{}, err
		}
		bands = append(bands, band)
	}
	return geo.Union(bands...)
}

// tellGrassless says which zones could not be divided by what their grass
// needs, as nobody stated it.
func (d *division) tellGrassless() {
	var names []string
	for _, z := range d.zones {
		if z.Apply && z.Species == "" && z.Exposure == "" {
			names = append(names, strconv.Quote(z.Name))
		}
	}
	if len(names) > 0 {
		d.site.problem(ingest.Note, "species_missing", d.site.place(), fmt.Sprintf("no grass is stated for %s, divided by exposure instead", strings.Join(names, ", ")),
			`give species on zones or turf, or "species" of the site`)
	}
}

// SunNeeds are the needs of the grasses whose sun was judged, by name.
func (p *Plat) SunNeeds() []turf.SunNeed {
	var needs []turf.SunNeed
	for _, z := range p.Zones {
		if z.Sun.Need != nil && !slices.ContainsFunc(needs, func(n turf.SunNeed) bool { return n.Grass == z.Sun.Need.Grass }) {
			needs = append(needs, *z.Sun.Need)
		}
	}
	slices.SortFunc(needs, func(a, b turf.SunNeed) int { return strings.Compare(a.Grass, b.Grass) })
	return needs
}
