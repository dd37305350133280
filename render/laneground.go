package render

import "example.org/turfplat/zones"

// ground draws the site pale, and the lanes on it. Letters and signs take their
// places first, then numbers, then names where there is room in their ground;
// lines are drawn last, and broken at all of them. On a key map lanes would be
// one black: they are on its parts.
func (l laneMap) ground(v view) ([]Element, error) {
	if err := l.standSigns(v); err != nil {
		return nil, err
	}
	signs, labels, err := l.labelLanes(v.forLabels())
	if err != nil {
		return nil, err
	}
	var walked []Element
	if !l.isKeyMap(v) {
		if walked, err = l.lanes.ground(v); err != nil {
			return nil, err
		}
	}
	elements, err := drawLayers([]mapLayer{
		{"context", "Beyond the outline", l.context},
		{"covers", "Covers of the ground", l.paleCovers},
		{"other-turf", "Turf that lanes do not serve", l.lanes.otherGround},
		{"zones", "Edges of zones", l.paleZoneEdges},
		{"trees", "Trees", l.paleTrees},
		{"outline", "Outline of the site", l.outline},
		{"barriers", "Fences, walls and hedges", l.standingBarriers},
	}, v)
	if err != nil {
		return nil, err
	}
	return append(append(elements, walked...),
		Group{ID: "signs", Title: "Signs", Elements: signs},
		Group{ID: "labels", Title: "Labels", Elements: labels}), nil
}

// labelLanes puts letters on zones, and names on signs, covers and streets
// where they have room. None hides a short lane.
func (l laneMap) labelLanes(v view) (signs, labels []Element, err error) {
	if !l.isKeyMap(v) {
		l.lanes.takeShortLanes(v)
		defer l.giveBackShortLanes()
	}
	if labels, err = l.labelZones(v, l.letterOfZone); err != nil {
		return nil, nil, err
	}
	signs = l.signs(v)
	labels = append(labels, l.labelSigns(v)...)
	for _, label := range []func(view) ([]Element, error){l.labelNamedWithin, l.labelCovers, l.labelStreets} {
		more, err := label(v)
		if err != nil {
			return nil, nil, err
		}
		labels = append(labels, more...)
	}
	return signs, labels, nil
}

// letterOfZone is a label with the letter of a zone alone: its figures stand in
// the tables.
func (l laneMap) letterOfZone(i int) zoneLabel {
	return zoneLabel{letter: zoneLetter(l.plat.Zones[i].Letter), ground: turfTint}
}

func (d *draft) outline(v view) ([]Element, error) {
	if d.plat.Ground.Outline.Empty() {
		return nil, nil
	}
	return outlinePen(v.rim(d.plat.Ground.Outline)), nil
}

func (d *draft) standingBarriers(v view) ([]Element, error) {
	return d.barriers(v, zones.Wall, zones.Hedge, zones.Fence), nil
}
