package main

import (
	"io"

	"github.com/urfave/cli/v2"

	"example.org/turfplat/zones/program"
)

func planCommand(d *desk) *cli.Command {
	return &cli.Command{
		Name:               "plan",
		CustomHelpTemplate: planHelp,
		OnUsageError:       onUsageError,
		Flags:              readingFlags(planningFlags(sunFlags(outputFlag(), grassFlag(), &cli.StringFlag{Name: "format"}, &cli.BoolFlag{Name: "schema"})...)...),
		Action: func(c *cli.Context) error {
			if c.Bool("schema") {
				_, err := io.WriteString(d.out, program.FileSchema)
				return err
			}
			o, err := d.planOrder(c)
			if err != nil {
				return err
			}
			return o.write(func(w io.Writer) error { return o.plan(w) })
		},
	}
}

// A planOrder is what plan was asked to do.
type planOrder struct {
	*planning
	print planPrinter
}

func (d *desk) planOrder(c *cli.Context) (*planOrder, error) {
	shared, err := d.order(c)
	if err != nil {
		return nil, err
	}
	if err := shared.readSun(c); err != nil {
		return nil, err
	}
	o := new(planOrder)
	if o.print, err = planPrinterOf(c.String("format"), shared.json); err != nil {
		return nil, err
	}
	o.planning, err = shared.planning(c)
	return o, err
}

// plan lays the program on the site, or on several that a truck serves on one
// day.
func (o *planOrder) plan(w io.Writer) error {
	var plans []*program.Plan
	err := o.each(func(s surveyed) error {
		p, err := o.planOn(s)
		plans = append(plans, p)
		return err
	})
	o.told.sum("")
	if err != nil {
		return err
	}
	return o.print(w, plans)
}

const planHelp = `turfplat plan lays a season's program on the zones of a site.

Usage:
    turfplat plan --program FILE|cool|warm [flags] [FILE ...]

It tells what to do when, where, with how much, what to buy, and what must not
meet and until when. A step is ready, waiting, blocked or skipped on the day of
the plan: that of --on, else that of the log's last reading. Without either,
only dates are told. Soil opens and closes the windows that hang on it; what
the log says decides, to the reading.

No rate of a pesticide is built in: it comes from the label. A step without a
rate shows "by label". South of the equator, windows shift by six months.

Rates and carriers are those of one pass; READY NOW, the load and purchases are
for all passes. On a step with every, done: [DAY, ...] notes the visits that
were done, and the next one falls due so long after the last. What was done in
a season before does not stand for this one's step, but waits go by it too.

With --sun zones are divided by their hours of direct sun first, as map and zone
divide them; without, an exposure is what the zones state.

Of several sites each gets its page, and the truck a list of what to load for
all that is ready on them; in JSON they are one document.

Flags:
    --program P    cool, warm, or a program file (YAML); --schema describes it
` + planningHelp + sunHelp + grassHelp + `    --format F     text, json, csv (the task list) or ics (a calendar)
    --schema       print the JSON Schema of program files, and do nothing else
` + readingHelp + textOutHelp + `
Examples:
    $ turfplat plan --program cool yard.geojson
    $ turfplat plan --program season.yaml --soil soil.csv yard.geojson
`
