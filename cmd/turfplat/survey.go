package main

import (
	"fmt"
	"io"

	"github.com/urfave/cli/v2"

	"example.org/turfplat/geo/ingest"
	"example.org/turfplat/zones"
)

func surveyCommand(d *desk) *cli.Command {
	return &cli.Command{
		Name:               "survey",
		CustomHelpTemplate: surveyHelp,
		OnUsageError:       onUsageError,
		Flags:              readingFlags(&cli.BoolFlag{Name: "lines"}, outputFlag(), &cli.StringFlag{Name: "outline"}),
		Action: func(c *cli.Context) error {
			o, err := d.order(c)
			if err != nil {
				return err
			}
			s, err := o.surveyor(c)
			if err != nil {
				return err
			}
			return s.makeSites()
		},
	}
}

// A surveyor makes site files of what the files of an order hold.
type surveyor struct {
	*order
	outline *ingest.Collection // the property's edge; nil if none is given
}

func (o *order) surveyor(c *cli.Context) (*surveyor, error) {
	outline, err := o.outline(c.String("outline"))
	return &surveyor{order: o, outline: outline}, err
}

// makeSites writes a site file of all that the files hold or, where sites are
// lines, one of each site.
func (s *surveyor) makeSites() error {
	var account []string
	err := s.write(func(w io.Writer) error {
		refused := false
		for objects, err := range s.inputs() {
			if err != nil {
				return err
			}
			made := zones.Compile(objects, s.outline, s.reading)
			s.tellProblems(made.Site.Problems)
			if made.Site.Refused() {
				refused = true
				continue
			}
			account = made.Account()
			if err := s.writeSite(w, made.File); err != nil {
				return err
			}
		}
		if refused {
			return errRefused
		}
		return nil
	})
	if err != nil || s.output == "" || s.lines {
		return err
	}
	return s.tellAccount(account)
}

// outline reads the file that a property's edge is taken from.
func (o *order) outline(file string) (*ingest.Collection, error) {
	if file == "" {
		return nil, nil
	}
	for c := range o.collections(file) {
		if c.Refused() {
			o.tellProblems(c.Problems)
			return nil, errRefused
		}
		return c, nil
	}
	return nil, usageErrorf("--outline %s: there is nothing in it", file)
}

// surveyAccount is the machine form of what a survey took.
type surveyAccount struct {
	Schema string   `json:"schema"`
	Took   []string `json:"took"`
}

func (o *order) tellAccount(account []string) error {
	if o.json {
		return writeJSON(o.out, surveyAccount{"turfplat/survey/1", account}, " ")
	}
	for _, line := range account {
		if _, err := fmt.Fprintln(o.out, line); err != nil {
			return err
		}
	}
	return nil
}

const surveyHelp = `turfplat survey makes a site file of map data or of a tracing.

Usage:
    turfplat survey [flags] [FILE ...]

Map extracts are OSM XML, OSM PBF or Overpass JSON, told by their content; any
GeoJSON will do as well. Each object that plays a part gets its kind, its source
and its width, and keeps its tags; what plays none is left out. With an outline
the site is that property, and objects within 40 m of it are kept as well, for
the map. With -o, what was taken is told on standard output.

Flags:
    --outline FILE the property's edge: the areas in a GeoJSON file
` + readingHelp + linesHelp + outHelp + `
Example:
    $ turfplat survey town.osm.pbf --outline parcel.geojson -o site.geojson
`
