package main

import (
	"errors"
	"fmt"
	"os"
	"time"

	"github.com/paulmach/orb"
	"github.com/urfave/cli/v2"

	"example.org/turfplat/geo/ingest"
	"example.org/turfplat/zones/program"
	"example.org/turfplat/zones/soil"
)

// planningFlags are the flags of commands that lay a program on a site.
func planningFlags(more ...cli.Flag) []cli.Flag {
	return append([]cli.Flag{
		&cli.StringFlag{Name: "program", TakesFile: true},
		&cli.StringFlag{Name: "soil", TakesFile: true},
		&cli.StringFlag{Name: "columns"},
		&cli.StringFlag{Name: "station"},
		&cli.StringFlag{Name: "on"},
		&cli.IntFlag{Name: "year"},
	}, more...)
}

// A planning is a program, and on what its dates rest.
type planning struct {
	*order
	program *program.Program
	soil    string // file of the log; "" = none
	columns soil.Columns
	station string
	day     time.Time // zero = not stated
	year    int       // 0 = not stated
	told    *sparing  // of all sites together

	seasonTold bool // that most of the season lies in the past
}

// planning reads the flags that say what is planned, and the program.
func (o *order) planning(c *cli.Context) (*planning, error) {
	p := &planning{order: o, told: o.sparing(), soil: c.String("soil"), station: c.String("station"), year: c.Int("year")}
	if err := p.readDay(c.String("on")); err != nil {
		return nil, err
	}
	if c.IsSet("year") && !plannable(p.year) {
		return nil, usageErrorf("--year %d is no year from %d to %d", p.year, program.FirstYear, program.LastYear)
	}
	if p.soil == "" && (p.station != "" || c.IsSet("columns")) {
		return nil, usageErrorf("--station and --columns say how a log is read: name it with --soil")
	}
	var err error
	if c.IsSet("columns") {
		if p.columns, err = soil.ParseColumns(c.String("columns")); err != nil {
			return nil, usageErrorf("--columns: %w", err)
		}
	}
	p.program, err = o.readProgram(c.String("program"))
	return p, err
}

func (p *planning) readDay(text string) error {
	if text == "" {
		return nil
	}
	day, err := time.Parse(time.DateOnly, text)
	if err != nil {
		return usageErrorf("--on is a day such as 2026-04-06, not %q", text)
	}
	if !plannable(day.Year()) {
		return usageErrorf("--on %s lies in no year from %d to %d", text, program.FirstYear, program.LastYear)
	}
	p.day = day
	return nil
}

func plannable(year int) bool { return year >= program.FirstYear && year <= program.LastYear }

// readProgram reads a program file, or takes a built-in one.
func (o *order) readProgram(name string) (*program.Program, error) {
	if name == "" {
		return nil, usageErrorf("no program given: --program cool, warm, or a file of your own")
	}
	if p, ok := program.BuiltIn(name); ok {
		return p, nil
	}
	f, err := openNamed(name)
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

// planOn lays the program on a site and tells what there is to tell of it, of
// what several sites have in common the first few.
func (p *planning) planOn(s surveyed) (*program.Plan, error) {
	plan, problems, err := p.planFor(s)
	if p.told.tell(problems); err == nil {
		p.hintSeason(plan)
	}
	return plan, err
}

// planFor lays the program on a site. Problems are those of the log and of the
// program on this site.
func (p *planning) planFor(s surveyed) (*program.Plan, []ingest.Problem, error) {
	occasion, problems, err := p.occasion(s.measure.Center)
	if err != nil {
		return nil, problems, err
	}
	plan, err := p.program.Plan(propertyOf(s), occasion)
	var refusal *program.Refusal
	if errors.As(err, &refusal) {
		return nil, append(problems, refusal.Problems...), errRefused
	}
	if err != nil {
		return nil, problems, err
	}
	return plan, append(problems, plan.Problems...), nil
}

func propertyOf(s surveyed) program.Property {
	return program.Property{
		ID: s.measure.ID, Name: s.measure.Name, Latitude: s.measure.Center.Lat(),
		Units: s.site.Units, Region: s.site.Region(), Zones: s.measure.Zones,
	}
}

// occasion finds the day of the plan, its year and its log.
func (p *planning) occasion(at orb.Point) (program.Occasion, []ingest.Problem, error) {
	occasion := program.Occasion{Today: p.day, Year: p.year, Grasses: p.reading.Grasses}
	var problems []ingest.Problem
	if p.soil != "" {
		var err error
		if occasion.Soil, problems, err = p.readSoil(at); err != nil {
			return occasion, problems, err
		}
		if occasion.Today.IsZero() {
			occasion.Today = occasion.Soil.Last()
		}
	}
	if occasion.Year == 0 && occasion.Today.IsZero() {
		occasion.Year = p.now().Year() // the only clock there is
	}
	return occasion, problems, nil
}

// hintSeason tells once, where no year was stated, that little of the season is
// left on the day of the plan, or without one that most of it is past by the clock
// that gave the year.
func (p *planning) hintSeason(plan *program.Plan) {
	today, part := plan.Today, 0.8
	if today.IsZero() {
		today, part = p.now(), 0.5
	}
	past, all := plan.StepsBefore(today)
	if p.year != 0 || p.seasonTold || float64(past) <= part*float64(all) {
		return
	}
	p.seasonTold = true
	text := fmt.Sprintf("%d of %d steps of season %d had to be done before %s", past, all, plan.Year, today.Format(time.DateOnly))
	hint := fmt.Sprintf("--year %d plans the next season", plan.Year+1)
	if plan.Today.IsZero() {
		hint += fmt.Sprintf(", --on %s what is left of this one", today.Format(time.DateOnly))
	}
	p.tell("hint", text+": "+hint)
}

// readSoil reads the log and finds the station in it.
func (p *planning) readSoil(at orb.Point) (*soil.Station, []ingest.Problem, error) {
	f, err := openNamed(p.soil)
	if err != nil {
		return nil, nil, err
	}
	defer f.Close()
	log, problems := soil.ReadLog(f, p.soil, soil.Options{Columns: p.columns, Longitude: at.Lon(), Latitude: at.Lat()})
	if log == nil {
		return nil, problems, errRefused
	}
	station, err := log.Station(p.station)
	if err != nil {
		return nil, problems, fmt.Errorf("%s: %w", p.soil, err)
	}
	return station, problems, nil
}

const planningHelp = `    --soil FILE    a log of temperatures, CSV: time, and columns such as
                   soil_2in_f, soil_5cm_c, air_max_f, air_min_f
    --columns C    how another log is read, such as
                   time=date,temp=ts5,unit=c,depth=5cm,missing=-9999
    --station S    the station, in a log of several
    --on DAY       the day of the plan, such as 2026-04-06
    --year Y       the year in which the season begins
`
