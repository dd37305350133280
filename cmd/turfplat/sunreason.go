package main

import (
	"slices"

	"github.com/paulmach/orb"

	"example.org/turfplat/geo"
	"example.org/turfplat/zones"
	"example.org/turfplat/zones/sun"
	"example.org/turfplat/zones/turf"
)

const explainSchema = "turfplat/explain/1"

// A sunReason says where the hours of sun of one spot go, for machines. Hours
// of the day are of solar time: the sun stands highest at 12.
type sunReason struct {
	Schema       string      `json:"schema"`
	Site         string      `json:"site"`
	Place        orb.Point   `json:"place"`
	Zone         string      `json:"zone"` // "" off the turf
	Season       string      `json:"season"`
	MinElevation sun.Degrees `json:"min_elevation_deg"`
	Possible     float64     `json:"possible_hours"`
	Got          float64     `json:"sun_hours"`
	Exposure     string      `json:"exposure"`

	SunFit    string        `json:"sun_fit,omitempty"`    // of the grass of the zone; "" = not known
	SunLimits *turf.SunNeed `json:"sun_limits,omitempty"` // of that grass

	Losses []sunLoss `json:"losses"`
	Days   []sunDay  `json:"days"`
}

// A caster is what stands between the sun and the spot.
type caster struct {
	ID         string      `json:"id"` // "" for sloping ground
	Name       string      `json:"name"`
	Kind       zones.Kind  `json:"kind,omitempty"`
	Height     float64     `json:"height_m,omitempty"`
	HeightFrom zones.Basis `json:"height_from,omitempty"`
}

type sunLoss struct {
	caster
	Hours float64 `json:"hours"`
}

type sunDay struct {
	Date   string     `json:"date"`
	Rise   float64    `json:"rise_solar_hour"`
	Set    float64    `json:"set_solar_hour"`
	Got    float64    `json:"sun_hours"`
	Shades []sunShade `json:"shades"`
}

type sunShade struct {
	caster
	From float64 `json:"from_solar_hour"`
	To   float64 `json:"to_solar_hour"`
	Pass float64 `json:"light_passing"`
}

// farOff is how far from the turf a spot may lie, in metres: beyond, the
// objects that throw shade on it are not in the file.
const farOff = 100

func reasonAt(s surveyed, place orb.Point) (*sunReason, error) {
	light := s.plat.Sun
	if light == nil {
		return nil, usageErrorf("--explain: %s has no turf", s.measure.ID)
	}
	at := s.site.Frame.XY(place)
	if turf := s.plat.Ground.Cover(zones.Turf).Bounds().Grown(farOff); turf.With(at) != turf {
		return nil, usageErrorf("--explain %v,%v lies off the property: longitude comes first", place.Lon(), place.Lat())
	}
	account := light.Scene.Explain(at, light.Season)
	r := &sunReason{
		Schema: explainSchema, Site: s.measure.ID, Place: place, Season: light.Season.String(), MinElevation: light.Scene.MinElevation,
		Possible: account.Possible, Got: account.Got, Exposure: string(light.Limits.Exposure(account.Got)), Losses: []sunLoss{}, Days: []sunDay{},
	}
	if z, on := zoneAt(s.plat, at); on {
		r.Zone, r.SunLimits = z.Name, z.Sun.Need
		if z.Sun.Need != nil {
			r.SunFit = z.Sun.Need.Fit(account.Got).String()
		}
	}
	for _, l := range account.Losses {
		r.Losses = append(r.Losses, sunLoss{casterOf(s.site, l.ID, l.Name), l.Hours})
	}
	for _, d := range account.Days {
		day := sunDay{Date: d.Date.String(), Rise: d.Rise, Set: d.Set, Got: d.Got, Shades: []sunShade{}}
		for _, shade := range d.Shades {
			day.Shades = append(day.Shades, sunShade{casterOf(s.site, shade.ID, shade.Name), shade.From, shade.To, shade.Pass})
		}
		r.Days = append(r.Days, day)
	}
	return r, nil
}

func zoneAt(p *zones.Plat, at geo.XY) (zones.Zone, bool) {
	for _, z := range p.Zones {
		if z.Region.Contains(at) {
			return z, true
		}
	}
	return zones.Zone{}, false
}

func casterOf(site *zones.Site, id, name string) caster {
	c := caster{ID: id, Name: name}
	for _, o := range slices.Concat(site.Objects, site.Beyond) {
		if id != "" && o.ID == id && o.Stature.Height > 0 {
			c.Kind, c.Height, c.HeightFrom = o.Kind, o.Stature.Height, o.Stature.From
			break
		}
	}
	return c
}
