package main

import (
	"errors"
	"io"
	"slices"

	"github.com/urfave/cli/v2"

	"example.org/turfplat/geo/ingest"
	"example.org/turfplat/zones"
)

func surveyCommand(d *desk) *cli.Command {
	return &cli.Command{
		Name:               "survey",
		CustomHelpTemplate: surveyHelp,
		OnUsageError:       onUsageError,
		Flags:              readingFlags(append(slices.Concat(walkFlags(), parcelFlags()), &cli.BoolFlag{Name: "lines"}, outputFlag(), &cli.StringFlag{Name: "outline"}, &cli.StringFlag{Name: "into"})...),
		Action: func(c *cli.Context) error {
			o, err := d.order(c)
			if err != nil {
				return err
			}
			if parcels := c.String("parcels"); parcels != "" {
				return o.surveyParcels(c, parcels)
			}
			if err := refuseIdle(c, "there are no --parcels", "parcel-id"); err != nil {
				return err
			}
			s, err := o.surveyor(c)
			if err != nil {
				return err
			}
			if site := c.String("into"); site != "" {
				return s.extend(site)
			}
			return s.makeSites()
		},
	}
}

// A surveyor makes site files of what the files of an order hold.
type surveyor struct {
	*order
	flags   *cli.Context
	outline *ingest.Collection // the property's edge; nil if none is given
	walks   walks
}

func (o *order) surveyor(c *cli.Context) (*surveyor, error) {
	s := &surveyor{order: o, flags: c}
	if c.IsSet("into") && c.IsSet("outline") {
		return nil, usageErrorf("--into takes the outline that the site has: leave --outline away, or add the outline as an object of kind outline")
	}
	var err error
	if s.walks, err = readWalkFlags(c); err != nil {
		return nil, err
	}
	if !slices.ContainsFunc(o.files, s.mayBeWalked) {
		if err := refuseIdle(c, "no file is a walked track", "as", "offset", "side", "sigma", "explain"); err != nil {
			return nil, err
		}
	}
	s.outline, err = o.outline(c.String("outline"))
	return s, err
}

// makeSites writes a site file of all that the files hold or, where sites are
// lines, one of each site.
func (s *surveyor) makeSites() error {
	var made zones.Compilation
	err := s.write(func(w io.Writer) error {
		refused := false
		for objects, err := range s.inputs() {
			if err != nil {
				return err
			}
			made = zones.Compile(objects, s.outline, s.reading)
			s.tellProblems(made.Site.Problems)
			if made.Site.Refused() {
				refused = true
				continue
			}
			if err := s.writeSite(w, made.File); err != nil {
				return err
			}
		}
		if refused {
			return errRefused
		}
		return nil
	})
	if err == nil && s.output != "" && !s.lines {
		err = s.tellAccount(made)
	}
	return errors.Join(err, s.explain())
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
