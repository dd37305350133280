package main

import (
	"fmt"
	"slices"
	"strings"

	"github.com/urfave/cli/v2"

	"example.org/turfplat/zones"
	"example.org/turfplat/zones/lanes"
	"example.org/turfplat/zones/material"
	"example.org/turfplat/zones/program"
)

// A spreading is what is spread along lanes: on all zones, or for a step of a
// program on its zones and at its rate.
type spreading struct {
	lanes.Work
	planning *planning        // nil = no program is given
	step     string           // its id
	hopper   *material.Amount // nil = not stated
}

// spreadingFlags are the flags of a command that lays lanes, of a step of a
// program or of none.
func spreadingFlags() []cli.Flag { return laneFlags(append(stepFlags(), grassFlag())...) }

// stepFlags are those of them that mean nothing without a program.
func stepFlags() []cli.Flag {
	return planningFlags(&cli.StringFlag{Name: "step"}, &cli.StringFlag{Name: "hopper"})
}

// spreading reads the flags that say what is spread, and where.
func (o *order) spreading(c *cli.Context) (spreading, error) {
	work, err := workOf(c)
	if err != nil {
		return spreading{}, err
	}
	s := spreading{Work: work, step: c.String("step")}
	if s.hopper, err = hopperFlag(c); err != nil {
		return s, err
	}
	if !c.IsSet("program") {
		for _, f := range stepFlags() {
			if name := f.Names()[0]; c.IsSet(name) {
				return s, usageErrorf("--%s goes with a step of a program: add --program and --step", name)
			}
		}
		return s, nil
	}
	if s.step == "" {
		return s, usageErrorf("--program is given, so name the step that is spread with --step")
	}
	s.planning, err = o.planning(c)
	return s, err
}

func hopperFlag(c *cli.Context) (*material.Amount, error) {
	text := c.String("hopper")
	if text == "" {
		return nil, nil
	}
	if c.IsSet("filling") {
		return nil, usageErrorf("--hopper and --filling say the same thing: give one")
	}
	q, err := material.Parse(text)
	if err != nil {
		return nil, usageErrorf("--hopper: %w", err)
	}
	a, err := q.Amount()
	if err != nil {
		return nil, usageErrorf("--hopper: %w", err)
	}
	if !(a.Size > 0) {
		return nil, usageErrorf("--hopper %s holds nothing", text)
	}
	return &a, nil
}

// on settles what is spread on a site and where. What holds a step back is a
// problem of the site.
func (s spreading) on(site surveyed) (lanes.Work, func(zones.Zone) bool, error) {
	work := s.Work
	work.Units = site.site.Units
	if s.planning == nil {
		return work, func(zones.Zone) bool { return true }, nil
	}
	plan, problems, err := s.planning.planFor(site)
	site.site.Problems = append(site.site.Problems, problems...)
	if err != nil {
		return work, nil, err
	}
	step, err := stepToSpread(plan, s.step)
	if err != nil {
		return work, nil, err
	}
	for _, text := range heldBack(step) {
		site.site.Warn("step_held_back", fmt.Sprintf("step %s %s", s.step, text), "")
	}
	work.Load = loadOf(step.Step)
	work.Filling, err = s.filling(work)
	treats := func(z zones.Zone) bool {
		return slices.ContainsFunc(step.Zones, func(p program.ZonePlan) bool { return p.ID == z.ID && p.Treated() })
	}
	return work, treats, err
}

// loadOf is what a spreader is filled with for one pass of a step.
func loadOf(step *program.Step) *lanes.Load {
	load := &lanes.Load{Step: step.ID, Material: step.Product.Name, Passes: step.Passes}
	if rate, known := step.PassRate(); known {
		load.Rate = rate
	}
	return load
}

// filling is the ground, in square metres, that one filling of the hopper
// serves; 0 = the hopper holds all.
func (s spreading) filling(work lanes.Work) (float64, error) {
	if s.hopper == nil {
		return work.Filling, nil
	}
	if !work.Load.Known() {
		return 0, fmt.Errorf("step %s goes down by its label, and has no rate here: give --filling, the ground that one filling serves, in place of --hopper", s.step)
	}
	ground, err := work.Load.Rate.Covers(*s.hopper)
	if err != nil {
		return 0, fmt.Errorf("--hopper: step %s: %w", s.step, err)
	}
	return float64(ground), nil
}

// stepToSpread finds a step that a spreader does.
func stepToSpread(plan *program.Plan, id string) (*program.StepPlan, error) {
	i := slices.IndexFunc(plan.Steps, func(s program.StepPlan) bool { return s.Step.ID == id })
	if i < 0 {
		var ids []string
		for _, s := range plan.Steps {
			ids = append(ids, s.Step.ID)
		}
		return nil, fmt.Errorf("program %s has no step %s: it has %s", plan.Program.Name, id, strings.Join(ids, ", "))
	}
	s := &plan.Steps[i]
	switch open := slices.ContainsFunc(s.Zones, program.ZonePlan.Treated); {
	case !s.Step.Spreadable():
		return nil, fmt.Errorf("step %s is no job for a spreader: it is to %s", id, s.Step.Does)
	case s.Status == program.Skipped:
		return nil, fmt.Errorf("step %s is skipped: %s", id, s.Why)
	case !open:
		return nil, fmt.Errorf("step %s has no zone to go on: %s", id, s.Why)
	}
	return s, nil
}

// heldBack says why a step is not to be done yet.
func heldBack(s *program.StepPlan) []string {
	if s.Status != program.Waiting && s.Status != program.Blocked {
		return nil
	}
	texts := []string{fmt.Sprintf("is %s: %s", s.Status, s.Why)}
	for _, v := range s.Reasons {
		if text := v.WithZones(s); v.Severity == program.Block && !strings.Contains(s.Why, text) {
			texts = append(texts, "is held back: "+text)
		}
	}
	return texts
}
