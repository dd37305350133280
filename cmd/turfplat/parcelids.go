package main

import (
	"fmt"
	"hash/fnv"
	"path/filepath"
	"strings"

	"example.org/turfplat/geo/ingest"
)

// parcelIDs names the sites of parcels. It counts how often an id was asked
// for, by its hash: a million take some 40 MB. That two of a million share a
// hash by chance is one in thirty million, and then one of them is numbered
// without need.
type parcelIDs struct {
	column   string // that holds the ids; "" = id, else name
	asked    map[uint64]int32
	numbered bool // some parcel was without an id
}

func newParcelIDs(column string) *parcelIDs {
	return &parcelIDs{column: column, asked: make(map[uint64]int32)}
}

// of returns the id of a parcel's site: what stands in the column of ids or,
// where none was named, the parcel's id or else its name; without any the
// file's name with the parcel's line or number, counted from 1. One that an
// earlier parcel has is numbered, with a warning.
func (ids *parcelIDs) of(c *ingest.Collection) string {
	f := c.Features[0]
	ids.readColumn(c, f)
	wanted := f.Label()
	if f.ID != "" {
		wanted = f.ID
	}
	if wanted == "" {
		wanted = numberedID(c, f)
		ids.tellNumbered(c, f, wanted)
	}
	id := ids.fresh(wanted)
	if id != wanted {
		c.Problems = append(c.Problems, ingest.Problem{
			Severity: ingest.Warning, Code: "parcel_repeated", Place: c.Place(f),
			Text: fmt.Sprintf("has the id or name of an earlier parcel, its site gets the id %q", id),
		})
	}
	return id
}

// readColumn makes the parcel's id of what stands in the column of ids.
func (ids *parcelIDs) readColumn(c *ingest.Collection, f *ingest.Feature) {
	if ids.column == "" {
		return
	}
	if id, ok := f.Properties.Text(ids.column); ok && id != "" {
		f.ID = id
		return
	}
	c.Problems = append(c.Problems, ingest.Problem{
		Severity: ingest.Warning, Code: "parcel_column", Place: c.Place(f),
		Text: fmt.Sprintf("has nothing in %q", ids.column),
		Hint: "its columns are " + strings.Join(f.Properties.Keys(), ", "),
	})
}

func numberedID(c *ingest.Collection, f *ingest.Feature) string {
	number := c.Line
	if number == 0 {
		number = f.Index + 1
	}
	base := filepath.Base(c.Source)
	return fmt.Sprintf("%s-%d", strings.TrimSuffix(base, filepath.Ext(base)), number)
}

// tellNumbered tells of the first parcel without an id, if it has columns that
// may hold one.
func (ids *parcelIDs) tellNumbered(c *ingest.Collection, f *ingest.Feature, id string) {
	columns := f.Properties.Keys()
	if ids.numbered || ids.column != "" || len(columns) == 0 {
		return
	}
	ids.numbered = true
	c.Problems = append(c.Problems, ingest.Problem{
		Severity: ingest.Note, Code: "parcel_numbered", Place: c.Place(f),
		Text: fmt.Sprintf("has neither id nor name, its site is called %q, and so on", id),
		Hint: "--parcel-id COLUMN names the column of ids, one of " + strings.Join(columns, ", "),
	})
}

func (ids *parcelIDs) fresh(wanted string) string {
	key := hashOf(wanted)
	id := wanted
	for n := ids.asked[key]; n > 0; n++ {
		if id = fmt.Sprintf("%s-%d", wanted, n+1); ids.asked[hashOf(id)] == 0 {
			ids.asked[key] = n
			break
		}
	}
	ids.asked[key]++
	if id != wanted {
		ids.asked[hashOf(id)]++
	}
	return id
}

func hashOf(text string) uint64 {
	h := fnv.New64a()
	h.Write([]byte(text))
	return h.Sum64()
}
