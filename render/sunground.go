package render

import (
	"slices"

	"example.org/turfplat/zones"
)

// contourLine is a black line with a white rim, to be seen on any ground.
func contourLine(lines []Line) []Element {
	return []Element{
		Path{Lines: lines, Stroke: white, Weight: 2 * heavyLine},
		Path{Lines: lines, Stroke: black, Weight: heavyLine},
	}
}

// sunZoneEdge is where zones part, lighter than contours.
func sunZoneEdge(lines []Line) []Element {
	return []Element{Path{Lines: lines, Stroke: black, Weight: thinLine, Dash: []float64{2.4, 0.8}}}
}

// ground draws the hours of the turf, and all around it that throws shade.
func (s sunMap) ground(v view) ([]Element, error) {
	return drawLayers([]mapLayer{
		{"context", "Beyond the outline", s.context},
		{"hours", "Hours of direct sun", s.hours},
		{"check-on-site", "Check on site", s.doubtBand},
		{"covers", "Other ground", s.mutedCovers},
		{"zones", "Edges of zones", s.zoneEdges},
		{"trees", "Trees", s.trees},
		{"outline", "Outline of the site", s.outline},
		{"barriers", "Fences, walls and hedges", s.standingBarriers},
		{"contours", "Contours of hours", s.contourLines},
		{"labels", "Labels", s.labelAllOfSun},
	}, v)
}

// mutedCovers draws buildings as on the site map, and all other ground that is
// no turf by its edges alone.
func (s sunMap) mutedCovers(v view) ([]Element, error) {
	return s.otherCovers(v, func(k zones.Kind, area polygon) []Element {
		if k == zones.Building {
			return append(looks[k].fill(area), looks[k].outlined(area))
		}
		return []Element{Path{Lines: area.lines(), Fill: white, Stroke: faint, Weight: hairLine}}
	})
}

// hours fills each step of the hours with its tint and its pattern.
func (s sunMap) hours(v view) ([]Element, error) {
	var elements []Element
	for _, step := range s.steps {
		shown, err := v.shown(step.region)
		if err != nil {
			return nil, err
		}
		area, look := v.area(shown), exposureLooks[step.exposure]
		elements = append(elements, Group{
			ID: "sun-" + string(step.exposure), Title: look.word + ", " + hoursOf(step.exposure, s.sun.Limits),
			Elements: []Element{Path{Lines: area.lines(), Fill: look.tint}, look.pattern.fill(area, shadeInk)},
		})
	}
	turf, err := v.shown(s.plat.Ground.Cover(zones.Turf))
	if err != nil {
		return nil, err
	}
	return append(elements, looks[zones.Turf].outlined(v.area(turf))), nil
}

// zoneEdges draws where zones part.
func (s sunMap) zoneEdges(v view) ([]Element, error) {
	lines, err := s.zoneEdgeLines(v)
	return sunZoneEdge(lines), err
}

func (s sunMap) outline(v view) ([]Element, error) {
	if s.plat.Ground.Outline.Empty() {
		return nil, nil
	}
	return outlinePen(v.rim(s.plat.Ground.Outline)), nil
}

func (s sunMap) standingBarriers(v view) ([]Element, error) {
	return s.barriers(v, zones.Wall, zones.Hedge, zones.Fence), nil
}

// contourLines draws the contours of all limits.
func (s sunMap) contourLines(v view) ([]Element, error) {
	var elements []Element
	for _, c := range s.contours {
		elements = append(elements, contourLine(v.lines(c.Lines, s.plat.Ground.Cover(zones.Turf)))...)
	}
	return elements, nil
}

// labelAllOfSun puts letters and hours on zones, hours on contours, heights on
// what throws shade, and names on streets, in this order.
func (s sunMap) labelAllOfSun(v view) ([]Element, error) {
	v = v.forLabels()
	elements, err := s.labelZones(v, s.hoursOfZone)
	if err != nil {
		return nil, err
	}
	elements = append(elements, s.labelContours(v)...)
	heights, err := s.labelHeights(v)
	if err != nil {
		return nil, err
	}
	streets, err := s.labelStreets(v)
	return slices.Concat(elements, heights, streets), err
}

// hoursOfZone is a label with the letter of a zone and its hours.
func (s sunMap) hoursOfZone(i int) zoneLabel {
	z := s.plat.Zones[i]
	l := zoneLabel{letter: zoneLetter(z.Letter), ground: white}
	if z.Sun.Known {
		l.ground = exposureLooks[s.sun.Limits.Exposure(z.Sun.Hours)].tint
		l.figures = []Text{{String: hoursText(z.Sun.Hours) + " h", Size: mapSize, Ink: black}}
	}
	return l
}

// labelContours writes the hours of each contour on it.
func (s sunMap) labelContours(v view) []Element {
	var elements []Element
	for _, c := range s.contours {
		label := stacked(Text{String: hoursLabel(c.Hours), Face: Bold, Size: mapSize, Ink: black})
		for _, line := range v.lines(c.Lines, s.plat.Ground.Cover(zones.Turf)) {
			elements = append(elements, s.labelLine(line, label, v)...)
		}
	}
	return elements
}
