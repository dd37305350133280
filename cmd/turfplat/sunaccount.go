package main

import (
	"fmt"
	"strings"

	"example.org/turfplat/zones/sun"
	"example.org/turfplat/zones/turf"
)

// A sunAccount says how hours of sun were worked out.
type sunAccount struct {
	Season       string      `json:"season"`
	MinElevation sun.Degrees `json:"min_elevation_deg"`
	Limits       sun.Limits  `json:"limits_hours"` // the least of full sun, part sun and shade
	Cell         float64     `json:"cell_m"`
	DividedBy    string      `json:"divided_by"`       // exposure, or species: by the limits of each zone's grass
	Doubtful     float64     `json:"doubtful_area_m2"` // within half an hour of a limit

	Grasses     []turf.SunNeed `json:"grasses"` // that zones were judged by
	Assumptions []string       `json:"assumptions"`
}

// sunAccountOf returns nil if the sun was not asked for.
func sunAccountOf(s surveyed) *sunAccount {
	l := s.plat.Sun
	if l == nil {
		return nil
	}
	a := &sunAccount{
		Season: l.Season.String(), MinElevation: l.Scene.MinElevation, Limits: l.Limits, Cell: l.Hours.Step,
		DividedBy: "exposure", Doubtful: float64(s.site.Frame.Area(l.Doubtful)), Assumptions: []string{}, Grasses: []turf.SunNeed{},
	}
	if l.ByGrass {
		a.DividedBy = "species"
	}
	a.Grasses = append(a.Grasses, s.plat.SunNeeds()...)
	a.Assumptions = append(a.Assumptions, s.site.HeightAccount()...)
	return a
}

func (a *sunAccount) String() string {
	text := fmt.Sprintf("sun h: direct sun a day, %s, above %g degrees\nfull sun from %g h, part sun from %g h, shade from %g h; near a limit: within half an hour",
		a.Season, a.MinElevation, a.Limits[0], a.Limits[1], a.Limits[2])
	if a.DividedBy == "species" {
		text += "\nzones are divided by the limits of their grass, those of no known grass by exposure"
	}
	for _, need := range a.Grasses {
		text += "\n" + needText(need)
	}
	return text
}

// needText tells the sun that a grass needs, and who says so.
func needText(n turf.SunNeed) string {
	var parts []string
	add := func(what string, hours *float64, source string) {
		if hours == nil {
			return
		}
		part := fmt.Sprintf("%s %g h", what, *hours)
		if source != "" {
			part += " (" + source + ")"
		}
		parts = append(parts, part)
	}
	if n.Least != nil && n.EnoughSource == n.LeastSource {
		n.EnoughSource = "" // told once
	}
	add("enough sun from", n.Enough, n.EnoughSource)
	add("too little under", n.Least, n.LeastSource)
	return n.Grass + ": " + strings.Join(parts, ", ")
}
