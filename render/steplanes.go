package render

import "slices"

// settingShare is the part of the rate that a spreader is set to: less than all
// of it where lanes overlap.
func (s stepSheet) settingShare() float64 {
	if s.lanes == nil || s.lanes.sum.Lanes == 0 {
		return 1
	}
	return s.lanes.sum.SettingShare
}

// laneFillings says with how much the hopper is filled before which lanes.
func (s stepSheet) laneFillings() block {
	fills, ok := s.lanes.fillTable(len(s.lanes.plan.Fills)).(table)
	if !ok {
		return nil
	}
	return s.larger(fills)
}

// walkTable says how the lanes are walked.
func (s stepSheet) walkTable() block {
	if s.lanes == nil {
		return nil
	}
	t := s.larger(s.lanes.workTable())
	t.rows = slices.DeleteFunc(t.rows, func(row []string) bool { // the other tables tell
		return slices.Contains([]string{"Step", "Material", "Needed", "Refill", "Passes"}, row[0])
	})
	return t
}

// laneTable lists all lanes in walking order.
func (s stepSheet) laneTable() block {
	if s.lanes == nil || len(s.lanes.spreading()) == 0 {
		return nil
	}
	return s.larger(s.lanes.laneTable(len(s.lanes.spreading())))
}

// larger is a table in the letters of a step's sheet, with room for its heads.
func (s stepSheet) larger(t table) table {
	t.size = stepSize
	t.columns = slices.Clone(t.columns)
	for i, c := range t.columns {
		if c.width > 0 {
			t.columns[i].width = max(c.width, t.headWidth(i, whole))
		}
	}
	return t
}

// groundWithLanes draws the lanes of the step over its zones.
func (s stepSheet) groundWithLanes(v view) ([]Element, error) {
	walked, signs, labels, err := s.lanesAndLabels(v)
	if err != nil {
		return nil, err
	}
	layers := append(s.lowerLayers(s.paleTrees), mapLayer{"by-hand", "To be done by hand", s.byHand})
	elements, err := drawLayers(layers, v)
	if err != nil {
		return nil, err
	}
	return append(append(elements, walked...),
		Group{ID: "signs", Title: "Signs", Elements: signs},
		Group{ID: "labels", Title: "Labels", Elements: labels}), nil
}

// lanesAndLabels draws the lanes of the step, its signs and its labels. Labels
// take their places first: lines are broken at them. On a key map lanes would be
// one black.
func (s stepSheet) lanesAndLabels(v view) (walked, signs, labels []Element, err error) {
	if !s.isKeyMap(v) {
		s.lanes.takeShortLanes(v)
	}
	signs, labels, err = s.labelStep(v.forLabels())
	s.giveBackShortLanes()
	if err == nil && !s.isKeyMap(v) {
		walked, err = s.lanes.ground(v)
	}
	return walked, signs, labels, err
}

// byHand hatches what is too narrow for lanes.
func (s stepSheet) byHand(v view) ([]Element, error) {
	var elements []Element
	for _, hand := range s.lanes.plan.Hand {
		shown, err := v.shown(hand)
		if err != nil {
			return nil, err
		}
		elements = append(elements, byHand(v.area(shown))...)
	}
	return elements, nil
}

// legendOfLanes explains the lines of lanes.
func (s stepSheet) legendOfLanes(add func(bool, string, func(rect) []Element)) {
	if s.lanes == nil {
		return
	}
	known := map[string]bool{capitalized(noApplication): true, "Not treated this time": true} // as left alone
	s.lanes.keys(func(there bool, text string, sample func(rect) []Element) {
		add(there && !known[text], text, sample)
	})
}
