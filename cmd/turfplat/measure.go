package main

import (
	"bytes"
	"encoding/json"
	"io"

	"github.com/urfave/cli/v2"

	"example.org/turfplat/geo/ingest"
	"example.org/turfplat/zones"
)

func measureCommand(d *desk) *cli.Command {
	return &cli.Command{
		Name:               "measure",
		CustomHelpTemplate: measureHelp,
		OnUsageError:       onUsageError,
		Flags:              streamFlags(grassFlag(), &cli.StringFlag{Name: "by"}),
		Action: func(c *cli.Context) error {
			o, err := d.order(c)
			if err != nil {
				return err
			}
			print, err := printerOf(o, c.String("by"))
			if err != nil {
				return err
			}
			if err := o.refuseResume(o.json, "add --json"); err != nil {
				return err
			}
			if o.json && o.lines {
				return o.measureLines().do(o)
			}
			return o.write(func(w io.Writer) error { return o.measure(w, print) })
		},
	}
}

// A printer prints the measures of sites, one after the other.
type printer interface {
	print(w io.Writer, s surveyed) error
	finish(w io.Writer) error
}

func printerOf(o *order, by string) (printer, error) {
	if o.json {
		return &jsonDocument{}, nil
	}
	switch by {
	case "":
		return &reports{}, nil
	case "site":
		return siteRows(o.lines), nil
	case "zone":
		return zoneRows(o.lines), nil
	}
	return nil, usageErrorf("--by is site or zone, not %q", by)
}

func (o *order) measure(w io.Writer, p printer) error {
	err := o.each(func(s surveyed) error { return p.print(w, s) })
	if !o.keeps(err) {
		return err
	}
	if finished := p.finish(w); finished != nil {
		return finished
	}
	return err
}

// measureDocument is the machine form of measure.
type measureDocument struct {
	Schema string              `json:"schema"`
	Sites  []zones.Measurement `json:"sites"`
}

// measureLines is the route that measures sites, a document each.
func (o *order) measureLines() route[*ingest.Collection] {
	r := o.surveying(func(s surveyed) ([]byte, error) {
		return jsonLine(measureDocument{zones.MeasureSchema, []zones.Measurement{s.measure}})
	})
	r.mark = documentLine
	return r
}

type jsonDocument struct{ sites []zones.Measurement }

func (p *jsonDocument) print(_ io.Writer, s surveyed) error {
	p.sites = append(p.sites, s.measure)
	return nil
}

func (p *jsonDocument) finish(w io.Writer) error {
	return writeJSON(w, measureDocument{zones.MeasureSchema, p.sites}, " ")
}

// jsonLine is a document on a line.
func jsonLine(document any) ([]byte, error) {
	var b bytes.Buffer
	err := writeJSON(&b, document, "")
	return b.Bytes(), err
}

// writeJSON writes a document that ends in a newline.
func writeJSON(w io.Writer, document any, indent string) error {
	e := json.NewEncoder(w)
	e.SetEscapeHTML(false)
	e.SetIndent("", indent)
	return e.Encode(document)
}

const measureHelp = `turfplat measure tells how much turf there is.

Usage:
    turfplat measure [flags] [FILE ...]

Covers never overlap; where objects do, the higher one has the ground: building,
pool, water, hardscape, bed, synthetic, bare, rough, turf. Without a turf
polygon, turf is what is left inside the outline. Areas are those on the WGS 84
ellipsoid; +/- is half of the 95 % interval that the traced edges bear, and
figures are rounded to what that error bears. --json has them in full, and
perimeters: the border, round holes too, without both sides of what is narrower
than 5 cm, which is one edge drawn twice.

Flags:
    --by WHAT      site or zone: a row each, in place of a page a site
` + grassHelp + readingHelp + linesHelp + textOutHelp + `
Example:
    $ turfplat measure --units metric yard.geojson
`
