package main

import (
	"fmt"

	"example.org/turfplat/zones/sun"
)

// A sunAccount says how hours of sun were worked out.
type sunAccount struct {
	Season       string      `json:"season"`
	MinElevation sun.Degrees `json:"min_elevation_deg"`
	Limits       sun.Limits  `json:"limits_hours"` // the least of full sun, part sun and shade
	Cell         float64     `json:"cell_m"`
	Doubtful     float64     `json:"doubtful_area_m2"` // within half an hour of a limit
	Assumptions  []string    `json:"assumptions"`
}

// sunAccountOf returns nil if the sun was not asked for.
func sunAccountOf(s surveyed) *sunAccount {
	l := s.plat.Sun
	if l == nil {
		return nil
	}
	a := &sunAccount{
		Season: l.Season.String(), MinElevation: l.Scene.MinElevation, Limits: l.Limits, Cell: l.Hours.Step,
		Doubtful: float64(s.site.Frame.Area(l.Doubtful)), Assumptions: []string{},
	}
	a.Assumptions = append(a.Assumptions, s.site.HeightAccount()...)
	return a
}

func (a *sunAccount) String() string {
	return fmt.Sprintf("sun h: direct sun a day, %s, above %g degrees\nfull sun from %g h, part sun from %g h, shade from %g h; near a limit: within half an hour",
		a.Season, a.MinElevation, a.Limits[0], a.Limits[1], a.Limits[2])
}
