package zones

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"example.org/turfplat/geo"
	"example.org/turfplat/geo/ingest"
	"example.org/turfplat/zones/sun"
	"example.org/turfplat/zones/turf"
)

// A SunRequest asks for turf to be divided by its hours of direct sun.
type SunRequest struct {
	Season       func(latitude float64) sun.Season // nil = that of the grasses that are stated, else the cool one
	Limits       sun.Limits                        // of exposure
	ByGrass      bool                              // divide zones where their grass has enough sun and too little, those of no known grass by exposure
	MinElevation sun.Degrees
}

// Sunlight is the direct sun that a site's turf gets.
type Sunlight struct {
	Scene    sun.Scene
	Season   sun.Season
	Limits   sun.Limits // of exposure
	ByGrass  bool       // zones are divided by what their grass needs
	Hours    *sun.Field // a day, mean over the season
	Doubtful geo.Region // so near a limit that zones were divided by that it is to be checked on site
}

// mostCells is the largest grid of hours that is worked out: 2 km by 2 km.
const mostCells = 4 << 20

// sunlight works out the hours of direct sun on the turf of zones. It returns
// nil if the turf is too large for that, which is told.
func (s *Site) sunlight(turf geo.Region, zones []Zone) (*Sunlight, error) {
	grid := sun.GridOver(turf.Bounds(), sun.StepFor(s.Frame.Area(turf)))
	if grid.Cells() > mostCells {
		s.problem(ingest.Refusal, "sun_large", s.place(),
			fmt.Sprintf("turf spread over %.1f km by %.1f km is too much for hours of sun", turf.Bounds().Width()/1000, turf.Bounds().Height()/1000),
			"draw an outline round the part that is looked after, or run without --sun")
		return nil, nil
	}
	l := &Sunlight{Season: s.season(zones), Limits: s.sun.Limits, ByGrass: s.sun.ByGrass}
	l.Scene = sun.Scene{Place: s.Frame.Center(), Obstacles: s.Obstacles(), Slopes: slopes(zones), MinElevation: s.sun.MinElevation}
	l.Hours = l.Scene.Hours(grid, turf, l.Season)
	var err error
	l.Doubtful, err = s.doubtful(l, turf, zones)
	if account := s.HeightAccount(); len(account) > 0 {
		s.problem(ingest.Note, "height_assumed", s.place(), "sun and shade rest on assumptions: "+strings.Join(account, "; "), "give height_m, and crown_m of trees, where it matters")
	}
	return l, err
}

// season is the one asked for, else that of the grasses stated: the warm one
// if all of them are warm-season grasses.
func (s *Site) season(zones []Zone) sun.Season {
	latitude := s.Frame.Center().Lat()
	if s.sun.Season != nil {
		return s.sun.Season(latitude)
	}
	warm, others := 0, 0
	for _, z := range zones {
		if grass, known := s.grasses.Find(z.Species); known && grass.Season == turf.Warm {
			warm++
		} else if known {
			others++
		}
	}
	if warm > 0 && others == 0 {
		return sun.Warm(latitude)
	}
	return sun.Cool(latitude)
}

// slopes are the zones of which it is known how steep they are and which way
// they face.
func slopes(zones []Zone) []sun.Slope {
	var slopes []sun.Slope
	for _, z := range zones {
		if z.Slope > 0 && z.Aspect != nil {
			slopes = append(slopes, sun.Slope{Ground: z.Region, Rise: z.Slope / 100, Aspect: sun.Degrees(math.Mod(*z.Aspect, fullTurn))})
		}
	}
	return slopes
}

// byLight divides the zones by their sun, if that is asked for.
func (d *division) byLight() (*Sunlight, error) {
	if d.site.sun == nil || d.turf.Empty() {
		return nil, nil
	}
	l, err := d.site.sunlight(d.turf, d.zones)
	if l == nil || err != nil {
		return nil, err
	}
	if l.ByGrass {
		d.tellGrassless()
	}
	if err := d.expose(l); err != nil {
		return nil, err
	}
	d.tellUnsuited()
	return l, nil
}

// lightWritten notes the sun that zones of an earlier division get, which stay
// as they were written.
func (d *division) lightWritten() (*Sunlight, error) {
	if d.site.sun == nil || d.turf.Empty() {
		return nil, nil
	}
	l, err := d.site.sunlight(d.turf, d.zones)
	if l == nil || err != nil {
		return nil, err
	}
	for _, z := range slices.Clone(d.zones) {
		d.light(z, l)
	}
	return l, nil
}
