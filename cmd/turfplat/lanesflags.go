package main

import (
	"fmt"

	"github.com/urfave/cli/v2"

	"example.org/turfplat/geo"
	"example.org/turfplat/zones/lanes"
	"example.org/turfplat/zones/material"
)

// laneFlags are the flags of commands that lay spread lanes.
func laneFlags(more ...cli.Flag) []cli.Flag {
	return append([]cli.Flag{
		&cli.StringFlag{Name: "swath"},
		&cli.StringFlag{Name: "trays", TakesFile: true},
		&cli.StringFlag{Name: "pattern", Value: "triangle"},
		&cli.StringFlag{Name: "mode", Value: string(lanes.Tight)},
		&cli.StringFlag{Name: "deflector", Value: string(lanes.Right)},
		&cli.StringFlag{Name: "filling"},
	}, more...)
}

// workIfAsked is the work of a command that lays lanes only if it is told for
// which swath; nil if it is not. The flags that say how mean nothing without.
func workIfAsked(c *cli.Context) (*lanes.Work, error) {
	if !c.IsSet("swath") && !c.IsSet("trays") {
		for _, f := range laneFlags() {
			if name := f.Names()[0]; c.IsSet(name) {
				return nil, usageErrorf("--%s says how spread lanes are laid: add --swath", name)
			}
		}
		return nil, nil
	}
	work, err := workOf(c)
	return &work, err
}

// workOf reads the flags that say what is spread, and how.
func workOf(c *cli.Context) (lanes.Work, error) {
	w := lanes.Work{Practice: lanes.CommonPractice()}
	var err error
	if w.Mode, err = lanes.ModeOf(c.String("mode")); err != nil {
		return w, usageErrorf("--mode: %w", err)
	}
	switch side := lanes.Side(c.String("deflector")); side {
	case lanes.Left, lanes.Right:
		w.Shield = side
	default:
		return w, usageErrorf("--deflector is left or right, not %q", side)
	}
	if text := c.String("filling"); text != "" {
		area, err := areaFlag(text)
		if err != nil {
			return w, usageErrorf("--filling: %w", err)
		}
		w.Filling = float64(area)
	}
	w.Pattern, err = patternOf(c)
	return w, err
}

// patternOf reads the spreader's pattern: a tray test, or a swath and a shape.
func patternOf(c *cli.Context) (lanes.Pattern, error) {
	text, file := c.String("swath"), c.String("trays")
	switch {
	case text == "" && file == "":
		return lanes.Pattern{}, usageErrorf("--swath is needed, as in --swath 10ft: the width over which a pass leaves half of what it leaves at its centre, or more")
	case text != "" && file != "":
		return lanes.Pattern{}, usageErrorf("--swath and --trays say the same thing: give one")
	case file != "":
		return measuredPattern(file)
	}
	swath, err := lengthFlag(c, "swath", 1000) // what no spreader has is told below
	if err != nil {
		return lanes.Pattern{}, err
	}
	p, err := lanes.Shaped(c.String("pattern"), float64(swath))
	if err != nil {
		return p, usageErrorf("--pattern: %w", err)
	}
	if err := lanes.CheckSwath(p); err != nil {
		return p, usageErrorf("--swath: %w", err)
	}
	return p, nil
}

func measuredPattern(file string) (lanes.Pattern, error) {
	f, err := openNamed(file)
	if err != nil {
		return lanes.Pattern{}, err
	}
	defer f.Close()
	trays, err := lanes.ReadTrays(f)
	var p lanes.Pattern
	if err == nil {
		p, err = lanes.Measured(trays)
	}
	if err == nil {
		err = lanes.CheckSwath(p)
	}
	if err != nil {
		return p, fmt.Errorf("%s: %w", file, err)
	}
	return p, nil
}

func areaFlag(text string) (geo.Area, error) {
	q, err := material.Parse(text)
	if err != nil {
		return 0, err
	}
	return q.Area()
}

const laneHelp = `    --swath L      effective swath, as in 10ft or 3m: the width between the
                   places where a pass leaves half of what it leaves at its
                   centre
    --trays FILE   a tray test in place of --swath: CSV with the columns
                   offset_ft (or offset_m) and catch, 0 on the centre line
    --pattern P    triangle (default), bell, trapezoid or drop
    --mode M       tight: half the rate, lanes half a swath apart (default);
                   single: the rate, lanes a swath apart;
                   cross: half the rate, two sets of lanes at right angles
    --deflector S  the side of the spreader that has it, right (default) or left
    --filling A    ground that one filling of the hopper serves, as in 5000ft2:
                   tells where to refill
`
