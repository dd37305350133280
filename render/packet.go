package render

import (
	"fmt"
	"slices"
	"strings"

	"example.org/turfplat/zones"
	"example.org/turfplat/zones/lanes"
	"example.org/turfplat/zones/program"
)

// PacketOptions says how the sheets of a crew packet are drawn.
type PacketOptions struct {
	MapOptions
	Steps []string // ids of those that get sheets; none: all that are not skipped
	Sun   bool     // with the sheet of the sun
	Codes bool     // print gate codes

	// Lanes lays the lanes of a step that a spreader does; nil: none are drawn.
	// It returns those of each pass, none where there is no ground to walk.
	Lanes func(*program.StepPlan) ([]StepLanes, error)
}

// lanesOf lays the lanes of a step, pass by pass; none if none are asked for, it
// has none, or it may not be done.
func (o PacketOptions) lanesOf(step *program.StepPlan) ([]StepLanes, error) {
	if o.Lanes == nil || !step.Step.Spreadable() || step.Status.KeepsOff() {
		return nil, nil
	}
	return o.Lanes(step)
}

// StepLanes are the lanes along which a step is spread in one pass.
type StepLanes struct {
	Plan    lanes.Plan
	Summary lanes.Summary
}

// PassesOf are the passes of lanes on a yard, each with what it comes to; none
// where there is no ground to walk.
func PassesOf(plan lanes.Plan, on lanes.Yard) []StepLanes {
	var passes []StepLanes
	for n := 1; n <= plan.Passes(); n++ {
		part := plan.OfPass(n)
		if sum := part.Summary(part.Coverage(on)); sum.Lanes > 0 || sum.ByHandM2 > 0 {
			passes = append(passes, StepLanes{part, sum})
		}
	}
	return passes
}

// Packet draws what a crew takes along: the site map, the sheets of the steps in
// the order of the plan, the sheet of the sun if it is asked for, and the
// sheets of the season and of what is bought. What does not fit beside the map
// of a step stands on a sheet that follows it.
//
// A step that the plan does not have is an error that lists those it has.
func Packet(p *zones.Plat, m zones.Measurement, plan *program.Plan, o PacketOptions) ([]*Sheet, error) {
	steps, err := stepsAsked(plan, o.Steps)
	if err != nil {
		return nil, err
	}
	site, err := siteDraft(p, m, o.MapOptions)
	if err != nil {
		return nil, err
	}
	sheets, err := site.sheets()
	if err != nil {
		return nil, err
	}
	for _, number := range steps {
		drawn, err := stepSheets(site, plan, number, o)
		if err != nil {
			return nil, err
		}
		sheets = append(sheets, drawn...)
	}
	if o.Sun {
		sun, err := SunSheets(p, m, o.MapOptions)
		if err != nil {
			return nil, err
		}
		sheets = append(sheets, sun...)
	}
	rest, err := seasonSheets(site, plan)
	return append(sheets, rest...), err
}

// stepsAsked are the numbers, from 1, of the steps that get sheets.
func stepsAsked(plan *program.Plan, ids []string) ([]int, error) {
	var numbers []int
	var known []string
	for i, s := range plan.Steps {
		known = append(known, s.Step.ID)
		if len(ids) == 0 && s.Status != program.Skipped || slices.Contains(ids, s.Step.ID) {
			numbers = append(numbers, i+1)
		}
	}
	for _, id := range ids {
		if !slices.Contains(known, id) {
			return nil, fmt.Errorf("program %s has no step %q: it has %s", plan.Program.Name, id, strings.Join(known, ", "))
		}
	}
	return numbers, nil
}
