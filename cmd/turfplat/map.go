package main

import (
	"errors"
	"fmt"
	"path/filepath"
	"slices"
	"strings"

	"github.com/urfave/cli/v2"

	"example.org/turfplat/render"
	"example.org/turfplat/zones"
	"example.org/turfplat/zones/lanes"
)

func mapCommand(d *desk) *cli.Command {
	return &cli.Command{
		Name:               "map",
		CustomHelpTemplate: mapHelp,
		OnUsageError:       onUsageError,
		Flags: readingFlags(sunFlags(packetFlags(laneFlags(outputFlag(), grassFlag(), &cli.StringFlag{Name: "paper"}, &cli.StringFlag{Name: "scale"},
			&cli.BoolFlag{Name: "mono"}, &cli.BoolFlag{Name: "fixes"})...)...)...),
		Action: func(c *cli.Context) error {
			o, err := d.order(c)
			if err != nil {
				return err
			}
			draw, err := o.drawing(c)
			if err != nil {
				return err
			}
			if naming(o.output) {
				return o.drawMaps(draw)
			}
			return o.drawMap(draw)
		},
	}
}

// A drawing is how a map is to be drawn.
type drawing struct {
	options render.MapOptions
	form    form
	spread  *lanes.Work // nil = no sheet of lanes
	packet  packet
}

// A form is what sheets are written as: all in one file, or each in its own.
type form struct {
	together bool
	page     bool // a page for a phone in place of sheets
	write    func(...*render.Sheet) ([]byte, error)
}

// forms are those of sheets by the ending of the file's name.
var forms = map[string]form{
	".svg":  {write: func(s ...*render.Sheet) ([]byte, error) { return render.SVG(s[0]) }},
	".pdf":  {write: render.PDF, together: true},
	".png":  {write: func(s ...*render.Sheet) ([]byte, error) { return render.PNG(s[0], render.ScreenDPI) }},
	".html": {page: true},
}

// drawing reads the flags that say what is drawn, and how.
func (o *order) drawing(c *cli.Context) (d drawing, err error) {
	if d.form, err = formOf(o.output); err != nil {
		return d, err
	}
	if err = d.form.refusePaper(c); err != nil {
		return d, err
	}
	if d.options, err = mapOptions(c); err != nil {
		return d, err
	}
	if err = o.readSun(c); err != nil {
		return d, err
	}
	if d.spread, err = workIfAsked(c); err != nil {
		return d, err
	}
	if d.spread != nil {
		o.tellWide(*d.spread)
	}
	if d.packet, err = o.packet(c); err != nil {
		return d, err
	}
	return d, o.refuseNameless(d)
}

// formOf is the form of an output, by the ending of its name; SVG on standard
// output.
func formOf(output string) (form, error) {
	if output == "" {
		return forms[".svg"], nil
	}
	f, known := forms[strings.ToLower(filepath.Ext(output))]
	if !known {
		return f, usageErrorf("-o %s: a map is written as .pdf, .svg, .png or .html", output)
	}
	return f, nil
}

// mapOptions reads the flags that say how a map looks.
func mapOptions(c *cli.Context) (render.MapOptions, error) {
	options := render.MapOptions{Mono: c.Bool("mono"), Fixes: c.Bool("fixes")}
	var err error
	if paper := c.String("paper"); paper != "" {
		if options.Paper, err = render.PaperNamed(paper); err != nil {
			return options, usageErrorf("--paper: %w", err)
		}
	}
	if scale := c.String("scale"); scale != "" {
		if options.Scale, err = render.ParseScale(scale); err != nil {
			return options, usageErrorf("--scale: %w", err)
		}
	}
	return options, nil
}

// refuseNameless refuses what standard output, which takes one sheet, does not
// hold.
func (o *order) refuseNameless(d drawing) error {
	switch {
	case o.output != "":
		return nil
	case o.json:
		return usageErrorf("map --json tells of the file written: name it with -o")
	case d.packet.planning != nil:
		return usageErrorf("map --program draws several sheets: name a file for them with -o")
	case o.reading.Sun != nil:
		return usageErrorf("map --sun draws two sheets: name a file for them with -o")
	case d.spread != nil:
		return usageErrorf("map --swath draws two sheets: name a file for them with -o")
	}
	return nil
}

