package main

import (
	"fmt"
	"io"

	"github.com/urfave/cli/v2"

	"example.org/turfplat/geo/ingest"
	"example.org/turfplat/zones"
)

func zoneCommand(d *desk) *cli.Command {
	return &cli.Command{
		Name:               "zone",
		CustomHelpTemplate: zoneHelp,
		OnUsageError:       onUsageError,
		Flags:              streamFlags(sunFlags(grassFlag(), &cli.StringFlag{Name: "explain"})...),
		Action: func(c *cli.Context) error {
			o, err := d.order(c)
			if err != nil {
				return err
			}
			o.reading.Afresh = true
			if err := o.readSun(c); err != nil {
				return err
			}
			if c.IsSet("explain") {
				return o.explain(c.String("explain"))
			}
			if err := o.refuseResume(true, ""); err != nil {
				return err
			}
			if o.lines {
				return o.siteLines(func(s surveyed) (*ingest.Collection, error) { return s.plat.SiteFile(), nil }).do(o)
			}
			return o.zone()
		},
	}
}

const zoneSchema = "turfplat/zone/1"

type zoneDocument struct {
	Schema string      `json:"schema"`
	Sites  []zonedSite `json:"sites"`
}

type zonedSite struct {
	ID    string              `json:"id"`
	Name  string              `json:"name"`
	Zones []zones.ZoneMeasure `json:"zones"`
	Sun   *sunAccount         `json:"sun,omitempty"`
}

// zone writes the site files with their zones. Where they go to a file, the
// zones are told on standard output.
func (o *order) zone() error {
	var told zonedSite
	var units zones.Units
	written := o.write(func(w io.Writer) error {
		return o.one(errSeveral, func(s surveyed) error {
			told, units = zonedSite{s.measure.ID, s.measure.Name, s.measure.Zones, sunAccountOf(s)}, s.site.Units
			return s.plat.SiteFile().WriteGeoJSON(w)
		})
	})
	if written != nil || o.output == "" {
		return written
	}
	if o.json {
		return writeJSON(o.out, zoneDocument{zoneSchema, []zonedSite{told}}, " ")
	}
	if _, err := zoneTable(figuresIn(units), told.Zones).WriteTo(o.out); err != nil || told.Sun == nil {
		return err
	}
	_, err := fmt.Fprintf(o.out, "\n%s\n", told.Sun)
	return err
}

const zoneHelp = `turfplat zone writes the site file with its turf divided into zones.

Usage:
    turfplat zone [flags] [FILE ...]

Keepouts come first, then setbacks, then traced zones, the smaller first, then
what is left; cutlines divide what they cross, run on straight at both ends. The
zones fit the turf without gap or overlap. Each is written as a feature of kind
zone, derived true, in place of those written before; all else is kept. With -o,
a table of the zones goes to standard output.

The grass of a zone is what the cutline beside it says (species_north,
species_south, species_east or species_west), else the zone's species, else that
of the turf it lies on, else the site's ("site": {"species": ...}). A zone that
lies on turf of two grasses is divided between them.

Nothing is applied within the setback of water, drains and wells, and of hazards
with setback_m, on the property or beyond: as far as the object's setback_m says
or the law of the region, whichever is wider, else a proposal. Less than law's
holds only if setback_reason says why, as of a spreader for which law allows it.
Rules change: verify them locally. A rim under 0.5 m that a keepout along the
water leaves of a setback becomes part of the keepout.

With --sun the hours of direct sun a day, the mean over a season, are worked out
from the heights of buildings, trees, hedges and fences, on the property and
around it. Zones whose exposure nobody stated are divided into full sun, part
sun, shade and deep shade, in pieces that can be walked: none under 14 m2 (150
ft2) or 1.5 m (5 ft) wide, unless the lawn itself is. Heights that the file does
not give are assumed, and that is told; turf within half an hour of a limit is
to be checked on site. Where the grass of a zone is known, it is told whether it
has enough sun, is short of it or has too little, by the hours that the table of
grasses gives it; --limits species divides zones at those hours instead, so that
one sees where this grass will thin out. --explain tells of one spot what takes
its sun, in place of the site file.

Flags:
` + sunHelp + grassHelp + `    --explain LON,LAT
                   which object takes which hours of sun at one spot
` + readingHelp + linesHelp + textOutHelp + `
Example:
    $ turfplat zone yard.geojson -o yard-zones.geojson
    $ turfplat zone --sun --season 04-15..10-15 yard.geojson -o yard-zones.geojson
    $ turfplat zone --sun --explain -93.0995,44.9502 yard.geojson
`
