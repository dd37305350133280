package main

import (
	"fmt"
	"iter"

	"example.org/turfplat/geo/ingest"
	"example.org/turfplat/zones"
)

// mostSiteIDs is how many sites are remembered by their ids: some 40 MB, and 3
// microseconds each.
const mostSiteIDs = 1_000_000

// siteIDs finds sites that have the id of an earlier one. It keeps the hashes of
// ids: that two of a million share one by chance is one in thirty million.
type siteIDs struct {
	most    int
	sources []string // of the sites, in order
	first   map[uint64]sitePlace
	full    bool // and told so
}

// A sitePlace is where a site stands: the number of its source, and its line.
type sitePlace struct{ source, line int32 }

func newSiteIDs() *siteIDs {
	return &siteIDs{most: mostSiteIDs, first: make(map[uint64]sitePlace)}
}

// told yields sites, in order, with a warning in each that has the id of an
// earlier one.
func (ids *siteIDs) told(sites iter.Seq[*ingest.Collection]) iter.Seq[*ingest.Collection] {
	return func(yield func(*ingest.Collection) bool) {
		for c := range sites {
			ids.look(c)
			if !yield(c) {
				return
			}
		}
	}
}

// look warns of the id of a site if an earlier one has it.
func (ids *siteIDs) look(c *ingest.Collection) {
	if n := len(ids.sources); n == 0 || ids.sources[n-1] != c.Source {
		ids.sources = append(ids.sources, c.Source)
	}
	id := zones.IDOf(c)
	key := hashOf(id)
	earlier, taken := ids.first[key]
	switch {
	case taken:
		c.Problems = append(c.Problems, ids.repeated(c, id, earlier))
	case len(ids.first) < ids.most:
		ids.first[key] = sitePlace{int32(len(ids.sources) - 1), int32(c.Line)}
	case !ids.full:
		ids.full = true
		c.Problems = append(c.Problems, ingest.Problem{
			Severity: ingest.Note, Code: "site_ids_many", Place: siteAt(c),
			Text: fmt.Sprintf("is beyond %d sites of different ids: from here on only repeats of those are told", ids.most),
		})
	}
}

func (ids *siteIDs) repeated(c *ingest.Collection, id string, earlier sitePlace) ingest.Problem {
	first := ingest.Place{Source: ids.sources[earlier.source], Line: int(earlier.line), Feature: -1}
	return ingest.Problem{
		Severity: ingest.Warning, Code: "site_id_repeated", Place: siteAt(c),
		Text: fmt.Sprintf("has the id %q of an earlier site, %s", id, first),
		Hint: `what is made of the two cannot be told apart: give each an "id" of its own in the member "site"`,
	}
}

func siteAt(c *ingest.Collection) ingest.Place {
	return ingest.Place{Source: c.Source, Line: c.Line, Feature: -1}
}
