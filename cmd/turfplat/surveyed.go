package main

import (
	"iter"

	"example.org/turfplat/geo/ingest"
	"example.org/turfplat/zones"
)

// A surveyed site is laid out and measured.
type surveyed struct {
	site    *zones.Site
	plat    *zones.Plat // nil if the site was refused
	measure zones.Measurement
}

// survey lays a site out and measures it.
func (o *order) survey(c *ingest.Collection) surveyed {
	s := surveyed{site: zones.NewSite(c, o.reading)}
	if o.units != "" {
		s.site.Units = o.units
	}
	if s.plat = zones.Survey(s.site); s.plat != nil {
		s.measure = s.plat.Measurement()
	}
	tellSite(s.site)
	return s
}

// tellSite puts the id of a site that is a line into what is told of it.
func tellSite(s *zones.Site) {
	for i := range s.Problems {
		if p := &s.Problems[i].Place; p.Line > 0 && (p.Feature >= 0 || p.Label == "") {
			p.Site = s.ID
		}
	}
}

// surveys surveys the sites of all files, in the order read.
func (o *order) surveys() iter.Seq[surveyed] { return inOrder(o.sites(), o.survey) }

func (o *order) sites() iter.Seq[*ingest.Collection] {
	return func(yield func(*ingest.Collection) bool) {
		for _, file := range o.files {
			for c := range o.collections(file) {
				if !yield(c) {
					return
				}
			}
		}
	}
}

// each does something with each survey, in order. A site that is refused is
// told and left out, and makes the command end with errRefused; an error of do
// ends it at once.
func (o *order) each(do func(surveyed) error) error {
	refused := false
	progress := o.progress()
	defer progress.hide()
	for s := range o.surveys() {
		if len(s.site.Problems) > 0 {
			progress.hide()
			o.tellProblems(s.site.Problems)
		}
		progress.step()
		if s.plat == nil {
			refused = true
			continue
		}
		if err := do(s); err != nil {
			return err
		}
	}
	if refused {
		return errRefused
	}
	return nil
}
