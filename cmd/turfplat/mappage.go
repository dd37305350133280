package main

import (
	"fmt"
	"strings"

	"github.com/urfave/cli/v2"

	"example.org/turfplat/render"
	"example.org/turfplat/zones/lanes"
	"example.org/turfplat/zones/program"
)

// refusePaper refuses the flags that say how paper is used, with a page.
func (f form) refusePaper(c *cli.Context) error {
	if !f.page {
		return nil
	}
	return refuseIdle(c, "a page has no paper: leave it out", "paper", "scale")
}

// page draws a site as a page for a phone, with the lanes, steps and hours of
// sun that were asked for.
func (o *order) page(s surveyed, d drawing) ([]leaf, error) {
	options := d.options
	options.Units = s.site.Units
	asked := render.PageOptions{PacketOptions: render.PacketOptions{MapOptions: options, Sun: o.reading.Sun != nil}}
	var plan *program.Plan
	var err error
	if d.packet.planning != nil {
		plan, asked.PacketOptions, err = d.packet.laid(s, options, d.spread)
	} else if d.spread != nil {
		asked.Walked, err = o.walked(s, *d.spread)
	}
	if err != nil {
		return nil, err
	}
	sheet, file, err := render.Page(s.plat, s.measure, plan, asked)
	if err != nil {
		return nil, err
	}
	if len(sheet.Missing) > 0 {
		o.tell("warning", fmt.Sprintf("%s: the map's typefaces have no %q, drawn as ? on the map; what stands below it is whole", s.site.ID, string(sheet.Missing)))
	}
	if n := len(sheet.Unlabelled); n > 0 {
		o.tell("warning", fmt.Sprintf("%s: the map of the page has no room for the letters of %s (%s): they are told when tapped", s.site.ID, plural(n, "zone"), strings.Join(sheet.Unlabelled, ", ")))
	}
	return []leaf{{sheet: sheet, file: o.output, page: 1, data: file}}, nil
}

// walked lays lanes over a whole site.
func (o *order) walked(s surveyed, work lanes.Work) (*render.StepLanes, error) {
	before := len(s.site.Problems)
	plan, sum, err := lay(s, spreading{Work: work})
	if err != nil {
		return nil, fmt.Errorf("%s: %w", s.measure.ID, err)
	}
	o.tellAll(s.site.Problems[before:])
	return &render.StepLanes{Plan: plan, Summary: sum}, nil
}
