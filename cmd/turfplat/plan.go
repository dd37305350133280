package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"time"

	"github.com/urfave/cli/v2"

	"example.org/turfplat/zones/program"
	"example.org/turfplat/zones/soil"
)

func planCommand(d *desk) *cli.Command {
	return &cli.Command{
		Name:               "plan",
		CustomHelpTemplate: planHelp,
		OnUsageError:       onUsageError,
		Flags: readingFlags(outputFlag(),
			&cli.StringFlag{Name: "program"}, &cli.StringFlag{Name: "soil"}, &cli.StringFlag{Name: "columns"}, &cli.StringFlag{Name: "station"},
			&cli.StringFlag{Name: "on"}, &cli.IntFlag{Name: "year"}, &cli.StringFlag{Name: "format"}, &cli.BoolFlag{Name: "schema"}),
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
	*order
	program *program.Program
	soil    string // file of the log; "" = none
	columns soil.Columns
	station string
	day     time.Time // zero = not stated
	year    int       // 0 = not stated
	print   planPrinter
}

// planOrder reads the flags of plan, and the program.
func (d *desk) planOrder(c *cli.Context) (*planOrder, error) {
	shared, err := d.order(c)
	if err != nil {
		return nil, err
	}
	o := &planOrder{order: shared, soil: c.String("soil"), station: c.String("station"), year: c.Int("year")}
	if err := o.readDay(c.String("on")); err != nil {
		return nil, err
	}
	if c.IsSet("year") && (o.year < 1 || o.year > 9998) {
		return nil, usageErrorf("--year %d is no year", o.year)
	}
	if o.soil == "" && (o.station != "" || c.IsSet("columns")) {
		return nil, usageErrorf("--station and --columns say how a log is read: name it with --soil")
	}
	if c.IsSet("columns") {
		if o.columns, err = soil.ParseColumns(c.String("columns")); err != nil {
			return nil, usageErrorf("--columns: %w", err)
		}
	}
	if o.print, err = planPrinterOf(c.String("format"), o.json); err != nil {
		return nil, err
	}
	o.program, err = o.readProgram(c.String("program"))
	return o, err
}

func (o *planOrder) readDay(text string) error {
	if text == "" {
		return nil
	}
	day, err := time.Parse(time.DateOnly, text)
	if err != nil {
		return usageErrorf("--on is a day such as 2026-04-06, not %q", text)
	}
	o.day = day
	return nil
}

// readProgram reads a program file, or takes a built-in one.
func (o *planOrder) readProgram(name string) (*program.Program, error) {
	if name == "" {
		return nil, usageErrorf("no program given: --program cool, warm, or a file of your own")
	}
	if p, ok := program.BuiltIn(name); ok {
		return p, nil
	}
	f, err := os.Open(name)
	if err != nil {
		if errors.Is(err, os.ErrNotExist) {
			return nil, fmt.Errorf("there is no program %s: it is cool, warm, or a file of your own", name)
		}
		return nil, err
	}
	defer f.Close()
	p, problems := program.Read(f, name)
	if o.tellAll(problems); p == nil {
		return nil, errRefused
	}
	return p, nil
}

// plan lays the program on the site, or on several that a truck serves on one
// day.
func (o *planOrder) plan(w io.Writer) error {
	var plans []*program.Plan
	err := o.each(func(s surveyed) error {
		occasion, err := o.occasion(s.measure.Center.Lon())
		if err != nil {
			return err
		}
		p, err := o.program.Plan(program.Property{
			ID: s.measure.ID, Name: s.measure.Name, Latitude: s.measure.Center.Lat(),
			Units: s.site.Units, Region: s.site.Region(), Zones: s.measure.Zones,
		}, occasion)
		if err != nil {
			return err
		}
		o.tellProblems(p.Problems)
		plans = append(plans, p)
		return nil
	})
	if err != nil {
		return err
	}
	return o.print(w, plans)
}

// occasion finds the day of the plan, its year and its log.
func (o *planOrder) occasion(longitude float64) (program.Occasion, error) {
	occasion := program.Occasion{Today: o.day, Year: o.year}
	if o.soil != "" {
		station, err := o.readSoil(longitude)
		if err != nil {
			return occasion, err
		}
		occasion.Soil = station
		if occasion.Today.IsZero() {
			occasion.Today = station.Last()
		}
	}
	if occasion.Year == 0 && occasion.Today.IsZero() {
		occasion.Year = o.now().Year() // the only clock there is
	}
	return occasion, nil
}

// readSoil reads the log and finds the station in it.
func (o *planOrder) readSoil(longitude float64) (*soil.Station, error) {
	f, err := os.Open(o.soil)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	log, problems := soil.ReadLog(f, o.soil, soil.Options{Columns: o.columns, Longitude: longitude})
	if o.tellProblems(problems); log == nil {
		return nil, errRefused
	}
	station, err := log.Station(o.station)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", o.soil, err)
	}
	return station, nil
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

Of several sites each gets its page, and the truck a list of what to load for
all that is ready on them.

Flags:
    --program P    cool, warm, or a program file (YAML); --schema describes it
    --soil FILE    a log of temperatures, CSV: time, and columns such as
                   soil_2in_f, soil_5cm_c, air_max_f, air_min_f
    --columns C    how another log is read, such as
                   time=date,temp=ts5,unit=c,depth=5cm,missing=-9999
    --station S    the station, in a log of several
    --on DAY       the day of the plan, such as 2026-04-06
    --year Y       the year in which the season begins
    --format F     text, json, csv (the task list) or ics (a calendar)
    --schema       print the JSON Schema of program files, and do nothing else
` + readingHelp + outHelp + `
Examples:
    $ turfplat plan --program cool yard.geojson
    $ turfplat plan --program season.yaml --soil soil.csv yard.geojson
`
