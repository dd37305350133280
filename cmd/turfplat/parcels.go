package main

import (
	"bytes"
	"errors"
	"io"
	"iter"
	"slices"

	"github.com/urfave/cli/v2"

	"example.org/turfplat/geo/ingest"
	"example.org/turfplat/zones"
)

func parcelFlags() []cli.Flag {
	return []cli.Flag{&cli.StringFlag{Name: "parcels"}, &cli.StringFlag{Name: "parcel-id"}}
}

// surveyParcels writes a site file of each parcel of a file, one a line, with
// the map objects of the order's files that belong to it.
func (o *order) surveyParcels(c *cli.Context, file string) error {
	if file == "-" && slices.Contains(o.files, "-") {
		return usageErrorf("parcels and map data cannot both come from standard input: name a file")
	}
	err := errors.Join(
		refuseIdle(c, "with --parcels each parcel is the outline of its own site", "outline"),
		refuseIdle(c, "sites of parcels are made anew, of map data alone", "as", "offset", "side", "sigma", "explain", "into"))
	if err != nil {
		return err
	}
	o.lines = true
	base, err := o.baseMap()
	if err != nil {
		return err
	}
	var tally parcelTally
	err = o.write(func(w io.Writer) error {
		return o.writeParcels(w, o.numbered(file, c.String("parcel-id")), base, &tally)
	})
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
	base := zones.NewBaseMap(ingest.Join(slices.Collect(o.sites())...), o.reading)
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

// A compiledParcel is what became of a parcel.
type compiledParcel struct {
	problems []ingest.Problem
	line     []byte // the site file; nil if the parcel was refused
	feature  bool   // it is one, and not a stretch that could not be read
	objects  int
	err      error
}

func compileParcel(p parcel, base *zones.BaseMap) compiledParcel {
	if p.id == "" {
		return compiledParcel{problems: p.Problems}
	}
	made := base.Parcel(p.Collection, p.id)
	done := compiledParcel{problems: made.Site.Problems, feature: true}
	if !made.Site.Refused() {
		var line bytes.Buffer
		done.err = made.File.WriteGeoJSONLine(&line)
		done.line, done.objects = line.Bytes(), len(made.File.Features)-1
	}
	return done
}

// writeParcels writes the sites in the order of the parcels. A parcel that is
// refused is told and left out.
func (o *order) writeParcels(w io.Writer, parcels iter.Seq[parcel], base *zones.BaseMap, tally *parcelTally) error {
	progress, told := o.progress(), o.sparing()
	defer progress.done()
	refused := false
	for p := range inOrder(parcels, func(p parcel) compiledParcel { return compileParcel(p, base) }) {
		told.tell(p.problems)
		tally.add(p)
		progress.step()
		refused = refused || ingest.Refuses(p.problems)
		if p.err != nil {
			return p.err
		}
		if _, err := w.Write(p.line); err != nil {
			return err
		}
	}
	told.sum("")
	if refused {
		return errRefused
	}
	return nil
}
