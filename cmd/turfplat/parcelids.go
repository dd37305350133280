package main

import (
	"fmt"
	"hash/fnv"
	"path/filepath"
	"strings"

	"example.org/turfplat/geo/ingest"
)

// parcelIDs counts how often an id was asked for, by its hash: a million take
// some 40 MB. That two of a million share a hash by chance is one in thirty
// million, and then one of them is numbered without need.
type parcelIDs map[uint64]int32

// of returns the id of a parcel's site: that of the parcel, else its name, else
// the file's name with the parcel's line or number, counted from 1. One that an
// earlier parcel has is numbered, with a warning.
func (ids parcelIDs) of(c *ingest.Collection) string {
	f := c.Features[0]
	wanted := f.Label()
	if f.ID != "" {
		wanted = f.ID
	}
	if wanted == "" {
		number := c.Line
		if number == 0 {
			number = f.Index + 1
		}
		base := filepath.Base(c.Source)
		wanted = fmt.Sprintf("%s-%d", strings.TrimSuffix(base, filepath.Ext(base)), number)
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

func (ids parcelIDs) fresh(wanted string) string {
	key := hashOf(wanted)
	id := wanted
	for n := ids[key]; n > 0; n++ {
		if id = fmt.Sprintf("%s-%d", wanted, n+1); ids[hashOf(id)] == 0 {
			ids[key] = n
			break
		}
	}
	ids[key]++
	if id != wanted {
		ids[hashOf(id)]++
	}
	return id
}

func hashOf(text string) uint64 {
	h := fnv.New64a()
	h.Write([]byte(text))
	return h.Sum64()
}
