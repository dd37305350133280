package render

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"example.org/turfplat/zones"
	"example.org/turfplat/zones/sun"
	"example.org/turfplat/zones/turf"
)

// hoursTable lists the zones with the hours they get, and how much of each is
// to be checked on site.
func (s sunMap) hoursTable(level detail) table {
	t := table{size: tableSize, columns: []column{
		{head: "Zone", width: letterColumn}, {wrap: true}, {head: "Sun h/day", anchor: End}, {head: "Check", anchor: End},
	}}
	kept := s.keptZones(level.zones, s.shadedFirst)
	for i, z := range s.plat.Zones {
		if !slices.Contains(kept, i) {
			continue
		}
		hours, check := "", ""
		if z.Sun.Known {
			hours = hoursText(z.Sun.Hours)
			check = share(z.Sun.Doubtful, 1)
		}
		t.rows = append(t.rows, []string{z.Letter, s.exposureText(i, level.told), hours, check})
	}
	if left := len(s.plat.Zones) - len(kept); left > 0 {
		where := "use larger paper"
		if level.later > 0 {
			where = "next sheet"
		}
		t.rows = append(t.rows, []string{"", fmt.Sprintf("%d more: %s", left, where)})
	}
	if len(s.plat.Zones) > 1 {
		hours, doubtful := s.sun.Hours.Mean(s.plat.Ground.Cover(zones.Turf), s.sun.Limits)
		if !math.IsNaN(hours) {
			t.totals = [][]string{{"", "All turf", hoursText(hours), share(doubtful, 1)}}
		}
	}
	return t
}

// shadedFirst puts zones first whose grass gets too little sun, and then those
// that get least.
func (s sunMap) shadedFirst(a, b int) int {
	rank := func(i int) float64 {
		switch z := s.plat.Zones[i]; {
		case !z.Sun.Known:
			return math.Inf(1)
		case z.Sun.Fit == turf.Fails:
			return z.Sun.Hours - 24
		default:
			return z.Sun.Hours
		}
	}
	return cmp.Compare(rank(a), rank(b))
}

// exposureText names a zone and what is known of it, and tells if its hours
// speak against the exposure that was stated.
func (s sunMap) exposureText(zone int, told telling) string {
	z := s.plat.Zones[zone]
	text := s.zoneText(s.measured.Zones[zone], told)
	found := s.sun.Limits.Exposure(z.Sun.Hours)
	if !z.Apply || !z.Sun.Known || z.Exposure == string(found) {
		return text
	}
	return text + "; by its hours " + exposures[string(found)]
}

// groundsTable says on what the hours rest.
func (s sunMap) groundsTable() table {
	t := table{size: tableSize, columns: []column{{head: "Hours rest on"}, {wrap: true}}}
	add := func(what, text string) { t.rows = append(t.rows, []string{what, text}) }
	add("Season", s.sun.Season.String()+", mean of its days")
	add("Sun counts", fmt.Sprintf("from %g° above the horizon, under a clear sky", s.sun.Scene.MinElevation))
	add("Shade from", s.shadeText())
	if s.hasDeciduous() {
		from, to := sun.FullLeaf(s.sun.Scene.Place.Lat())
		add("Leaves", fmt.Sprintf("all out from %s to %s, coming and going in 3 weeks", from, to))
	}
	add("Ground", s.slopeText())
	s.addNeeds(add)
	add("Cells", fmt.Sprintf("%g m wide", s.sun.Hours.Step))
	return t
}

// addNeeds tells by which hours the grasses on the site are judged, and whether
// zones are divided by them.
func (s sunMap) addNeeds(add func(what, text string)) {
	for _, n := range s.plat.SunNeeds() {
		var parts []string
		if n.Enough != nil {
			parts = append(parts, fmt.Sprintf("enough sun from %g h", *n.Enough))
		}
		if n.Least != nil {
			parts = append(parts, fmt.Sprintf("too little under %g h", *n.Least))
		}
		add("Grass", s.letters.of(n.Grass)+": "+strings.Join(parts, ", "))
	}
	if s.sun.ByGrass {
		add("Zones", "divided at those hours of their grass, those of no known grass by exposure; near a limit: within half an hour")
	}
}

// shadeText counts what throws shade, and says which heights are not known.
func (s sunMap) shadeText() string {
	if len(s.obstacles) == 0 {
		return "nothing: no height is known"
	}
	text := fmt.Sprintf("%d objects", len(s.obstacles))
	if len(s.obstacles) == 1 {
		text = "1 object"
	}
	account := s.plat.Site.HeightAccount()
	if len(account) == 0 {
		return text + ", their heights stated or tagged"
	}
	return text + ": " + strings.Join(account, "; ")
}

func (s sunMap) hasDeciduous() bool {
	for _, o := range s.sun.Scene.Obstacles {
		if o.Pass.InLeaf != o.Pass.Bare {
			return true
		}
	}
	return false
}

func (s sunMap) slopeText() string {
	switch n := len(s.sun.Scene.Slopes); n {
	case 0:
		return "taken as level"
	case 1:
		return "level but for 1 zone with a slope and the way it faces"
	default:
		return fmt.Sprintf("level but for %d zones with a slope and the way they face", n)
	}
}

// legend lists what the map of the sun shows.
func (s sunMap) legend() legend {
	var l legend
	add := func(there bool, text string, sample func(rect) []Element) {
		if there {
			l.entries = append(l.entries, legendEntry{sample, text})
		}
	}
	for _, step := range s.steps {
		look := exposureLooks[step.exposure]
		add(true, look.word+", "+hoursOf(step.exposure, s.sun.Limits), look.pattern.swatch(look.tint, shadeInk, black, thinLine))
	}
	for _, c := range s.contours {
		if len(c.Lines) > 0 {
			add(true, s.contourWords(), lineSample(contourLine))
			break
		}
	}
	add(!s.doubtful().Empty(), s.doubtWords(), doubt.swatch(white, doubtInk, black, thinLine))
	add(len(s.plat.Zones) > 1, "Zone edge", lineSample(sunZoneEdge))
	add(!s.plat.Ground.Cover(zones.Building).Empty(), looks[zones.Building].word, looks[zones.Building].swatch())
	add(!s.plat.Ground.Outline.Empty(), "Site outline", lineSample(outlinePen))
	s.legendOfObstacles(add)
	add(len(s.obstacles) > 0, "Height of what throws shade", s.heightSample(false))
	add(s.assumes(), "Height assumed", s.heightSample(true))
	return l
}

// doubtWords tells what is to be checked on site.
func (s sunMap) doubtWords() string {
	if s.sun.ByGrass {
		return "Near a limit of its grass: check"
	}
	return "Within half an hour of a limit: check"
}

// contourWords tells what contours are drawn at: the steps of the sheet, which
// zones may be divided by or not.
func (s sunMap) contourWords() string {
	if s.sun.ByGrass {
		return "Contour of exposure, hours a day"
	}
	return "Contour at a limit, hours a day"
}

// hoursOf tells the hours of an exposure.
func hoursOf(e sun.Exposure, l sun.Limits) string {
	switch e {
	case sun.FullSun:
		return fmt.Sprintf("%g h and more", l[0])
	case sun.PartSun:
		return fmt.Sprintf("%g to %g h", l[1], l[0])
	case sun.FullShade:
		return fmt.Sprintf("%g to %g h", l[2], l[1])
	}
	return fmt.Sprintf("under %g h", l[2])
}