func (o *order) drawMap(d drawing) error {
	var drawn []leaf
	several := usageHint(errors.New("map draws one site, and there are more"), "name a file for each with "+eachSite+" in it, as in -o packets/"+eachSite+".pdf")
	err := o.one(several, func(s surveyed) (err error) {
		drawn, err = o.leaves(s, d)
		return err
	})
	if err != nil {
		return err
	}
	return o.writeMap(drawn)
}

// writeMap writes the files of a site, and tells of them if that was asked for.
func (o *order) writeMap(drawn []leaf) error {
	if err := o.writeLeaves(drawn); err != nil || !o.json {
		return err
	}
	return writeJSON(o.out, mapAccount(drawn), "")
}

// leaves draws a site in the form that was asked for.
func (o *order) leaves(s surveyed, d drawing) ([]leaf, error) {
	drawn, err := o.drawn(s, d)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", s.site.ID, err)
	}
	drawn[0].site = s.site.ID
	return drawn, nil
}

func (o *order) drawn(s surveyed, d drawing) ([]leaf, error) {
	if d.options.Fixes && !s.site.HasFixes() {
		o.tell("warning", fmt.Sprintf("%s: nothing in it was walked, so --fixes has none to draw", s.site.ID))
	}
	if d.form.page {
		return o.page(s, d)
	}
	sheets, err := o.sheets(s, d)
	if err != nil {
		return nil, err
	}
	return d.form.leaves(o.output, sheets)
}

// sheets draws the site map, or the packet if a program was named, and, if they
// were asked for, the sheets of the sun and of the spread lanes.
func (o *order) sheets(s surveyed, d drawing) ([]*render.Sheet, error) {
	options := d.options
	options.Units = s.site.Units
	draw := []sheetmaker{render.SiteMaps}
	if o.output == "" {
		draw = []sheetmaker{oneSheet}
	}
	if o.reading.Sun != nil {
		draw = append(draw, render.SunSheets)
	}
	if d.packet.planning != nil {
		draw = []sheetmaker{d.packet.sheets(s, d.spread)}
	} else if d.spread != nil {
		draw = append(draw, o.laneSheets(s, *d.spread))
	}
	var sheets []*render.Sheet
	var missing []rune
	for _, some := range draw {
		drawn, err := some(s.plat, s.measure, options)
		if err != nil {
			return nil, err
		}
		sheets = append(sheets, drawn...)
		o.tellUnlabelled(s.site.ID, drawn)
		for _, r := range drawn[0].Missing {
			if !slices.Contains(missing, r) {
				missing = append(missing, r)
			}
		}
	}
	if len(missing) > 0 {
		o.tell("warning", fmt.Sprintf("%s: the map's typefaces have no %q, drawn as ?: name them in other letters too", s.site.ID, string(missing)))
	}
	if d.packet.planning != nil && len(d.packet.steps) == 0 && len(sheets) > manySheets {
		o.tell("hint", fmt.Sprintf("%s: the packet of all steps has %d sheets: --step names those that are wanted, --on the day", s.site.ID, len(sheets)))
	}
	return sheets, nil
}

// manySheets are more than anybody prints unasked.
const manySheets = 20

// laneSheets lays the lanes of a site and draws them.
func (o *order) laneSheets(s surveyed, work lanes.Work) sheetmaker {
	return func(p *zones.Plat, m zones.Measurement, options render.MapOptions) ([]*render.Sheet, error) {
		walked, err := o.walked(s, work)
		if err != nil {
			return nil, err
		}
		sheets, err := render.LaneSheets(p, m, walked.Plan, walked.Summary, options)
		if err != nil {
			return nil, err
		}
		if apart := sheets[len(sheets)-1].Scale.MM(walked.Plan.FillSpacing()); apart > 0 && apart < closestLanes {
			o.tell("hint", fmt.Sprintf("%s: lanes lie %.1f mm apart on the sheet: larger paper shows them better", m.ID, apart))
		}
		return sheets, nil
	}
}

// closestLanes is how far apart lanes must lie on paper to be told apart, in
// millimetres.
const closestLanes = 2.0

// A sheetmaker draws what there is to show of one subject.
type sheetmaker func(*zones.Plat, zones.Measurement, render.MapOptions) ([]*render.Sheet, error)

// oneSheet draws the site map for standard output, which takes one.
func oneSheet(p *zones.Plat, m zones.Measurement, o render.MapOptions) ([]*render.Sheet, error) {
	sheet, err := render.SiteMap(p, m, o)
	return []*render.Sheet{sheet}, err
}

