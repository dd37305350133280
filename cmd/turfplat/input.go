package main

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"iter"
	"os"
	"slices"
	"strings"
	"sync/atomic"

	"github.com/urfave/cli/v2"

	"example.org/turfplat/cmd/turfplat/packing"
	"example.org/turfplat/geo/ingest"
	"example.org/turfplat/zones"
)

// readingFlags are the flags of every command that reads sites.
func readingFlags(more ...cli.Flag) []cli.Flag {
	return append([]cli.Flag{
		&cli.BoolFlag{Name: "json"},
		&cli.BoolFlag{Name: "repair"},
		&cli.StringFlag{Name: "tags", TakesFile: true},
		&cli.StringFlag{Name: "region"},
		&cli.StringFlag{Name: "units"},
		&cli.BoolFlag{Name: "quiet"},
	}, more...)
}

// streamFlags are those of every command that takes sites a line.
func streamFlags(more ...cli.Flag) []cli.Flag {
	return readingFlags(append([]cli.Flag{&cli.BoolFlag{Name: "lines"}, &cli.BoolFlag{Name: "resume"}, outputFlag()}, more...)...)
}

func outputFlag() cli.Flag { return &cli.StringFlag{Name: "output", Aliases: []string{"o"}} }

// An order is what a command was asked to do with which files.
type order struct {
	*desk
	files   []string
	sources []string // those, and the files that flags name to be read
	reading zones.Reading
	units   zones.Units // "" = each site's own
	json    bool
	lines   bool
	quiet   bool
	resume  bool
	parcels string // the file of them, if the sites are parcels
	output  string

	resumable bool // what is written can be gone on with

	typed *opened      // standard input, once it was looked at
	taken atomic.Int64 // bytes of the files read so far, packed as they are
}

// order reads the flags that commands share.
func (d *desk) order(c *cli.Context) (*order, error) {
	o := &order{desk: d, files: c.Args().Slice(), json: c.Bool("json"), lines: c.Bool("lines"), quiet: c.Bool("quiet"), resume: c.Bool("resume"), output: c.String("output"), parcels: c.String("parcels")}
	switch units := zones.Units(c.String("units")); units {
	case "", zones.US, zones.Metric:
		o.units = units
	default:
		return nil, usageErrorf("--units is us or metric, not %q", units)
	}
	if len(o.files) == 0 {
		if !piped(d.in) {
			return nil, usageErrorf("no file given: name one, or - for standard input")
		}
		o.files = []string{"-"}
	}
	o.sources = slices.Concat(o.files, filesOfFlags(c))
	if err := o.checkOutput(o.output); err != nil {
		return nil, err
	}
	region, err := regionNamed(c.String("region"))
	if err != nil {
		return nil, err
	}
	key, err := mapKey(c.String("tags"))
	if err != nil {
		return nil, err
	}
	known, err := grasses(c.String("species"))
	o.reading = zones.Reading{Key: key, Grasses: known, Repair: c.Bool("repair"), Region: region, Units: o.units}
	return o, err
}

// filesOfFlags are the files that flags name to be read.
func filesOfFlags(c *cli.Context) []string {
	var files []string
	for _, f := range c.Command.Flags {
		if text, ok := f.(*cli.StringFlag); ok && text.TakesFile && c.IsSet(text.Name) {
			files = append(files, c.String(text.Name))
		}
	}
	return files
}

// siteFiles are the files that the sites come from.
func (o *order) siteFiles() []string {
	if o.parcels != "" {
		return []string{o.parcels}
	}
	return o.files
}

// regionNamed is the region whose rules are asked for, if any is.
func regionNamed(name string) (string, error) {
	region, known := zones.FindRegion(name)
	if name != "" && !known {
		return "", usageErrorf("no rules of --region %q are known here; there are some of %s", name, strings.Join(zones.Regions(), ", "))
	}
	return region, nil
}

func mapKey(file string) (*zones.MapKey, error) {
	if file == "" {
		return zones.DefaultMapKey(), nil
	}
	f, err := openNamed(file)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	key, err := zones.ReadMapKey(f)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", file, err)
	}
	return key, nil
}

// opened is a file, or standard input, about to be read.
type opened struct {
	*bufio.Reader
	name  string
	close func() error
}

