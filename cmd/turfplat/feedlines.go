package main

import (
	"bytes"
	"encoding/csv"
	"encoding/hex"
	"encoding/json"
	"slices"

	"example.org/turfplat/cmd/turfplat/packing"
	"example.org/turfplat/geo/ingest"
	"example.org/turfplat/zones"
)

// feedLines is the route that writes rows, a line each. Where it broke off, a
// site is told by its id and by the digest of what it was read from.
func (o *order) feedLines(format string) route[*ingest.Collection] {
	write, of := rowLines, rowLine
	var head []byte
	if format == "csv" {
		write, of, head = csvLines, csvLine, csvHead()
	}
	r := o.surveying(func(s surveyed) ([]byte, error) { return write(s.plat.FeedRows(s.measure, software())) })
	r.head, r.mark, r.single = head, of, false
	written := func(id string) string { return id }
	if format == "csv" {
		r.records, written = packing.Records, plainCell
	}
	r.id = func(c *ingest.Collection) string {
		return rowMark(written(zones.IDOf(c)), hex.EncodeToString(c.Digest[:]), "").id
	}
	return r
}

func rowMark(id, digest, warnings string) mark {
	return mark{id: id + "\x00" + digest, warnings: warnings}
}

func rowLines(rows []zones.FeedRow) ([]byte, error) {
	var b bytes.Buffer
	err := ndjsonRows{&b}.write(rows)
	return b.Bytes(), err
}

func rowLine(line []byte) mark {
	var row zones.FeedRow
	if json.Unmarshal(line, &row) != nil {
		return mark{}
	}
	return rowMark(row.SiteID, row.InputSHA256, row.Warnings)
}

func csvHead() []byte {
	var b bytes.Buffer
	newCSVRows(&b).head().finish() // into memory: does not fail
	return b.Bytes()
}

func csvLines(rows []zones.FeedRow) ([]byte, error) {
	var b bytes.Buffer
	c := newCSVRows(&b)
	if err := c.write(rows); err != nil {
		return nil, err
	}
	err := c.finish()
	return b.Bytes(), err
}

var (
	idColumn       = slices.Index(zones.FeedColumns, "site_id")
	digestColumn   = slices.Index(zones.FeedColumns, "input_sha256")
	warningsColumn = slices.Index(zones.FeedColumns, "warnings")
)

func csvLine(line []byte) mark {
	cells, err := csv.NewReader(bytes.NewReader(line)).Read()
	if err != nil || len(cells) != len(zones.FeedColumns) {
		return mark{}
	}
	return rowMark(cells[idColumn], cells[digestColumn], cells[warningsColumn])
}
