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
		Flags:              readingFlags(&cli.BoolFlag{Name: "lines"}, outputFlag()),
		Action: func(c *cli.Context) error {
			o, err := d.order(c)
			if err != nil {
				return err
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
}

// zone writes the site files with their zones. Where they go to a file, the
// zones are told on standard output.
func (o *order) zone() error {
	var told []zonedSite
	var tables []*table
	written := o.write(func(w io.Writer) error {
		count := 0
		return o.plats(func(p *zones.Plat) error {
			if count++; count > 1 && !o.lines && len(o.files) == 1 {
				o.lines = true // a file of several sites can only be written as lines
			}
			m, err := p.Measurement()
			if err != nil {
				return fmt.Errorf("%s: %w", p.Site.ID, err)
			}
			if o.output != "" && !o.lines {
				told = append(told, zonedSite{m.ID, m.Name, m.Zones})
				tables = append(tables, zoneTable(figures{p.Site.Units}, m))
			}
			return o.writeSite(w, p.SiteFile())
		})
	})
	if written != nil {
		return written
	}
	return o.tellZones(told, tables)
}

func (o *order) writeSite(w io.Writer, c *ingest.Collection) error {
	if o.lines {
		return c.WriteGeoJSONLine(w)
	}
	return c.WriteGeoJSON(w)
}

func (o *order) tellZones(told []zonedSite, tables []*table) error {
	if o.json && o.output != "" {
		return writeJSON(o.out, zoneDocument{zoneSchema, told}, " ")
	}
	for _, t := range tables {
		if _, err := t.WriteTo(o.out); err != nil {
			return err
		}
	}
	return nil
}
