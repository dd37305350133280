package main

import (
	"iter"

	"example.org/turfplat/geo/ingest"
)

// inputs yields the objects of one site file after the other: where sites are
// lines those of each site read, else those of all files together.
func (s *surveyor) inputs() iter.Seq2[*ingest.Collection, error] {
	return func(yield func(*ingest.Collection, error) bool) {
		if !s.lines {
			yield(s.together())
			return
		}
		for _, file := range s.files {
			for c := range s.collections(file) {
				if !yield(c, nil) {
					return
				}
			}
		}
	}
}

// together reads all files as parts of one site.
func (s *surveyor) together() (*ingest.Collection, error) {
	var parts []*ingest.Collection
	named := false
	for _, file := range s.files {
		sites := 0
		for c := range s.collections(file) {
			_, header := c.Member("site")
			if sites++; sites > 1 || named && header {
				return nil, usageErrorf("several sites are written one a line: add --lines")
			}
			named = named || header
			parts = append(parts, c)
		}
	}
	return ingest.Join(parts...), nil
}
