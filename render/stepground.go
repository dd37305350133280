package render

import (
	"slices"

	"example.org/turfplat/zones"
	"example.org/turfplat/zones/program"
)

var (
	// idle is turf that a step leaves alone: wide slanted lines, so that worked
	// zones, which are clear, stand out.
	idle     = pattern{rulings: []ruling{{angle: 45, spacing: 2.4}}, weight: hairLine}
	idleInk  = black.tint(0.4)
	workTint = bluishGreen.tint(0.16)
)

// ground draws the zones of the step clear and bold on muted ground. Signs and
// labels take their places first.
func (s stepSheet) ground(v view) ([]Element, error) {
	if err := s.standSigns(v); err != nil {
		return nil, err
	}
	if s.lanes != nil {
		return s.groundWithLanes(v)
	}
	signs, labels, err := s.labelStep(v.forLabels())
	if err != nil {
		return nil, err
	}
	elements, err := drawLayers(s.lowerLayers(s.trees), v)
	return append(elements,
		Group{ID: "signs", Title: "Signs", Elements: signs},
		Group{ID: "labels", Title: "Labels", Elements: labels}), err
}

// lowerLayers are the ground of the site, with trees drawn in one way or the
// other.
func (s stepSheet) lowerLayers(trees func(view) ([]Element, error)) []mapLayer {
	return []mapLayer{
		{"context", "Beyond the outline", s.context},
		{"covers", "Other ground", s.mutedCovers},
		{"zones", "Zones", s.stepZones},
		{"trees", "Trees", trees},
		{"outline", "Outline of the site", s.outline},
		{"barriers", "Fences, walls and hedges", s.standingBarriers},
	}
}

// mutedLook is the look of ground that is only there to find one's way: its
// pattern stays, its colours go. Paving is blank.
func mutedLook(k zones.Kind) look {
	l := looks[k]
	switch k {
	case zones.Building, zones.Water, zones.Pool:
		return l // seen at once
	}
	if k == zones.Hardscape {
		l.pattern = pattern{}
	}
	l.tint, l.ink, l.edge, l.weight = white, faint, faint, thinLine
	return l
}

func (s stepSheet) mutedCovers(v view) ([]Element, error) {
	return s.otherCovers(v, func(k zones.Kind, area polygon) []Element {
		l := mutedLook(k)
		return append(l.fill(area), l.outlined(area))
	})
}

// stepZones draws what is worked clear, with a heavy edge, over what is left
// alone.
func (s stepSheet) stepZones(v view) ([]Element, error) {
	var alone, worked []Element
	for _, z := range s.plat.Zones {
		shown, err := v.shown(z.Region)
		if err != nil {
			return nil, err
		}
		area := v.area(shown)
		g := Group{ID: "zone-" + z.Letter, Title: "Zone " + z.Letter + ", " + s.letters.of(z.Name)}
		if done, there := s.done[z.ID]; there {
			g.Elements = workedZone(area, v.rim(z.Region))
			if done.HeldBack() {
				g.Title += ", " + notYet
				g.Elements = append(g.Elements, idle.fill(area, idleInk))
			}
			worked = append(worked, g)
			continue
		}
		g.Title += ", left alone"
		g.Elements = idleZone(z, area, v.rim(z.Region))
		alone = append(alone, g)
	}
	return append(alone, worked...), nil
}

func workedZone(area polygon, rim []Line) []Element {
	return []Element{Path{Lines: area.lines(), Fill: workTint}, Path{Lines: rim, Stroke: accent, Weight: broadLine}}
}

func idleZone(z zones.Zone, area polygon, rim []Line) []Element {
	pattern, ink := idle, idleInk
	if !z.Apply {
		pattern, ink = barred, warning
	}
	return []Element{Path{Lines: area.lines(), Fill: white}, pattern.fill(area, ink), Path{Lines: rim, Stroke: ink, Weight: thinLine}}
}

// labelStep puts letters and amounts on zones, then names on signs, covers and
// streets where there is room.
func (s stepSheet) labelStep(v view) (signs, labels []Element, err error) {
	if labels, err = s.labelZones(v, s.stepZoneLabel); err != nil {
		return nil, nil, err
	}
	signs = s.signs(v)
	labels = append(labels, s.labelSigns(v)...)
	for _, label := range []func(view) ([]Element, error){s.labelMuted, s.labelStreets} {
		more, err := label(v)
		if err != nil {
			return nil, nil, err
		}
		labels = append(labels, more...)
	}
	return signs, labels, nil
}

func (s stepSheet) labelMuted(v view) ([]Element, error) { return s.labelNames(v, true, mutedLook) }

// stepZoneLabel has the letter, what goes on the zone and its area; a zone left
// alone has its letter in grey.
func (s stepSheet) stepZoneLabel(i int) zoneLabel {
	z := s.measured.Zones[i]
	l := zoneLabel{letter: zoneLetter(z.Letter), ground: white}
	done, there := s.done[z.ID]
	if !there {
		l.letter.Ink = grey
		return l
	}
	l.ground = workTint
	add := func(face Face, text string) {
		if text != "" {
			l.figures = append(l.figures, Text{String: text, Face: face, Size: mapSize, Ink: black})
		}
	}
	if s.step.Step.Does == program.Mow {
		if height, _, ok := s.step.Step.CutAt(done.Ground); ok {
			add(Bold, s.amounts.Height(height))
		}
	}
	if done.HeldBack() {
		add(Bold, notYet)
	}
	add(Bold, s.amountText(done))
	add(Regular, s.areaText(z))
	return l
}

// legend explains what one must tell apart to work; all else on the map has its
// name, and its sign in the key of the site map.
func (s stepSheet) legend() block {
	l := legend{size: stepSize}
	add := func(there bool, text string, sample func(rect) []Element) {
		if there {
			l.entries = append(l.entries, legendEntry{sample, text})
		}
	}
	some := func(wanted func(zones.Zone) bool) bool { return slices.ContainsFunc(s.plat.Zones, wanted) }
	worked := func(z zones.Zone) bool { _, there := s.done[z.ID]; return there }
	add(some(worked), "Worked in this step", func(box rect) []Element { return workedZone(box.polygon(), box.polygon().lines()) })
	add(s.heldLetters() != "", "Of this step, "+notYet, idle.swatch(workTint, idleInk, accent, broadLine))
	add(some(func(z zones.Zone) bool { return !worked(z) && z.Apply }), "Left alone", idle.swatch(white, idleInk, idleInk, thinLine))
	add(some(func(z zones.Zone) bool { return !worked(z) && !z.Apply }), capitalized(noApplication), barred.swatch(white, warning, warning, mediumLine))
	s.legendOfLanes(add)
	for _, kind := range []zones.Kind{zones.Bed, zones.Water, zones.Pool} {
		add(!s.plat.Ground.Cover(kind).Empty(), looks[kind].word, mutedLook(kind).swatch())
	}
	for _, sign := range signs {
		add(sign.kind != zones.Hazard && s.has(sign.kind, anyObject), sign.word, func(box rect) []Element { return []Element{sign.draw(box.center(), signHeight)} })
	}
	return l
}
