package main

import (
	"fmt"
	"io"
	"slices"

	"example.org/turfplat/geo/ingest"
	"example.org/turfplat/zones"
)

// parcelTally is what a survey of parcels came to, as machines read it.
type parcelTally struct {
	Schema  string `json:"schema"`
	Parcels int    `json:"parcels"`
	Sites   int    `json:"sites"`
	Refused int    `json:"refused"`
	Objects int    `json:"objects_joined"`
	Unbuilt int    `json:"unbuilt"`
}

func (t *parcelTally) add(made zones.Compilation) {
	t.Parcels++
	if made.Site.Refused() {
		t.Refused++
		return
	}
	t.Sites++
	t.Objects += len(made.File.Features) - 1
	if slices.ContainsFunc(made.Site.Problems, func(p ingest.Problem) bool { return p.Code == zones.OutlineUnbuilt || p.Code == zones.OutlineBare }) {
		t.Unbuilt++
	}
}

func (o *order) tellTally(t parcelTally) error {
	if o.json {
		t.Schema = "turfplat/parcels/1"
		return writeJSON(o.out, t, " ")
	}
	text := fmt.Sprintf("%s: %s written, %d refused\n%s joined to them\n", plural(t.Parcels, "parcel"), plural(t.Sites, "site"), t.Refused, plural(t.Objects, "map object"))
	if t.Unbuilt > 0 {
		text += fmt.Sprintf("%s with neither a building nor turf on the map: what is left of the lot counts as turf\n", plural(t.Unbuilt, "site"))
	}
	_, err := io.WriteString(o.out, text)
	return err
}
