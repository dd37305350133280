package main

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"github.com/urfave/cli/v2"

	"example.org/turfplat/geo"
	"example.org/turfplat/geo/ingest"
	"example.org/turfplat/zones"
	"example.org/turfplat/zones/lanes"
)

func lanesCommand(d *desk) *cli.Command {
	return &cli.Command{
		Name:               "lanes",
		CustomHelpTemplate: lanesHelp,
		OnUsageError:       onUsageError,
		Flags:              streamFlags(spreadingFlags()...),
		Action: func(c *cli.Context) error {
			o, err := d.order(c)
			if err != nil {
				return err
			}
			s, err := o.spreading(c)
			if err != nil {
				return err
			}
			o.tellWide(s.Work)
			if err := o.refuseResume(true, ""); err != nil {
				return err
			}
			if o.lines {
				return o.siteLines(lanesFile(s)).do(o)
			}
			return o.lanes(s)
		},
	}
}

const lanesSchema = "turfplat/lanes/1"

type lanesDocument struct {
	Schema  string        `json:"schema"`
	Site    string        `json:"site"`
	Summary lanes.Summary `json:"summary"`
}

// lanes writes the lanes of sites. Where they go to a file, what they come to
// is told on standard output.
func (o *order) lanes(spread spreading) error {
	var told lanesDocument
	var units zones.Units
	written := o.write(func(w io.Writer) error {
		return o.one(errSeveral, func(s surveyed) error {
			before := len(s.site.Problems)
			plan, sum, err := lay(s, spread)
			o.tellAll(s.site.Problems[before:])
			if err != nil {
				return fmt.Errorf("%s: %w", s.site.ID, err)
			}
			told, units = lanesDocument{lanesSchema, s.site.ID, sum}, s.site.Units
			return plan.File(s.site, sum).WriteGeoJSON(w)
		})
	})
	if written != nil || o.output == "" {
		return written
	}
	if o.json {
		return writeJSON(o.out, told, " ")
	}
	_, err := lanesTable(figuresIn(units), told.Summary).WriteTo(o.out)
	return err
}

// lay lays the lanes of a site; where no way was found, and what holds a step
// back, are problems of it.
func lay(s surveyed, spread spreading) (lanes.Plan, lanes.Summary, error) {
	work, treats, err := spread.on(s)
	if err != nil {
		return lanes.Plan{}, lanes.Summary{}, err
	}
	plan, yard, err := layOn(s, work, treats)
	if err != nil {
		return lanes.Plan{}, lanes.Summary{}, err
	}
	return plan, plan.Summary(plan.Coverage(yard)), nil
}

// tellWide doubts a swath that hardly any walked spreader has.
func (o *order) tellWide(work lanes.Work) {
	usual := work.Practice.WideSwath
	if work.Pattern.Swath() <= usual {
		return
	}
	o.tell("warning", fmt.Sprintf("a swath of %.1f ft (%.1f m) is wider than %.0f ft (%.1f m), and walked spreaders leave 6 to 12 ft (2 to 3.5 m) evenly", work.Pattern.Swath()/geo.FootM, work.Pattern.Swath(), usual/geo.FootM, usual))
	o.tell("hint", "is its unit right? a tray test (--trays) tells the swath")
}

// layOn lays lanes on some zones of a site.
func layOn(s surveyed, work lanes.Work, treats func(zones.Zone) bool) (lanes.Plan, lanes.Yard, error) {
	yard, err := lanes.YardOn(s.plat, work.Practice, treats)
	if err != nil {
		return lanes.Plan{}, yard, err
	}
	yard.TellSteep(s.site, work.Practice)
	plan, err := lanes.Lay(yard, work)
	if err != nil {
		return lanes.Plan{}, yard, err
	}
	for _, n := range plan.Cut {
		s.site.Warn("lane_cut", fmt.Sprintf("there is no way to lane %d round beds and buildings", n), "carry the spreader across")
	}
	tellRepeated(s, plan)
	return plan, yard, nil
}

// tellRepeated warns of ground on which the second pass does not lie across the
// first.
func tellRepeated(s surveyed, plan lanes.Plan) {
	for _, r := range []struct {
		why        lanes.Again
		text, hint string
	}{
		{lanes.Narrow, "ground too narrow for lanes across: the second pass repeats the first there", "look for stripes, and keep the lanes as they are drawn"},
		{lanes.Contour, "ground too steep to be walked but along the contour: the second pass repeats the first there", "slip half a lane sideways, if there is room"},
	} {
		var names []string
		for _, z := range s.plat.Zones {
			if slices.Contains(plan.RepeatedIn(2, r.why), z.ID) {
				names = append(names, ingest.Quoted(z.Name))
			}
		}
		if len(names) > 0 {
			s.site.Warn("pass_repeated", strings.Join(names, ", ")+": "+r.text, r.hint)
		}
	}
}

