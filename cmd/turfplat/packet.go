package main

import (
	"fmt"

	"github.com/urfave/cli/v2"

	"example.org/turfplat/render"
	"example.org/turfplat/zones"
	"example.org/turfplat/zones/lanes"
	"example.org/turfplat/zones/program"
)

// packetFlags are the flags that make a packet of a map.
func packetFlags(more ...cli.Flag) []cli.Flag {
	return planningFlags(append([]cli.Flag{
		&cli.StringSliceFlag{Name: "step"},
		&cli.BoolFlag{Name: "with-codes"},
	}, more...)...)
}

// A packet is which sheets of a plan are drawn with a map; none without a
// planning.
type packet struct {
	*planning
	steps []string
	codes bool
}

// packet reads the flags of packets. They mean nothing without a program.
func (o *order) packet(c *cli.Context) (packet, error) {
	if !c.IsSet("program") {
		return packet{}, refuseIdle(c, "no program is given: add --program", "step", "with-codes", "soil", "columns", "station", "on", "year")
	}
	planning, err := o.planning(c)
	return packet{planning, c.StringSlice("step"), c.Bool("with-codes")}, err
}

// sheets lays the program on a site and draws its packet.
func (p packet) sheets(s surveyed, spread *lanes.Work) sheetmaker {
	return func(plat *zones.Plat, m zones.Measurement, options render.MapOptions) ([]*render.Sheet, error) {
		plan, how, err := p.laid(s, options, spread)
		if err != nil {
			return nil, err
		}
		return render.Packet(plat, m, plan, how)
	}
}

// laid lays the program on a site, and says how its packet is drawn.
func (p packet) laid(s surveyed, options render.MapOptions, spread *lanes.Work) (*program.Plan, render.PacketOptions, error) {
	plan, err := p.planOn(s)
	return plan, render.PacketOptions{
		MapOptions: options, Steps: p.steps, Sun: p.reading.Sun != nil, Codes: p.codes, Lanes: p.lanes(s, plan, spread),
	}, err
}

// lanes lays the lanes of steps for which a spreader is walked; nil if nobody
// told for which swath.
func (p packet) lanes(s surveyed, plan *program.Plan, spread *lanes.Work) func(*program.StepPlan) ([]render.StepLanes, error) {
	if spread == nil {
		return nil
	}
	return func(step *program.StepPlan) ([]render.StepLanes, error) {
		work := *spread
		work.Units, work.Load = s.site.Units, loadOf(step.Step)
		if work.Filling == 0 {
			work.Filling = fillingOf(plan.Program, step.Step)
		}
		before := len(s.site.Problems)
		laid, yard, err := layOn(s, work, workedIn(plan, step))
		if err != nil {
			return nil, fmt.Errorf("step %s: %w", step.Step.ID, err)
		}
		for _, problem := range s.site.Problems[before:] {
			problem.Text = fmt.Sprintf("step %s: %s", step.Step.ID, problem.Text)
			p.tellProblem(problem)
		}
		return render.PassesOf(laid, yard), nil
	}
}

// workedIn tells on which zones a step is done.
func workedIn(plan *program.Plan, step *program.StepPlan) func(zones.Zone) bool {
	worked := make(map[string]bool)
	for _, z := range step.Zones {
		worked[z.ID] = z.Treated() && !z.HeldBack()
	}
	return func(z zones.Zone) bool { return worked[z.ID] }
}

// fillingOf is the ground that one filling of the user's own spreader serves in
// one pass, in square metres; 0 = not known.
func fillingOf(p *program.Program, step *program.Step) float64 {
	rate, known := step.PassRate()
	if !known {
		return 0
	}
	for _, setting := range p.Settings(step, 1) {
		if ground, err := rate.Covers(setting.Hopper); err == nil && ground > 0 {
			return float64(ground)
		}
	}
	return 0
}
