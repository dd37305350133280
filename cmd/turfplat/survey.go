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
		Flags:              streamFlags(append(slices.Concat(walkFlags(), parcelFlags()), &cli.StringFlag{Name: "outline", TakesFile: true}, &cli.StringFlag{Name: "into", TakesFile: true})...),
		Action: func(c *cli.Context) error {
			o, err := d.order(c)
			if err != nil {
				return err
			}
			if o.parcels != "" {
				return o.surveyParcels(c)
			}
			if err := refuseIdle(c, "there are no --parcels", "parcel-id"); err != nil {
				return err
			}
			if err := o.refuseResume(!c.IsSet("into"), "--into makes one site"); err != nil {
				return err
			}
			s, err := o.surveyor(c)
			if err != nil {
				return err
			}
			if site := c.String("into"); site != "" {
				return s.extend(site)
			}
			if o.lines {
				return s.makeLines()
			}
			return s.makeSite()
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
	s.walks.Feet = !figuresIn(s.units).Metric()
	if !slices.ContainsFunc(o.files, s.mayBeWalked) {
		if err := refuseIdle(c, "no file is a walked track", "as", "offset", "side", "sigma", "explain"); err != nil {
			return nil, err
		}
	}
	s.outline, err = o.outline(c.String("outline"))
	return s, err
}

// makeSite writes a site file of all that the files hold.
func (s *surveyor) makeSite() error {
	var made zones.Compilation
	err := s.write(func(w io.Writer) error {
		objects, err := s.together()
		if err != nil {
			return err
		}
		made = zones.Compile(objects, s.outline, s.reading)
		s.tellProblems(made.Site.Problems)
		if made.Site.Refused() {
			return errRefused
		}
		return made.File.WriteGeoJSON(w)
	})
	if err == nil && s.output != "" {
		err = s.tellAccount(made)
	}
	return errors.Join(err, s.explain())
}

// makeLines writes a site file of each site that the files hold.
func (s *surveyor) makeLines() error {
	r := route[find]{items: s.finds(), make: s.makeLine, single: true, id: func(f find) string { return zones.IDOf(f.objects) }, mark: siteLine}
	if s.outline != nil { // the sites are all named after it
		r.id, r.mark = func(find) string { return "" }, func([]byte) mark { return mark{} }
	}
	return errors.Join(r.do(s.order), s.explain())
}

func (s *surveyor) makeLine(f find) product {
	if f.err != nil {
		return product{err: f.err}
	}
	made := zones.Compile(f.objects, s.outline, s.reading)
	tellSite(made.Site)
	p := product{problems: made.Site.Problems, refused: made.Site.Refused()}
	if !p.refused {
		p.text, p.err = siteText(made.File, made.Site.ID)
	}
	return p
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