// lanesFile is the lanes of a site as a file.
func lanesFile(spread spreading) func(surveyed) (*ingest.Collection, error) {
	return func(s surveyed) (*ingest.Collection, error) {
		plan, sum, err := lay(s, spread)
		return plan.File(s.site, sum), err
	}
}

// forPass tells amounts of one of several passes from those of all.
func forPass(head string, p *lanes.LoadSummary) string {
	if p.Passes > 1 {
		head += " a pass"
	}
	return head
}

func lanesTable(f figures, s lanes.Summary) *table {
	t := newTable("lr")
	if p := s.Product; p != nil {
		t.row("step", p.Step)
		t.row("material", p.Material)
		if p.Unit != "" {
			t.row(forPass("needed", p), fmt.Sprintf("%.1f %s", p.Total, p.Unit))
			t.row("of it by hand", fmt.Sprintf("%.1f %s", p.ByHand, p.Unit))
		}
		if p.AllTotal > 0 {
			t.row(fmt.Sprintf("in %d passes", p.Passes), fmt.Sprintf("%.1f %s", p.AllTotal, p.Unit))
		}
	}
	t.row("ground", f.Area(s.GroundM2, 0)+" "+f.areaUnit())
	t.row("done by hand", f.Area(s.ByHandM2, 0)+" "+f.areaUnit())
	t.row("lanes", fmt.Sprint(s.Lanes))
	for _, p := range s.Passes {
		t.row(fmt.Sprintf("of pass %d", p.Number), fmt.Sprint(p.Lanes))
	}
	t.row("spreading", f.length(s.SpreadLengthM))
	t.row("least that could do", f.length(s.LeastLengthM))
	t.row("walking without", f.length(s.TravelLengthM))
	t.row("turns", fmt.Sprint(s.Turns))
	if s.Refills > 0 {
		t.row("refills", fmt.Sprint(s.Refills))
	}
	t.row("time", fmt.Sprintf("%.0f min", s.Minutes))
	t.row("covered", share(s.CoveredShare, 1))
	t.row("missed", f.Area(s.MissedM2, 0)+" "+f.areaUnit())
	t.row("lands off the turf", share(s.OutsideShare, 1))
	t.row("unevenness (CV)", fmt.Sprintf("%.0f %%", s.CVPercent))
	t.row("set the spreader to", fmt.Sprintf("%.0f %% of the rate", 100*s.SettingShare))
	return t
}

const lanesHelp = `turfplat lanes lays the lanes along which a spreader is walked.

Usage:
    turfplat lanes --swath LENGTH [flags] [FILE ...]

Header laps run half a swath inside each edge, then straight lanes fill what is
left, at the heading that takes the least walking; ground steeper than 5 degrees
that says where it faces is walked along the contour, and what is steeper than
20 degrees is left to be done by hand, as are strips too narrow to walk. Lanes
come in walking order, from the start or gate and back, as GeoJSON. Zones in
which nothing is applied get none. What the lanes cover is summed on a fine grid
from the pattern, the deflector holding back what header laps would throw off
the turf: summary in the output tells. With -o, a table of it goes to standard
output.

Where a filling of the hopper is known, it is topped up before the lane on which
it would run out, and the last time filled with no more than the lanes to come
take: put_in_m2 and left_m2 tell for how much ground.

zone is where the most of a lane lies; zones lists all through which it runs,
with length, ground and amount: sum those for a zone.

With --program and --step only the zones of that step are walked, at its rate:
each lane then tells what it takes of the product, what is put into the hopper
before it, and what is left there after it. A step that waits or is held back is
laid all the same, with a warning that says why.

Of a step of several passes every other one is laid across the one before, with
header laps in each: pass_number tells to which pass a lane belongs, and the
hopper is filled anew for each. Where ground is too narrow for that, or steep
and walked along the contour, the pass repeats the one before, and repeats says
why. Lengths, turns and time are of all passes; amounts of a lane and total of
one.

Flags:
` + laneHelp + `    --program P    cool, warm, or a program file: whose step is spread
    --step ID      the step
    --hopper W     what the hopper holds of the product, as in 50lb, in place of
                   --filling
` + planningHelp + grassHelp + readingHelp + linesHelp + textOutHelp + `
The label is the law: rates, buffers and weather are what it says. Spread on
steep, wet or frozen ground, by water or in wind only as local rules allow, and
sweep back at once what lies on pavement.

Example:
    $ turfplat lanes --swath 10ft --mode single yard.geojson -o lanes.geojson
    $ turfplat lanes --swath 10ft --program cool --step first-feed --hopper 50lb yard.geojson -o feed.geojson
`
