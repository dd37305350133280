package program

// judgeRain warns of grains that rain washes down a slope.
func (pl *planner) judgeRain(s *StepPlan) {
	if !isGranular(s.Step) || pl.has(s, RainForecast) {
		return
	}
	if steep := steeperThan("slope_granular", s.grounds()); len(steep) > 0 {
		s.add(verdict("slope_granular", steep, "steeper than 15 degrees: not when more than %s of rain is forecast", pl.figures().Prose("0.5 in")))
	}
}

// judgeFooting names the zones that are too steep to ride on, and those that
// are too steep for wheels at all.
func (pl *planner) judgeFooting(s *StepPlan) {
	if s.Step.Does == Scout || s.Step.Does == Water {
		return
	}
	walk, hand := "walk along the slope", "by hand only, from firm footing"
	if isMow(s.Step) {
		walk, hand = "mow on foot, across the slope", "by hand or trimmer, from firm footing, or left long"
	}
	steep := steeperThan("slope_walk", s.grounds())
	steepest := steeperThan("slope_hand", steep)
	if len(steepest) > 0 {
		s.add(verdict("slope_hand", steepest, "steeper than 20 degrees: no wheeled machine; %s", hand))
	}
	if on := without(steep, steepest); len(on) > 0 {
		s.add(verdict("slope_walk", on, "steeper than 15 degrees: no riding machine; %s, dry, and only as far as the machine's manual allows", walk))
	}
}

// steeperThan are the zones steeper than a rule's figure.
func steeperThan(name string, on []Ground) []Ground {
	var steep []Ground
	for _, g := range on {
		if g.SlopePercent > 100*rules[name].figure.SI() {
			steep = append(steep, g)
		}
	}
	return steep
}

// without are the zones of a list that are not in another one.
func without(list, others []Ground) []Ground {
	var left []Ground
	for _, g := range list {
		if !among(others, g.ID) {
			left = append(left, g)
		}
	}
	return left
}
