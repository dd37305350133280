package main

import (
	"fmt"
	"io"

	"example.org/turfplat/cmd/turfplat/packing"
	"example.org/turfplat/zones"
)

// A shapedRow is a row of the feed with its ground.
type shapedRow struct {
	zones.FeedRow
	ground *ground // nil if nothing of it is left to be drawn
}

// feedParquet writes the rows and their ground as columns.
func (o *order) feedParquet() error {
	if how := packing.Of(o.output); how != nil {
		return usageErrorf("-o %s: parquet is packed inside, leave %s away", o.output, how.Ending)
	}
	if o.output == "" && isTerminal(o.out) {
		return usageErrorf("--format parquet is not for a terminal: name a file with -o")
	}
	type shaped struct {
		rows []shapedRow
		err  error
	}
	return o.write(func(w io.Writer) error {
		file := newParquetRows(w)
		err := eachMade(o,
			func(s surveyed) (made shaped) { made.rows, made.err = shapedRows(s); return made },
			func(s surveyed, made shaped) error {
				if made.err != nil {
					return fmt.Errorf("%s: %w", s.site.ID, made.err)
				}
				return file.write(made.rows)
			})
		if !o.keeps(err) || err != nil && file.empty() {
			return err
		}
		if finished := file.finish(); finished != nil {
			return finished
		}
		return err
	})
}

// shapedRows are the rows of a site. Their ground is not rounded to the decimals
// of site files: two edges that nearly touch must not come to cross.
func shapedRows(s surveyed) ([]shapedRow, error) {
	var rows []shapedRow
	ground := s.plat.FeedGround(s.measure)
	for i, r := range s.plat.FeedRows(s.measure, software()) {
		shape, err := groundOf(s.site.Frame.MultiPolygon(ground[i]))
		if err != nil {
			return nil, err
		}
		rows = append(rows, shapedRow{r, shape})
	}
	return rows, nil
}