// tellUnlabelled warns of zones that found no room for their letters.
func (o *order) tellUnlabelled(site string, sheets []*render.Sheet) {
	for _, s := range sheets {
		if n := len(s.Unlabelled); n > 0 {
			o.tell("warning", fmt.Sprintf("%s: sheet %s has no room for the letters of %s (%s): use larger paper", site, s.ID, plural(n, "zone"), strings.Join(s.Unlabelled, ", ")))
		}
	}
}

const mapHelp = `turfplat map draws the site map of a property, true to scale; with --program
the packet that a crew takes along, with --sun sheets of its sun and shade, and
with --swath those of the lanes along which a spreader is walked.

Usage:
    turfplat map [flags] [FILE ...]

The form follows the ending of the output: .pdf, .svg or .png (150 dpi), or
.html for a phone; without -o it is SVG. The scale is the largest standard one
at which the property fits the sheet, upright or across. North is up; a long
thin property is turned if that gains a step of the scale.

A property that would be drawn smaller than 1 in = 80 ft (1:960), or that does
not fit at the --scale asked for, takes several sheets: a key map with the
tables, then its parts, with match lines that tell which sheet they join. Unless
a scale is asked for, it stays on one sheet where parts would be less than 1.6
times as large and have no more letters of zones. In a PDF parts are pages; SVG
and PNG are written as NAME-1-site, NAME-2-site-part-1 and so on, where there
are ten or more as NAME-01-site. Without -o all is on one sheet, however small.

Of several sites each gets files of its own: -o packets/{id}.pdf names them by
their ids. A site that is refused is left out, and the exit status is 1; with
--json there is a line a site.

A PDF tells map readers, such as those of phones, where on the earth each map
lies (ISO 32000-2), so that one sees where one stands.

With --sun the hours of direct sun a day are drawn in steps, with contours at
the limits, what throws the shade and how high it stands. Zones whose exposure
nobody stated are divided by it, or with --limits species by what their grass
needs, as zone --sun does; zones already written into the file stay as they
are.

With --swath or --trays the spread lanes are laid as lanes does, and drawn with
their numbers in walking order and what they come to. Sheets follow each other
in a PDF; SVG and PNG are written as NAME-1-site, NAME-2-sun, NAME-3-lanes.

With --program the packet follows: a sheet for each step that is not left out,
or for those named with --step, then the sun, then the season and what to buy.
A step's sheet shows which zones are worked, what goes on each, how tanks or the
hopper are filled, hazards, cautions, boxes to tick, and room for weather and
signature. It says READY, WAIT or BLOCKED as plan does on that day; of a step
that is blocked or left out it tells why, and what would lift that, in place of
rates and amounts. What does not fit beside the map goes on to a second sheet.
Gate codes are left out. With --swath, steps that are spread have their lanes,
in place of a sheet of all lanes; the hopper of your own calibration, if the
program has one, tells where to refill. Of a step of several passes each further
one has a sheet of its own lanes, across those of the one before; on a page it
is a layer, which comes up when the pass before is ticked off.

A page (.html) is one file that loads nothing and needs no network: the map, to
be moved and zoomed, with layers to switch; zones that tell, when tapped, what
they are and what they get; with --program a section a step, with --swath lanes
to tick off as they are walked, with what goes into the hopper before them; with
--sun the hours. Ticks stay on the device.
Where the browser allows it, the page shows where on the map one stands.

Flags:
    --paper P      letter, tabloid, a4 or a3; default: letter, or a4 in metric
    --scale S      1:240, 20ft (1 in = 20 ft)
    --mono         black, white and grey only
    --fixes        the fixes that walked edges were found from, as dots
    --program P    draw the packet for cool, warm, or a program file (YAML)
    --step ID      only this step's sheets; may be given several times
    --with-codes   print the gate code of the site file on the step sheets
` + planningHelp + sunHelp + grassHelp + laneHelp + readingHelp + outHelp + `
Example:
    $ turfplat map yard.geojson -o yard.pdf
    $ turfplat map --sun --season 06-21..06-21 yard.geojson -o june.pdf
    $ turfplat map --program season.yaml --on 2026-05-04 --step spring-feed yard.geojson -o monday.pdf
    $ turfplat map --swath 10ft --mode single yard.geojson -o spread.pdf
    $ turfplat map --program season.yaml --swath 10ft yard.geojson -o crew.html
    $ turfplat map --program season.yaml --on 2026-05-04 route/*.geojson -o '{id}.pdf'
`