var errFolder = errors.New("is a folder, name the files in it")

// open opens a file that was named on the command line, and unpacks it if it
// is packed. Standard input may be looked at before it is read.
func (o *order) open(file string) (opened, error) {
	if file == "-" {
		if o.typed == nil {
			r, err := o.unpacked(o.in, func() error { return nil })
			if err != nil {
				return opened{}, err
			}
			r.name = "standard input"
			o.typed = &r
		}
		return *o.typed, nil
	}
	f, err := os.Open(file)
	if err != nil {
		return opened{}, err
	}
	if info, err := f.Stat(); err == nil && info.IsDir() {
		f.Close()
		return opened{}, errFolder
	}
	r, err := o.unpacked(f, f.Close)
	r.name = file
	return r, err
}

// unpacked reads what in holds, packed or not, by its first bytes.
func (o *order) unpacked(in io.Reader, shut func() error) (opened, error) {
	taken := &takings{r: in, all: &o.taken}
	raw := bufio.NewReaderSize(taken, 1<<16)
	head, _ := raw.Peek(4)
	how := packing.Known(head)
	if how == nil {
		return opened{Reader: raw, close: shut}, nil
	}
	text, err := how.Unpack(raw, func() int64 { return taken.own })
	if err != nil {
		shut()
		return opened{}, err
	}
	return opened{Reader: bufio.NewReaderSize(text, 1<<16), close: func() error { text.Close(); return shut() }}, nil
}

// takings counts the bytes taken from a file.
type takings struct {
	r   io.Reader
	own int64
	all *atomic.Int64 // of all files together
}

func (t *takings) Read(p []byte) (int, error) {
	n, err := t.r.Read(p)
	t.own += int64(n)
	t.all.Add(int64(n))
	return n, err
}

// looksWalked reports whether an input is a file of tracks by what stands in
// it; ending is that of its name if that may decide as well.
func (r opened) looksWalked(ending string) bool {
	return ingest.IsTrack(ingest.Beginning(r.Reader), ending)
}

// A reader yields what is in an input, piece by piece.
type reader func(in io.Reader, source string, limits ingest.Limits) iter.Seq[*ingest.Collection]

// collections reads the sites of a file, one at a time.
func (o *order) collections(file string) iter.Seq[*ingest.Collection] {
	if o.lines && file == "-" {
		return o.pieces(file, ingest.ReadPrompt)
	}
	return o.pieces(file, ingest.Read)
}

// pieces reads a file, or standard input, with a reader.
func (o *order) pieces(file string, read reader) iter.Seq[*ingest.Collection] {
	return func(yield func(*ingest.Collection) bool) {
		r, err := o.open(file)
		if err != nil {
			yield(unreadable(file, err))
			return
		}
		defer r.close()
		if r.looksWalked("") {
			yield(walkedTrack(r.name, file))
			return
		}
		for c := range read(r.Reader, r.name, ingest.DefaultLimits) {
			if !yield(c) {
				return
			}
		}
	}
}

// walkedTrack stands for a file of tracks where a site is wanted.
func walkedTrack(name, file string) *ingest.Collection {
	return &ingest.Collection{Source: name, Problems: []ingest.Problem{{
		Severity: ingest.Refusal, Code: "track_unsurveyed", Place: ingest.Place{Source: name, Feature: -1},
		Text: "is a walked or drawn track, not a site", Hint: fmt.Sprintf("make a site of it: turfplat survey --as turf %s -o site.geojson, with --as outline if it is the property's edge", file),
	}}}
}

// openNamed opens a file that a flag names.
func openNamed(name string) (*os.File, error) {
	f, err := os.Open(name)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", name, pathless(err))
	}
	return f, nil
}

// pathless is an error of a file without its name, which is told beside it.
func pathless(err error) error {
	var path *fs.PathError
	if errors.As(err, &path) {
		return path.Err
	}
	return err
}

// unreadable stands for a file that cannot be opened.
func unreadable(file string, err error) *ingest.Collection {
	return &ingest.Collection{Source: file, Problems: []ingest.Problem{{
		Severity: ingest.Refusal, Code: "file_unreadable",
		Place: ingest.Place{Source: file, Feature: -1}, Text: pathless(err).Error(),
	}}}
}
