package zones

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"example.org/turfplat/geo/ingest"
	"example.org/turfplat/zones/sun"
	"example.org/turfplat/zones/turf"
)

// Sunshine is the direct sun that a zone gets.
type Sunshine struct {
	Known    bool
	Hours    float64 // a day, mean over the zone and the season
	Doubtful float64 // share of the zone that lies within half an hour of a limit; 0 in zones read from a file

	Fit  turf.Fit      // how the zone's grass gets on with it; Unknown in zones read from a file
	Need *turf.SunNeed // of that grass; nil if Fit is Unknown
}

// exposureWords are what people call exposures after the name of a lawn.
var exposureWords = map[sun.Exposure]string{sun.FullSun: "full sun", sun.PartSun: "part sun", sun.FullShade: "shade", sun.DeepShade: "deep shade"}

// expose divides zones by their exposure, or by what their grass needs. A zone
// where nothing is applied is left whole, and so is one whose exposure a person
// stated, with a word if the sun says otherwise.
func (d *division) expose(l *Sunlight) error {
	for _, z := range slices.Clone(d.zones) {
		if z.Exposure != "" || !z.Apply {
			d.light(z, l)
			continue
		}
		limits := d.site.limitsOf(z)
		if len(limits) == 0 { // its grass makes do with no sun at all
			d.light(z, l)
			continue
		}
		patches, err := sun.Patches(l.Hours, z.Region, d.site.Frame, limits)
		if err != nil {
			return err
		}
		if len(patches) < 2 {
			d.light(z, l)
			continue
		}
		d.part(z, patches, l)
	}
	return nil
}

// light notes the sun that a zone gets as a whole.
func (d *division) light(z Zone, l *Sunlight) {
	hours, doubtful := l.Hours.Mean(z.Region, d.site.limitsOf(z))
	if math.IsNaN(hours) {
		return
	}
	noted := &d.zones[d.indexOf(z)]
	noted.Sun = d.site.sunshine(z, hours, doubtful)
	found := l.Limits.Exposure(hours)
	switch {
	case !z.Apply:
	case z.Exposure == "" && z.written:
	case z.Exposure == "":
		noted.Exposure = string(found)
	case z.Exposure != string(found):
		said, hint := "is stated to be", "leave the exposure out to have the zone divided by its sun"
		if z.written {
			said, hint = "was written as", "state no exposure, and run zone --sun again"
		}
		d.site.problem(ingest.Warning, "exposure_differs", z.place,
			fmt.Sprintf("zone %q %s %s, but gets %.1f h of direct sun a day, which is %s: kept so", z.Name, said, exposureWords[sun.Exposure(z.Exposure)], hours, exposureWords[found]), hint)
	}
}

// part puts the patches of a zone in its place, named as people would. One that
// is parted by what its grass needs has the exposure of its mean hours.
func (d *division) part(z Zone, patches []sun.Patch, l *Sunlight) {
	d.remove(z)
	for _, patch := range patches {
		p := z
		p.Region, p.Sun = patch.Region, d.site.sunshine(z, patch.Hours, patch.Doubtful)
		if d.site.judgedByGrass(z) {
			p.Sun.Fit = d.site.fitOf(z, patch.Class)
			p.ID, p.Name = d.freshID(z.ID+"-"+hyphened(p.Sun.Fit.String())), z.Name+", "+p.Sun.Fit.String()
			p.Exposure = string(l.Limits.Exposure(patch.Hours))
		} else {
			exposure := sun.Exposures[patch.Class]
			p.ID, p.Name = d.freshID(z.ID+"-"+string(exposure)), z.Name+", "+exposureWords[exposure]
			p.Exposure = string(exposure)
		}
		d.zones = append(d.zones, p)
	}
}

// nameTells reports whether a zone's name tells something already, after that
// of the lawn.
func (z ZoneMeasure) nameTells(words string) bool {
	return words != "" && strings.Contains(z.Name+", ", ", "+words+", ")
}

// NameTellsExposure reports whether a zone's name tells its exposure already.
func (z ZoneMeasure) NameTellsExposure() bool {
	return z.nameTells(exposureWords[sun.Exposure(z.Exposure)])
}

// NameTellsSpecies reports whether a zone's name tells its grass already.
func (z ZoneMeasure) NameTellsSpecies() bool { return z.nameTells(z.Species) }

// NameTellsFit reports whether a zone's name tells already how its grass gets
// on with its sun.
func (z ZoneMeasure) NameTellsFit() bool { return z.nameTells(z.SunFit) }

// sunHours is the property of a zone that a division wrote: the hours of direct
// sun it gets.
const sunHours = "sun_hours"

// writtenSun returns the hours that an earlier division wrote.
func writtenSun(f *ingest.Feature) (hours float64, known bool) {
	if !isDerived(f) {
		return 0, false
	}
	hours, known = f.Properties.Number(sunHours)
	return hours, known && hours >= 0 && hours <= 24
}

// write sets the properties of a zone's feature, the hours to less than a
// second.
func (s Sunshine) write(p *ingest.Properties) {
	if s.Known {
		p.Set(sunHours, math.Round(s.Hours*1e4)/1e4)
	}
	if s.Need != nil {
		p.Set("sun_fit", s.Fit.String())
		p.Set("sun_limits", s.Need)
	}
}
