package main

import (
	"encoding/csv"
	"encoding/json"
	"io"

	"github.com/urfave/cli/v2"

	"example.org/turfplat/zones"
)

func feedCommand(d *desk) *cli.Command {
	return &cli.Command{
		Name:               "feed",
		CustomHelpTemplate: feedHelp,
		OnUsageError:       onUsageError,
		Flags:              streamFlags(grassFlag(), &cli.StringFlag{Name: "format"}),
		Action: func(c *cli.Context) error {
			o, err := d.order(c)
			if err != nil {
				return err
			}
			format, err := o.feedFormat(c.String("format"))
			if err != nil {
				return err
			}
			if err := o.refuseResume(format != "parquet", "a file of columns is made anew"); err != nil {
				return err
			}
			switch {
			case format == "parquet":
				return o.feedParquet()
			case o.lines:
				return o.feedLines(format).do(o)
			}
			return o.write(func(w io.Writer) error { return o.feed(w, format) })
		},
	}
}

// feedFormat settles how rows are written; --json is short for --format json,
// with --lines for --format ndjson.
func (o *order) feedFormat(format string) (string, error) {
	if format == "" {
		format = "csv"
		if o.json {
			format = "json"
		}
	}
	if o.lines && format == "json" {
		format = "ndjson"
	}
	switch format {
	case "csv", "json", "ndjson", "parquet":
		return format, nil
	}
	return "", usageErrorf("--format is csv, json, ndjson or parquet, not %q", format)
}

// A rowWriter writes the rows of a feed.
type rowWriter interface {
	write(rows []zones.FeedRow) error
	finish() error
}

func (o *order) feed(w io.Writer, format string) error {
	var rows rowWriter
	switch format {
	case "csv":
		rows = newCSVRows(w).head()
	case "json":
		rows = &jsonRows{w: w, rows: []zones.FeedRow{}}
	case "ndjson":
		rows = ndjsonRows{w}
	}
	err := o.each(func(s surveyed) error { return rows.write(s.plat.FeedRows(s.measure, software())) })
	if !o.keeps(err) {
		return err
	}
	if finished := rows.finish(); finished != nil {
		return finished
	}
	return err
}

// csvRows writes RFC 4180: CRLF, and a header if it was asked for.
type csvRows struct{ w *csv.Writer }

func newCSVRows(w io.Writer) csvRows {
	c := csvRows{csv.NewWriter(w)}
	c.w.UseCRLF = true
	return c
}

// head writes the names of the columns. An error stays with the writer until
// it is flushed.
func (c csvRows) head() csvRows {
	c.w.Write(zones.FeedColumns)
	return c
}

func (c csvRows) write(rows []zones.FeedRow) error {
	for _, r := range rows {
		if err := c.w.Write(plainCells(r.Cells())); err != nil {
			return err
		}
	}
	return nil
}

func (c csvRows) finish() error {
	c.w.Flush()
	return c.w.Error()
}

type jsonRows struct {
	w    io.Writer
	rows []zones.FeedRow
}

func (j *jsonRows) write(rows []zones.FeedRow) error {
	j.rows = append(j.rows, rows...)
	return nil
}

func (j *jsonRows) finish() error {
	return writeJSON(j.w, struct {
		Schema string          `json:"schema"`
		Rows   []zones.FeedRow `json:"rows"`
	}{zones.FeedSchema, j.rows}, " ")
}

type ndjsonRows struct{ w io.Writer }

func (n ndjsonRows) write(rows []zones.FeedRow) error {
	e := json.NewEncoder(n.w)
	e.SetEscapeHTML(false)
	for _, r := range rows {
		if err := e.Encode(r); err != nil {
			return err
		}
	}
	return nil
}

func (ndjsonRows) finish() error { return nil }

const feedHelp = `turfplat feed writes rows for quoting tools: one a zone, then one a cover.

Usage:
    turfplat feed [flags] [FILE ...]

area_quote_ft2 is the area up to the next 100 ft2. ci95_ft2 is half of the 95 %
interval. Zone rows have a zone_id, cover rows have none: sum one sort only.
apply is false where nothing is applied, as on a setback or keepout: treated_ft2
is the part of the row's ground that is left, 0 there, and in the row of the
turf the sum over its zones. Price treatments by it, mowing by the area.
warnings are the codes of what measure warns of, joined by +: turf_residual is
turf that nobody mapped, but what is left of the outline. In CSV a text that a
spreadsheet would take for a formula (= + - @) has an apostrophe before it.

parquet is GeoParquet 1.1: the same columns, the ground of each row as geometry
(WKB, longitude and latitude, WGS 84) and its bbox.

Flags:
    --format F     csv, json, ndjson or parquet; default: csv. A run with
                   parquet that breaks off leaves nothing for --resume
` + grassHelp + readingHelp + linesHelp + textOutHelp + `
Example:
    $ turfplat feed yard.geojson -o yard.csv
    $ turfplat feed --lines --format parquet route.ndjson -o route.parquet
`
