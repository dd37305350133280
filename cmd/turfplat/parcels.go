package main

import (
	"errors"
	"iter"
	"slices"

	"github.com/urfave/cli/v2"

	"example.org/turfplat/geo/ingest"
	"example.org/turfplat/zones"
)

func parcelFlags() []cli.Flag {
	return []cli.Flag{&cli.StringFlag{Name: "parcels", TakesFile: true}, &cli.StringFlag{Name: "parcel-id"}}
}

// surveyParcels writes a site file of each parcel of a file, one a line, with
// the map objects of the order's files that belong to it.
func (o *order) surveyParcels(c *cli.Context) error {
	if o.parcels == "-" && slices.Contains(o.files, "-") {
		return usageErrorf("parcels and map data cannot both come from standard input: name a file")
	}
	err := errors.Join(
		refuseIdle(c, "with --parcels each parcel is the outline of its own site", "outline"),
		refuseIdle(c, "sites of parcels are made anew, of map data alone", "as", "offset", "side", "sigma", "explain", "into"))
	if err != nil {
		return err
	}
	o.lines = true
	if err := o.refuseResume(true, ""); err != nil {
		return err
	}
	base, err := o.baseMap()
	if err != nil {
		return err
	}
	o.taken.Store(0) // the map was read, now the parcels are
	var tally parcelTally
	r := route[parcel]{
		items: o.numbered(o.parcels, c.String("parcel-id")), single: true,
		make: func(p parcel) product { return compileParcel(p, base, &tally) },
		id:   func(p parcel) string { return p.id }, mark: siteLine,
	}
	err = r.do(o)
	if err != nil && err != errRefused || o.output == "" {
		return err
	}
	if told := o.tellTally(tally); told != nil {
		return told
	}
	return err
}

// baseMap reads all files of the order as one map.
func (o *order) baseMap() (*zones.BaseMap, error) {
	base := zones.NewBaseMap(ingest.Join(slices.Collect(o.contents())...), o.reading)
	o.tellProblems(base.Problems)
	if ingest.Refuses(base.Problems) {
		return nil, errRefused
	}
	return base, nil
}

// A parcel is one as read, with the id that its site gets.
type parcel struct {
	*ingest.Collection
	id string
}

// numbered reads the parcels of a file and gives each an id that none before
// it has. A file without one is refused.
func (o *order) numbered(file, column string) iter.Seq[parcel] {
	return func(yield func(parcel) bool) {
		ids := newParcelIDs(column)
		read := false
		for c := range o.pieces(file, ingest.EachFeature) {
			p := parcel{Collection: c}
			read = true
			if len(c.Features) > 0 {
				p.id = ids.of(c)
			}
			if !yield(p) {
				return
			}
		}
		if !read {
			yield(parcel{Collection: noParcel(file)})
		}
	}
}

// noParcel stands for a file without any feature.
func noParcel(file string) *ingest.Collection {
	return &ingest.Collection{Source: file, Problems: []ingest.Problem{{
		Severity: ingest.Refusal, Code: "parcels_none", Place: ingest.Place{Source: file, Feature: -1},
		Text: "holds no parcel", Hint: "export the parcels again, each a Polygon or MultiPolygon",
	}}}
}

// compileParcel makes the site file of a parcel. What cannot be read as one
// does not count.
func compileParcel(p parcel, base *zones.BaseMap, tally *parcelTally) product {
	if p.id == "" {
		return product{problems: p.Problems, refused: ingest.Refuses(p.Problems)}
	}
	made := base.Parcel(p.Collection, p.id)
	done := product{problems: made.Site.Problems, refused: made.Site.Refused(), counted: func() { tally.add(made) }}
	if !done.refused {
		done.text, done.err = siteText(made.File, made.Site.ID)
	}
	return done
}
